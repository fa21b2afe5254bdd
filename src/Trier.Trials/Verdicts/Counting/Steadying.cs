using System.Collections.Immutable;
using Trier.Statistics.Counting;
using Trier.Statistics.Randomness;
using Trier.Statistics.Resampling;
using Trier.Trials.Verdicts.Findings;
using Planned = Trier.Trials.Plans.CountingRule;

namespace Trier.Trials.Verdicts.Counting;

/// <summary>How steady the lead is among these same ballots: voices are drawn anew from them, and the planned rule is applied to each draw.</summary>
internal static class Steadying
{
    private const double Share = 0.9;
    private const int FewestDraws = 999;

    /// <summary>Cells of all draws together, so that a crowd of thousands waits no longer than a dozen friends would for all their draws.</summary>
    private const long MostCells = 2_000_000_000;

    public static SteadyFinding? Of(Electorate electorate, ImmutableArray<SampleRecord> wheels, Seed seed, int draws)
    {
        if (wheels.Length < 2 || draws < 1) return null;
        var scores = Rules.ScoreOneByOne(electorate, electorate.Headline, electorate.Record.Plan.Rule);
        if (scores.Rows.IsEmpty) return null;
        var scale = electorate.Record.Plan.Rule is Planned.PlacePoints points ? Rules.Scale(points.Weights) : 1;
        var fits = (int)Math.Clamp(MostCells / ((long)scores.Rows.Length * scores.Items * scores.Items), Math.Min(FewestDraws, draws), draws);
        var redrawn = Bootstrap.Redraw(
            ResamplingUnits.ByGroup([.. scores.Rows.Select(row => row.Voice)]),
            rows => Standing.Of(scores.Redrawn(rows)),
            seed.Child("steadiness"),
            fits);
        if (!redrawn.Stands) return null;
        var led = redrawn.Value.Where(standing => !standing.Leaders.IsEmpty).ToList();
        if (led.Count == 0) return null;
        return new(led.Count, [.. wheels.Select(wheel =>
        {
            var column = electorate.OwnColumns[wheel.Id];
            var leads = led.Sum(standing => standing.Leaders.Contains(column) ? 1.0 / standing.Leaders.Length : 0) / led.Count;
            var averages = led.Select(standing => standing.Averages[column]).OfType<double>().Select(average => average / scale).ToList();
            return new SteadyLine(wheel.Id, leads, Math.Sqrt(leads * (1 - leads) / led.Count), averages.Count == 0 ? null : Bootstrap.Middle(averages, Share));
        })]);
    }
}
