using Microsoft.Playwright;

namespace Trier.Browser.Tests.Kit;

/// <summary>
/// One finger on a phone that keeps count of what it does, so that the time a person needs can be worked out. The machine's own clock says nothing
/// of a person, so it is never asked.
/// </summary>
/// <param name="page">The page in hand.</param>
internal sealed class CountedHand(IPage page)
{
    /// <summary>Seconds to find a thing on the screen and hit it: 1.1, what the keystroke-level model gives for pointing (Card, Moran and Newell 1980; from memory, unverified). That a thumb is as quick as a mouse is our own assumption.</summary>
    private const double SecondsATap = 1.1;

    /// <summary>Seconds to make up one's mind before an answer: 1.35, the model's mental preparation (from memory, unverified).</summary>
    private const double SecondsAThought = 1.35;

    /// <summary>Seconds for one swipe until the page stands still again: 1, our own assumption.</summary>
    private const double SecondsASwipe = 1;

    /// <summary>How much of the screen one swipe moves: three quarters, so that the eye keeps its place; our own assumption.</summary>
    private const double ScreensASwipe = 0.75;

    /// <summary>How long the hand rests after a tap, so that the page meets a person's pace. No part of the count.</summary>
    private const int PauseMilliseconds = 250;

    public int Taps { get; private set; }

    public int Swipes { get; private set; }

    public int Thoughts { get; private set; }

    /// <summary>What a person would have needed so far.</summary>
    public double Seconds => (Taps * SecondsATap) + (Thoughts * SecondsAThought) + (Swipes * SecondsASwipe);

    /// <summary>Answers one question: a thought, then a tap on each of the words.</summary>
    public async Task AnswerAsync(params string[] words)
    {
        Thoughts++;
        foreach (var word in words) await TapAsync(page.GetByText(word, new() { Exact = true }));
    }

    /// <summary>Presses a key of the page.</summary>
    public Task PressAsync(string words) => TapAsync(page.GetByRole(AriaRole.Button, new() { Name = words, Exact = true }));

    // The tap is made where the thing stands, by a finger that has to bring it into view first.
    private async Task TapAsync(ILocator thing)
    {
        const int MostSwipes = 20;
        for (var swiped = 0; ; swiped++)
        {
            var box = (await thing.BoundingBoxAsync())!;
            var (x, y) = (box.X + (box.Width / 2), box.Y + (box.Height / 2));
            if (y > 0 && y < Eye.PhoneHeight)
            {
                await page.Touchscreen.TapAsync(x, y);
                Taps++;
                await page.WaitForTimeoutAsync(PauseMilliseconds);
                return;
            }

            Assert.True(swiped < MostSwipes, "No swipe brings it into view.");
            await page.EvaluateAsync("by => window.scrollBy(0, by)", (y < 0 ? -1 : 1) * ScreensASwipe * Eye.PhoneHeight);
            Swipes++;
        }
    }
}
