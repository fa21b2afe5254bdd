using System.Text;
using Trier.Publishing.BallotFiles;
using Trier.Publishing.Verdicts;
using Trier.Web.Hosting;

namespace Trier.Web.Verdicts;

/// <summary>The verdict, once the key is open: page, ballots and numbers.</summary>
internal static class VerdictRoutes
{
    // Long enough for the usual dozen friends, so that most people never see a page that is not whole.
    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(2.5);

    public static void MapVerdict(this IEndpointRouteBuilder maker)
    {
        maker.MapGet("/trials/{id:guid}/verdict", async (Guid id, string? weights, JudgedTastings verdicts, CancellationToken cancellation) =>
            await verdicts.FindAsync(new(id), Patience, cancellation) is { } found
                ? Page.Of<VerdictPage>(("Tasting", found.Tasting), ("Verdict", found.Verdict), ("Progress", found.Progress), ("Weights", TriedWeights.Read(weights, found.Verdict)))
                : Page.GoTo($"/trials/{id}"));
        maker.MapPost("/trials/{id:guid}/verdict/stop", (Guid id, JudgedTastings verdicts) =>
        {
            verdicts.Stop(new(id));
            return Page.GoTo($"/trials/{id}/verdict");
        });
        maker.MapPost("/trials/{id:guid}/verdict/go-on", (Guid id, JudgedTastings verdicts) =>
        {
            verdicts.GoOn(new(id));
            return Page.GoTo($"/trials/{id}/verdict");
        });
        maker.MapGet("/trials/{id:guid}/verdict.json", async (Guid id, JudgedTastings verdicts, CancellationToken cancellation) =>
            await verdicts.FindAsync(new(id), Timeout.InfiniteTimeSpan, cancellation) is { } found ? Results.File(Encoding.UTF8.GetBytes(VerdictJson.Write(found.Verdict)), "application/json", "verdict.json") : Results.NotFound());
        maker.MapGet("/trials/{id:guid}/ballots.csv", async (Guid id, JudgedTastings verdicts, CancellationToken cancellation) =>
            await verdicts.FindAsync(new(id), TimeSpan.Zero, cancellation) is { } found ? Results.File(Encoding.UTF8.GetBytes(BallotsCsv.Write(found.Verdict.Record)), "text/csv", "ballots.csv") : Results.NotFound());
    }
}
