using Trier.Storage.Tastings;
using Trier.Trials.Common;
using Trier.Trials.Tastings;
using Trier.Trials.Tastings.Steps;
using Trier.Web.Hosting;
using Trier.Web.Tastings.Ballots;

namespace Trier.Web.Tastings.Cards;

/// <summary>Slips to print once the key is open, for tasters who agreed to be named.</summary>
internal static class SlipRoutes
{
    public static void MapSlips(this IEndpointRouteBuilder maker) => maker.MapGet("/trials/{id:guid}/slips", ShowAsync);

    private static async Task<IResult> ShowAsync(Guid id, TrialStore trials)
    {
        if (await trials.FindAsync(new TrialId(id)) is not { } tasting) return Results.NotFound();
        if (tasting is not RevealedTasting revealed) return Page.GoTo($"/trials/{id}");
        var ballots = await trials.BallotsAsync(tasting);
        var slips = tasting.Book.Tasters.Where(taster => taster.Agreed.Named && !taster.LetGo && ballots.GetValueOrDefault(taster.Id)?.Counted is not null)
            .Select(taster => (taster, OwnSlip.Of(revealed, taster.Id, ballots[taster.Id].Counted!.Content))).ToList();
        return Page.Of<SlipsPage>(("Tasting", tasting), ("Slips", (IReadOnlyList<(Taster, OwnSlip)>)slips));
    }
}
