using Microsoft.Playwright;
using Trier.Browser.Tests.Kit;
using static Microsoft.Playwright.Assertions;

namespace Trier.Browser.Tests.Ballots;

/// <summary>Dragging is an extra to tapping, and has to hold what it promises under a finger.</summary>
public sealed class DragTests(Chromium chromium)
{
    [Fact]
    public async Task A_finger_drags_the_last_code_to_the_first_place()
    {
        await using var context = await chromium.PhoneAsync();
        await using var table = await Table.SetAsync("Dora");
        var plate = table.PlateOf("Dora");
        var dora = await new TasterPhone(await context.NewPageAsync()).OpenAsync(table.LinkOf("Dora"));
        await dora.Page.PressAsync("To the first sample");
        await dora.AnswerAllAsync(1, 4, _ => 6);
        await dora.PlaceAsync(plate);
        Assert.Equal(plate, await dora.PlacedAsync());

        await DragAsync(context, dora, from: 3, to: 0);
        string[] dragged = [plate[3], plate[0], plate[1], plate[2]];
        await Expect(dora.Places.First).ToContainTextAsync(plate[3]);
        Assert.Equal(dragged, await dora.PlacedAsync());
        await Expect(dora.Page.GetByText($"{plate[3]} is now 1st")).ToHaveCountAsync(1);
        // By a click: a tap within milliseconds of the finger's lift is dropped by the browser, and no hand is as quick as that.
        await dora.Page.GetByRole(AriaRole.Button, new() { Name = "Look it over", Exact = true }).ClickAsync();
        await dora.Page.SeesAsync("This goes to the host, best first:");
        await Expect(dora.Page.GetByRole(AriaRole.Listitem).First).ToContainTextAsync(plate[3]);
    }

    private static async Task DragAsync(IBrowserContext context, TasterPhone phone, int from, int to)
    {
        const int Steps = 8;
        await phone.Places.First.ScrollIntoViewIfNeededAsync();
        var grip = (await phone.Places.Nth(from).GetByText(await CodeAsync(phone, from)).First.BoundingBoxAsync())!;
        var goal = (await phone.Places.Nth(to).BoundingBoxAsync())!;
        var (x, y) = (grip.X + (grip.Width / 2), grip.Y + (grip.Height / 2));
        var hand = new Finger(await context.NewCDPSessionAsync(phone.Page));
        await hand.TouchAsync("touchStart", x, y);
        for (var step = 1; step <= Steps; step++) await hand.TouchAsync("touchMove", x, y + ((goal.Y + 2 - y) * step / Steps));
        await hand.TouchAsync("touchEnd", null, null);
    }

    private static async Task<string> CodeAsync(TasterPhone phone, int place) => (await phone.PlacedAsync())[place];

    private sealed class Finger(ICDPSession session)
    {
        public async Task TouchAsync(string kind, float? x, float? y) => await session.SendAsync("Input.dispatchTouchEvent", new Dictionary<string, object>
        {
            ["type"] = kind,
            ["touchPoints"] = x is null ? [] : new[] { new { x, y } },
        });
    }
}
