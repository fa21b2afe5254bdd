using Trier.Publishing.Writing;
using Trier.Trials.Plans;
using Trier.Trials.Verdicts;

namespace Trier.Publishing.Charts;

/// <summary>Makes the forest of a verdict: how far each wheel seems behind the leader, with rulers to hold the gaps against.</summary>
public static class VerdictForest
{
    /// <summary>The forest; null where places are not the planned rule or nothing could be tested.</summary>
    /// <param name="verdict">The verdict.</param>
    public static ForestData? Of(Verdict verdict)
    {
        ArgumentNullException.ThrowIfNull(verdict);
        if (verdict.Record.Plan.Rule is not CountingRule.AveragePlace || verdict.Pairs.IsEmpty || verdict.Wheels.Length < 2) return null;
        var looks = VerdictLooks.Of(verdict.Record);
        var first = verdict.Wheels[0];
        var rows = verdict.Wheels.Select(wheel =>
        {
            var (gap, low, high) = Gap(verdict, first.Id, wheel.Id);
            return new ForestRow(wheel.Name, looks[wheel.Id], gap, low, high, Chance(verdict, wheel.Id));
        }).ToList();
        var chances = rows.Any(row => row.Words.Length > 0);
        var said = rows.Skip(1).Select(row => $"{row.Name} {Signed(row.Behind)} ({Signed(row.Low)} to {Signed(row.High)})");
        return new(
            rows,
            [.. Rulers(verdict)],
            $"average places behind {first.Name}, as the voices give them; the thick line holds the gap 9 times in 10, and a lead is seen a little too large in a small company",
            chances ? Column(verdict) : "",
            $"How far behind {first.Name}",
            $"Average places behind {first.Name}, and between what the gap lies 9 times in 10: {string.Join("; ", said)}.{(chances ? $" In how many of ten cases it is the favourite, by one model: {string.Join("; ", rows.Select(row => $"{row.Name} {row.Words}"))}." : "")}");
    }

    private static string Signed(double places) => Numbers.Places(places, 2).Replace('-', '−');

    private static string Column(Verdict verdict) => verdict.Deep?.Chances is { InCamps.IsEmpty: false } ? "the favourite of its camp, times in 10" : "the favourite, times in 10";

    private static (double Gap, double Low, double High) Gap(Verdict verdict, string first, string id)
    {
        if (first == id) return (0, 0, 0);
        var pair = verdict.Pairs.First(pair => (pair.Better == first && pair.Worse == id) || (pair.Better == id && pair.Worse == first));
        var (low, high) = pair.GapInterval is { } interval ? (interval.Low, interval.High) : (pair.Gap, pair.Gap);
        return pair.Better == first ? (pair.Gap, low, high) : (-pair.Gap, -high, -low);
    }

    private static string Chance(Verdict verdict, string id)
    {
        if (verdict.Deep?.Chances is not { Settled: true } chances) return "";
        return chances.InCamps.IsEmpty
            ? Tenths(chances.Of(id).Chance)
            : string.Join(", ", chances.InCamps.Select(camp => $"{camp.Taste.ToString().ToLowerInvariant()} {Tenths(camp.Wheels.First(wheel => wheel.Id == id).Chance)}"));
    }

    private static string Tenths(double chance) => Math.Round(10 * chance, MidpointRounding.AwayFromZero) switch
    {
        >= 10 => "more than 9",
        <= 0 => "under 1",
        var tenths => Numbers.Plain(tenths),
    };

    private static IEnumerable<ForestRuler> Rulers(Verdict verdict)
    {
        foreach (var repeat in verdict.Repeats)
        {
            if (repeat.Yardstick is { } yardstick) yield return new(yardstick, $"{Numbers.Places(yardstick, 2)}: one cheese served twice lands nearer than this in 9 panels of 10");
        }

        foreach (var same in verdict.SameRecipe)
            yield return new(same.Gap, $"{Numbers.Places(same.Gap, 2)}: {(same.OneMake ? $"two wheels of one make of {same.Recipe}" : $"{same.Recipe} made twice")}, {verdict.Sample(same.Better).Name} and {verdict.Sample(same.Worse).Name}");
    }
}
