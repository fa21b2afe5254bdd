using System.Collections.Immutable;
using System.Globalization;
using Trier.Trials.Verdicts.Findings;

namespace Trier.Trials.Verdicts.Sentences;

/// <summary>The order of serving and the sittings.</summary>
internal static class ServingSentences
{
    public static ImmutableArray<string> All(Verdict verdict)
    {
        var sentences = ImmutableArray.CreateBuilder<string>();
        if (verdict.Deep?.Order is { } order) sentences.Add(Order(verdict, order));
        if (verdict.Deep?.Sittings is { } sittings) sentences.Add(Sittings(verdict, sittings));
        return sentences.ToImmutable();
    }

    /// <summary>For the top of the page: the sittings one by one where they part; else null.</summary>
    public static string? Headline(Verdict verdict) => verdict.Deep?.Sittings is { Apart: true } sittings ? Sittings(verdict, sittings) : null;

    private static string Order(Verdict verdict, OrderFinding order)
    {
        var measure = order.ByLiking ? "liked" : "placed";
        var better = order.First >= 0 ? "better" : "worse";
        var unit = order.ByLiking ? "points of liking" : "places";
        var first = $"What came first on a plate was {measure} {Math.Abs(order.First).ToString("0.0", CultureInfo.InvariantCulture)} {unit} {better} than usual";
        var between = order.FirstInterval is { } interval ? $" (between {Signed(interval.Low)} and {Signed(interval.High)} in 9 of 10 such panels)" : "";
        var all = order.Mentioned
            ? $"; over all positions the order of serving mattered here beyond what luck does {Chance.OneIn(order.P.Value)}"
            : $"; over all positions luck alone does as much {Chance.TimesInTen(order.P.Value)}, so this is a remark and no finding, which would take 1 time in 100";
        var leader = order.Best.SequenceEqual(order.BestWithout)
            ? $". Allowing for it, {Naming.Of(verdict, order.Best)} {Phrase.Verb(order.Best.Length, "is", "are")} still best {measure}."
            : $". Allowing for it, {Naming.Of(verdict, order.BestWithout)} would be best {measure}, not {Naming.Of(verdict, order.Best)}.";
        return first + between + all + leader;
    }

    private static string Sittings(Verdict verdict, SittingsFinding sittings)
    {
        var each = string.Join("; ", sittings.Sittings.Select(line => $"at sitting {Phrase.Number(line.Number)} ({Phrase.Number(line.Ballots)} {Phrase.Ballots(line.Ballots)}) {Naming.Leading(verdict, line.Leaders)}"));
        return sittings.Apart
            ? $"The sittings parted, as luck does {Chance.OneIn(sittings.P.Value)}, so they are told one by one: {each}."
            : $"By sitting: {each}; luck alone parts sittings this far {Chance.TimesInTen(sittings.P.Value)}.";
    }

    private static string Signed(double number)
    {
        var rounded = Math.Round(number, 1, MidpointRounding.AwayFromZero);
        return (rounded > 0 ? "+" : rounded < 0 ? "\u2212" : "") + Math.Abs(rounded).ToString("0.0", CultureInfo.InvariantCulture);
    }
}
