using Trier.Browser.Tests.Kit;

namespace Trier.Browser.Tests.Walk;

/// <summary>One tasting from the sign-in to the verdict, on phones, with everything that goes wrong on a day.</summary>
public sealed class WholeWayTests(Chromium chromium)
{
    [Fact]
    public async Task A_tasting_goes_the_whole_way_from_the_first_link_to_the_verdict()
    {
        await using var day = await Afternoon.BeginAsync(chromium);
        await day.SignsInAsync();
        await day.BeginsATrialAsync();
        await day.EntersWheelsAsync();
        await day.ListsTastersAsync();
        await day.SealsAsync();
        await day.HelperPlatesAsync();
        await day.PrintsAsync();
        await day.OpensAsync();
        await day.AdaTapsAsync();
        await day.CleoLeavesAsync();
        var fay = await day.TheProgramDiesAsync();
        await day.AWheelIsWithdrawnAsync();
        await day.FayGoesOnAsync(fay);
        await day.BrunoWithoutScriptAsync();
        await day.DoraRevisesAsync();
        await day.EmilOnPaperAsync();
        await day.ClosesAsync();
        await day.CleoIsLateAsync();
        await day.RevealsAsync();
        await day.TheTallyHoldsAsync();
        await day.EverybodyReadsAsync();
        Assert.Empty(day.Site.Failures);
        day.Eye.FoundNothing();
    }
}
