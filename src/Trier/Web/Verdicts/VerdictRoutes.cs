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
        maker.MapGet("/trials/{id:guid}/verdict", async (Guid id, JudgedTastings verdicts, CancellationToken cancellation) =>
            await verdicts.FindAsync(new(id), Patience, cancellation) is { } found
                ? Page.Of<VerdictPage>(("Tasting", found.Tasting), ("Verdict", found.Verdict), ("Done", found.Done))
                : Page.GoTo($"/trials/{id}"));
        maker.MapGet("/trials/{id:guid}/verdict.json", async (Guid id, JudgedTastings verdicts, CancellationToken cancellation) =>
            await verdicts.FindAsync(new(id), Timeout.InfiniteTimeSpan, cancellation) is { } found ? Results.File(Encoding.UTF8.GetBytes(VerdictJson.Write(found.Verdict)), "application/json", "verdict.json") : Results.NotFound());
        maker.MapGet("/trials/{id:guid}/ballots.csv", async (Guid id, JudgedTastings verdicts, CancellationToken cancellation) =>
            await verdicts.FindAsync(new(id), TimeSpan.Zero, cancellation) is { } found ? Results.File(Encoding.UTF8.GetBytes(BallotsCsv.Write(found.Verdict.Record)), "text/csv", "ballots.csv") : Results.NotFound());
    }
}
