using System.Text.RegularExpressions;
using Microsoft.Playwright;
using static Microsoft.Playwright.Assertions;

namespace Trier.Browser.Tests.Kit;

/// <summary>What a person does with a page: reads it, presses its keys, fills in its fields. Everything is found by the words on it.</summary>
internal static class Hand
{
    /// <summary>Waits until a text can be seen.</summary>
    public static Task SeesAsync(this IPage page, string text) =>
        Expect(page.GetByText(text).Filter(new() { Visible = true }).First).ToBeVisibleAsync();

    public static Task SeesHeadingAsync(this IPage page, string text) =>
        Expect(page.GetByRole(AriaRole.Heading, new() { Name = text, Exact = true })).ToBeVisibleAsync();

    public static Task DoesNotSeeAsync(this IPage page, string text) => Expect(page.GetByText(text)).ToHaveCountAsync(0);

    /// <summary>Taps a key or a link by its words.</summary>
    public static Task PressAsync(this IPage page, string words) =>
        page.GetByRole(AriaRole.Button, new() { Name = words, Exact = true }).Or(page.GetByRole(AriaRole.Link, new() { Name = words, Exact = true })).TapAsync();

    /// <summary>Goes to an address, also where the page is still on its way from the press before.</summary>
    public static async Task ArriveAsync(this IPage page, string address)
    {
        try
        {
            await page.GotoAsync(address);
        }
        catch (PlaywrightException moved) when (moved.Message.Contains("interrupted by another navigation", StringComparison.Ordinal) || moved.Message.Contains("ERR_ABORTED", StringComparison.Ordinal))
        {
            await page.SettledAsync();
            await page.GotoAsync(address);
        }
    }

    /// <summary>Waits until the page that is here is whole. The page itself is asked: the browser's word that it has loaded now and then never comes.</summary>
    public static async Task SettledAsync(this IPage page)
    {
        const int Looks = 300;
        for (var look = 0; look < Looks; look++)
        {
            try
            {
                if (await page.EvaluateAsync<string>("() => document.readyState") == "complete") return;
            }
            catch (PlaywrightException) when (look < Looks - 1)
            {
                // It went while it was asked.
            }

            await page.WaitForTimeoutAsync(100);
        }

        throw new TimeoutException($"{page.Url} never became whole.");
    }

    /// <summary>Taps what unfolds a part of the page.</summary>
    public static Task UnfoldAsync(this IPage page, string words) => page.GetByText(words, new() { Exact = true }).TapAsync();

    /// <summary>Taps a choice by its words.</summary>
    public static Task ChooseAsync(this IPage page, string words) => page.GetByText(words, new() { Exact = true }).TapAsync();

    /// <summary>A field by the first words of its label.</summary>
    public static ILocator Field(this IPage page, string label) => page.GetByLabel(Begins(label));

    public static ILocator Field(this ILocator part, string label) => part.GetByLabel(Begins(label));

    /// <summary>The row of a table by the words its head begins with.</summary>
    public static ILocator Row(this IPage page, string head) =>
        page.GetByRole(AriaRole.Row).Filter(new() { Has = page.GetByRole(AriaRole.Rowheader, new() { NameRegex = Begins(head) }) });

    /// <summary>Words with gaps in them.</summary>
    public static Regex Like(string pattern) => new(pattern, RegexOptions.None, TimeSpan.FromSeconds(1));

    private static Regex Begins(string words) => Like($"^{Regex.Escape(words)}(?!\\w)");
}
