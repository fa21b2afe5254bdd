using Trier.Storage.Tastings;
using Trier.Trials.Common;
using Trier.Trials.Tastings;
using Trier.Trials.Tastings.Steps;
using Trier.Web.Hosting;
using Trier.Web.Tastings.Ballots;

namespace Trier.Web.Tastings.Cards;

/// <summary>Slips to print once the key is open, for tasters who agreed to be named and, where asked, for those without a phone.</summary>
internal static class SlipRoutes
{
    public static void MapSlips(this IEndpointRouteBuilder maker) => maker.MapGet("/trials/{id:guid}/slips", ShowAsync);

    private static async Task<IResult> ShowAsync(Guid id, string? all, TrialStore trials)
    {
        if (await trials.FindAsync(new TrialId(id)) is not { } tasting) return Results.NotFound();
        if (tasting is not RevealedTasting revealed) return Page.GoTo($"/trials/{id}");
        var ballots = await trials.BallotsAsync(tasting);
        var tasted = tasting.Book.Tasters.Where(taster => !taster.LetGo && ballots.GetValueOrDefault(taster.Id)?.Counted is not null).ToList();
        var (named, others) = (tasted.Where(taster => taster.Agreed.Named), tasted.Where(taster => !taster.Agreed.Named && ballots[taster.Id].Counted!.Source != BallotSource.Phone).ToList());
        var slips = (all is null ? named : named.Concat(others)).Select(taster => (taster, OwnSlip.Of(revealed, taster.Id, ballots[taster.Id].Counted!.Content))).ToList();
        return Page.Of<SlipsPage>(("Tasting", tasting), ("Slips", (IReadOnlyList<(Taster, OwnSlip)>)slips), ("WithoutPhone", others.Count), ("AndWithoutPhone", all is not null));
    }
}
