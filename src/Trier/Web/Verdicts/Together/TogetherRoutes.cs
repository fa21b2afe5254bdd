using Trier.Storage.Tastings;
using Trier.Storage.Verdicts;
using Trier.Trials.Tastings.Steps;
using Trier.Trials.Verdicts.Together;
using Trier.Web.Hosting;

namespace Trier.Web.Verdicts.Together;

/// <summary>Several tastings together, and a recipe's record over all of them. Only tastings whose key is open.</summary>
internal static class TogetherRoutes
{
    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(2.5);

    public static void MapTogether(this IEndpointRouteBuilder maker)
    {
        maker.MapGet("/together", ShowAsync);
        maker.MapGet("/records", RecordAsync);
    }

    private static async Task<IResult> ShowAsync(TrialStore trials, KeptWork work, CancellationToken cancellation)
    {
        var held = await HeldAsync(trials, cancellation);
        var found = held.Count == 0
            ? new KeptProgress<TogetherFindings>(new(0, 0, 0, []), 1)
            : await work.FindAsync(
                KeptStore.Key(new { Of = "together", TogetherFindings.MethodsVersion, Seed = TogetherFindings.Seed.Value, Held = held.Select(tasting => new { tasting.Trial, tasting.Record, tasting.Entries }) }),
                (progress, stop) => TogetherFindings.Of(held, null, progress, stop),
                Patience,
                cancellation);
        return Page.Of<TogetherPage>(("Held", held), ("Records", RecipeRecords.Of(held)), ("Findings", found.Found), ("Done", found.Done));
    }

    private static async Task<IResult> RecordAsync(string? recipe, TrialStore trials, CancellationToken cancellation)
    {
        var records = RecipeRecords.Of(await HeldAsync(trials, cancellation));
        return records.FirstOrDefault(record => string.Equals(record.Recipe, recipe?.Trim(), StringComparison.OrdinalIgnoreCase)) is { } found
            ? Page.Of<RecordPage>(("Record", found))
            : Results.NotFound();
    }

    private static async Task<List<HeldTasting>> HeldAsync(TrialStore trials, CancellationToken cancellation)
    {
        var held = new List<HeldTasting>();
        foreach (var tasting in (await trials.AllAsync(cancellation)).OfType<RevealedTasting>()) held.Add(HeldTasting.Of(tasting, await trials.BallotsAsync(tasting, cancellation)));
        return [.. held.OrderBy(tasting => tasting.Record.Head.Day ?? DateOnly.MaxValue).ThenBy(tasting => tasting.Trial.Value)];
    }
}
