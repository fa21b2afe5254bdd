using System.Collections.Concurrent;
using System.Text;
using Trier.Publishing.BallotFiles;
using Trier.Publishing.Verdicts;
using Trier.Statistics.Randomness;
using Trier.Storage.Tastings;
using Trier.Trials.Common;
using Trier.Trials.Tastings.Steps;
using Trier.Trials.Verdicts;
using Trier.Web.Hosting;

namespace Trier.Web.Verdicts;

/// <summary>The verdict, once the key is open: page, ballots and numbers.</summary>
internal static class VerdictRoutes
{
    public static void MapVerdict(this IEndpointRouteBuilder maker)
    {
        maker.MapGet("/trials/{id:guid}/verdict", async (Guid id, JudgedTastings verdicts) =>
            await verdicts.FindAsync(new(id)) is { } found ? Page.Of<VerdictPage>(("Tasting", found.Tasting), ("Verdict", found.Verdict)) : Page.GoTo($"/trials/{id}"));
        maker.MapGet("/trials/{id:guid}/verdict.json", async (Guid id, JudgedTastings verdicts) =>
            await verdicts.FindAsync(new(id)) is { } found ? Results.File(Encoding.UTF8.GetBytes(VerdictJson.Write(found.Verdict)), "application/json", "verdict.json") : Results.NotFound());
        maker.MapGet("/trials/{id:guid}/ballots.csv", async (Guid id, JudgedTastings verdicts) =>
            await verdicts.FindAsync(new(id)) is { } found ? Results.File(Encoding.UTF8.GetBytes(BallotsCsv.Write(found.Verdict.Record)), "text/csv", "ballots.csv") : Results.NotFound());
    }
}

/// <summary>Judges a revealed tasting once and keeps the verdict until something is corrected.</summary>
/// <param name="trials">The trials.</param>
internal sealed class JudgedTastings(TrialStore trials)
{
    private readonly ConcurrentDictionary<TrialId, (int Events, Lazy<Verdict> Verdict)> _kept = new();

    /// <summary>The verdict, or null where there is no such trial or its key is not open.</summary>
    /// <param name="id">Which trial.</param>
    public async Task<(RevealedTasting Tasting, Verdict Verdict)?> FindAsync(TrialId id)
    {
        if (await trials.FindAsync(id) is not RevealedTasting tasting) return null;
        var events = tasting.Book.Log.Length;
        if (!_kept.TryGetValue(id, out var kept) || kept.Events != events)
        {
            var record = tasting.Record(await trials.BallotsAsync(tasting));
            // The seed is a number of the tasting, so that the same record gives the same verdict on every machine.
            var seed = new Seed(BitConverter.ToUInt64(id.Value.ToByteArray(), 8));
            kept = _kept.AddOrUpdate(id, _ => (events, new(() => Judge.Of(record, seed))), (_, old) => old.Events == events ? old : (events, new(() => Judge.Of(record, seed))));
        }

        return (tasting, kept.Verdict.Value);
    }
}
