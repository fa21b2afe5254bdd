using Trier.Browser.Tests.Kit;
using static Microsoft.Playwright.Assertions;

namespace Trier.Browser.Tests.Ballots;

/// <summary>What is typed on a phone outlives a reload and a network that goes away.</summary>
public sealed class DraftTests(Chromium chromium)
{
    private const string Away = "The Wi-Fi is away. Your answers are kept on this phone and go out by themselves.";

    [Fact]
    public async Task A_half_filled_sample_outlives_a_reload_and_a_lost_network_and_goes_out_by_itself()
    {
        await using var context = await chromium.PhoneAsync();
        await using var table = await Table.SetAsync("Ada");
        var ada = await new TasterPhone(await context.NewPageAsync()).OpenAsync(table.LinkOf("Ada"));
        var page = ada.Page;
        await page.PressAsync("To the first sample");
        await ada.SampleAsync(1, 4);
        await ada.FillInAsync(8, "walnut");
        await page.SeesAsync("Kept on this phone.");
        await page.ReloadAsync();
        await Expect(page.GetByLabel(TasterPhone.Liking(8), new() { Exact = true })).ToBeCheckedAsync();
        await Expect(page.Field("In a word")).ToHaveValueAsync("walnut");

        await context.SetOfflineAsync(true);
        await page.PressAsync("Keep, and go on");
        await page.SeesAsync(Away);
        await ada.SampleAsync(1, 4);
        await context.SetOfflineAsync(false);
        await ada.SampleAsync(2, 4);
        await page.PressAsync("One sample back");
        await page.SeesAsync($"You said: {TasterPhone.Liking(8)}");
        await Expect(page.Field("In a word")).ToHaveValueAsync("walnut");
    }

    [Fact]
    public async Task A_ballot_sent_without_a_network_goes_out_from_a_page_opened_later()
    {
        await using var context = await chromium.PhoneAsync();
        await using var table = await Table.SetAsync("Bruno");
        var bruno = await new TasterPhone(await context.NewPageAsync()).OpenAsync(table.LinkOf("Bruno"));
        await bruno.Page.PressAsync("To the first sample");
        await bruno.AnswerAllAsync(1, 4, _ => 6);
        await bruno.PlaceAsync(table.PlateOf("Bruno"));
        await bruno.LookOverAsync();

        await context.SetOfflineAsync(true);
        await bruno.Page.PressAsync("Send my ballot");
        await bruno.Page.SeesAsync(Away);
        await bruno.Page.CloseAsync();
        await context.SetOfflineAsync(false);
        var later = await context.NewPageAsync();
        await later.GotoAsync(table.LinkOf("Bruno"));
        await later.SeesHeadingAsync("Thank you, Bruno. Your ballot is safe with the host.");
    }
}
