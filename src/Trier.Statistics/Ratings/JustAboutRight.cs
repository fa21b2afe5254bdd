using System.Collections.Immutable;
using Trier.Statistics.Distributions;

namespace Trier.Statistics.Ratings;

/// <summary>One answer to "is there too little, just enough or too much of it?".</summary>
public enum Amount
{
    /// <summary>Too little.</summary>
    TooLittle = -1,

    /// <summary>Just about right.</summary>
    JustRight = 0,

    /// <summary>Too much.</summary>
    TooMuch = 1,
}

/// <summary>How much less those liked an item who found something amiss.</summary>
/// <param name="Amount">Too little, or too much.</param>
/// <param name="Count">How many said so and gave a liking.</param>
/// <param name="Share">Of all who answered both.</param>
/// <param name="MeanLiking">Their mean liking.</param>
/// <param name="Drop">Mean liking of those who said just right, less theirs.</param>
/// <param name="Interval">90 % interval of the drop by Welch's t; null with fewer than 8 people in either group, or no spread in both.</param>
public sealed record MeanDrop(Amount Amount, int Count, double Share, double MeanLiking, double Drop, Interval? Interval);

/// <summary>What one question says about one item.</summary>
/// <param name="TooLittle">Who said too little.</param>
/// <param name="JustRight">Who said just right.</param>
/// <param name="TooMuch">Who said too much.</param>
/// <param name="MeanWhereRight">Mean liking of those who said just right.</param>
/// <param name="Drops">Too little and too much, where anybody said so.</param>
public sealed record JustAboutRightResult(int TooLittle, int JustRight, int TooMuch, double MeanWhereRight, ImmutableArray<MeanDrop> Drops);

/// <summary>
/// Just about right: counts, and the mean drop in liking. People chose their group themselves, so a drop is no proof of a cause; it is told with its interval, never as "shown".
/// The interval is Welch's t [Welch1947] at 90 %. The measure is common practice, no source.
/// </summary>
public static class JustAboutRight
{
    /// <summary>The fewest people in each of the two groups for an interval.</summary>
    public const int FewestForInterval = 8;

    private const double Level = 0.90;

    /// <summary>Sums up one question about one item.</summary>
    /// <param name="answers">Per person the answer and the liking; only those who gave both take part.</param>
    /// <returns>Refused where nobody said just right: there is nothing to measure a drop from.</returns>
    /// <exception cref="ArgumentException">A liking is not finite.</exception>
    public static Answer<JustAboutRightResult> Of(IEnumerable<(Amount? Amount, double? Liking)> answers)
    {
        ArgumentNullException.ThrowIfNull(answers);
        var both = answers.Where(answer => answer is { Amount: not null, Liking: not null }).Select(answer => (Amount: answer.Amount!.Value, Liking: answer.Liking!.Value)).ToArray();
        if (both.Any(answer => !double.IsFinite(answer.Liking))) throw new ArgumentException("A liking is not a finite number.", nameof(answers));
        double[] Group(Amount amount) => [.. both.Where(answer => answer.Amount == amount).Select(answer => answer.Liking)];
        var right = Group(Amount.JustRight);
        if (right.Length == 0) return new Refusal(RefusalKind.TooFewBallots, "Nobody who gave a liking said just right: there is nothing to measure a drop from.");
        var drops = ImmutableArray.CreateBuilder<MeanDrop>();
        foreach (var amount in (Amount[])[Amount.TooLittle, Amount.TooMuch])
        {
            var group = Group(amount);
            if (group.Length == 0) continue;
            var drop = right.Average() - group.Average();
            drops.Add(new MeanDrop(amount, group.Length, (double)group.Length / both.Length, group.Average(), drop, Welch(drop, right, group)));
        }

        return new JustAboutRightResult(Group(Amount.TooLittle).Length, right.Length, Group(Amount.TooMuch).Length, right.Average(), drops.DrainToImmutable());
    }

    private static Interval? Welch(double drop, double[] a, double[] b)
    {
        if (Math.Min(a.Length, b.Length) < FewestForInterval) return null;
        var (u, v) = (Variance(a) / a.Length, Variance(b) / b.Length);
        if (u + v == 0) return null;
        var freedom = (u + v) * (u + v) / ((u * u / (a.Length - 1)) + (v * v / (b.Length - 1)));
        var half = Tails.StudentQuantile((1 - Level) / 2, freedom) * Math.Sqrt(u + v);
        return new Interval(drop - half, drop + half, Level);
    }

    private static double Variance(double[] values)
    {
        var mean = values.Average();
        return values.Sum(value => (value - mean) * (value - mean)) / (values.Length - 1);
    }
}
