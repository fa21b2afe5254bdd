using System.Collections.Immutable;
using Trier.Statistics.Distributions;
using Trier.Statistics.Randomness;
using Trier.Statistics.RankTests;

namespace Trier.Statistics.Resampling;

/// <summary>What is drawn as one: single ballots, or groups of people who tasted together.</summary>
public sealed class ResamplingUnits
{
    private ResamplingUnits(ImmutableArray<ImmutableArray<int>> units, int rows)
    {
        Units = units;
        Rows = rows;
    }

    /// <summary>The units, each the rows that stand and fall together.</summary>
    public ImmutableArray<ImmutableArray<int>> Units { get; }

    /// <summary>How many rows there are in all.</summary>
    public int Rows { get; }

    /// <summary>Every row for itself.</summary>
    /// <param name="rows">How many, at least 1.</param>
    public static ResamplingUnits ByRow(int rows)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(rows, 1);
        return new ResamplingUnits([.. Enumerable.Range(0, rows).Select(row => ImmutableArray.Create(row))], rows);
    }

    /// <summary>Rows with the same label are one unit: a table, a couple, a sitting.</summary>
    /// <param name="labels">One a row; null stands for itself.</param>
    /// <exception cref="ArgumentException">There is no row.</exception>
    public static ResamplingUnits ByGroup(ImmutableArray<int?> labels)
    {
        if (labels.IsDefaultOrEmpty) throw new ArgumentException("There is no row.", nameof(labels));
        return new ResamplingUnits(
            [.. Enumerable.Range(0, labels.Length).GroupBy(row => labels[row] is { } label ? label : long.MinValue + row).Select(group => group.ToImmutableArray())], labels.Length);
    }
}

/// <summary>What the bootstrap found about one number.</summary>
/// <param name="Estimate">On the rows themselves.</param>
/// <param name="StandardError">The spread of the redrawn values.</param>
/// <param name="Percentile">Between the redrawn values' quantiles. Not to be trusted below 20 units; see <see cref="Bootstrap"/>.</param>
/// <param name="Draws">How many redrawn samples gave a number.</param>
/// <param name="Without">How many gave none, such as where an item was in no ballot drawn.</param>
public sealed record BootstrapResult(double Estimate, double StandardError, Interval Percentile, int Draws, int Without);

/// <summary>
/// The bootstrap: units are drawn with replacement as often as there are units, and the number is worked out anew. Each draw has a seed of its own, so that any number of threads gives the same bits.
/// What simulation found: percentile intervals of a gap between average places cover 72 to 90 % at a nominal 90 % (8 to 40 judges), so a verdict uses t intervals; the share of redrawn samples in which the leader leads says 85 % where it is
/// the true favourite in 74 % (5 items, 14 judges): it tells how steady a lead is among these same ballots, never the chance to be best. With fewer than 20 units, or fewer than 10 groups, do not use the interval.
/// Source: [EfronTibshirani1993].
/// </summary>
public static class Bootstrap
{
    private const int FewestUnits = 3;

    /// <summary>Redraws units and works a number out anew.</summary>
    /// <param name="units">What is drawn as one.</param>
    /// <param name="statistic">The number, from the rows drawn (a row may stand several times); null where there is none. Called from several threads at once.</param>
    /// <param name="seed">Where chance comes from.</param>
    /// <param name="draws">How many redrawn samples, at least 99.</param>
    /// <param name="level">Nominal cover of the interval.</param>
    /// <param name="threads">At most so many threads; all cores if null. The result does not depend on it.</param>
    /// <returns>Refused with fewer than 3 units, without a number on the rows themselves, or where half the samples give none.</returns>
    public static Answer<BootstrapResult> Of(
        ResamplingUnits units, Func<ImmutableArray<int>, double?> statistic, Seed seed, int draws = 1999, double level = 0.90, int? threads = null)
    {
        ArgumentNullException.ThrowIfNull(units);
        ArgumentNullException.ThrowIfNull(statistic);
        if (units.Units.Length >= FewestUnits && Finite(statistic([.. Enumerable.Range(0, units.Rows)])) is null)
            return new Refusal(RefusalKind.NoInformation, "The number does not exist on these ballots.");
        var values = Redraw(units, rows => Finite(statistic(rows)), seed, draws, threads);
        if (!values.Stands) return values.Refusal!;
        var estimate = statistic([.. Enumerable.Range(0, units.Rows)])!.Value;
        double[] found = [.. values.Value.OfType<double>().Order()];
        if (found.Length < draws / 2) return new Refusal(RefusalKind.NoInformation, "In half the redrawn samples the number does not exist.");
        var mean = found.Average();
        var error = Math.Sqrt(found.Sum(value => (value - mean) * (value - mean)) / (found.Length - 1));
        return new BootstrapResult(estimate, error, Middle(found, level), found.Length, draws - found.Length);
    }

    /// <summary>Redraws units and works anything out anew.</summary>
    /// <typeparam name="T">What is worked out.</typeparam>
    /// <param name="units">What is drawn as one.</param>
    /// <param name="value">From the rows drawn; a row may stand several times. Called from several threads at once.</param>
    /// <param name="seed">Where chance comes from.</param>
    /// <param name="draws">How many redrawn samples, at least 99.</param>
    /// <param name="threads">At most so many threads; all cores if null. The result does not depend on it.</param>
    /// <returns>One value a draw. Refused with fewer than 3 units.</returns>
    public static Answer<ImmutableArray<T>> Redraw<T>(ResamplingUnits units, Func<ImmutableArray<int>, T> value, Seed seed, int draws = 1999, int? threads = null)
    {
        ArgumentNullException.ThrowIfNull(units);
        ArgumentNullException.ThrowIfNull(value);
        ArgumentOutOfRangeException.ThrowIfLessThan(draws, 99);
        if (units.Units.Length < FewestUnits) return new Refusal(RefusalKind.TooFewBallots, $"Redrawing needs {FewestUnits} units; there are {units.Units.Length}.");
        var values = new T[draws];
        Parallel.For(0, draws, Splitting.Threads(threads), draw => values[draw] = value(Drawn(units, seed.Child("bootstrap").Child(draw).Generator())));
        return values.ToImmutableArray();
    }

    /// <summary>The interval between the quantiles of redrawn values that holds a share of them.</summary>
    /// <param name="values">At least one.</param>
    /// <param name="level">The share, between 0 and 1.</param>
    public static Interval Middle(IEnumerable<double> values, double level)
    {
        double[] sorted = [.. values.Order()];
        if (sorted.Length == 0) throw new ArgumentException("There is no value.", nameof(values));
        var tail = (1 - level) / 2;
        return new Interval(Quantile(sorted, tail), Quantile(sorted, 1 - tail), level);
    }

    /// <summary>
    /// How often each item leads among redrawn ballots: how steady a lead is, never a chance to be best (it says 85 % where 74 % are right). Shared leads count for each by their share.
    /// </summary>
    /// <param name="units">What is drawn as one.</param>
    /// <param name="items">How many items.</param>
    /// <param name="leaders">The leaders among the rows drawn; none where there are none. Called from several threads at once.</param>
    /// <param name="seed">Where chance comes from.</param>
    /// <param name="draws">How many redrawn samples, at least 99.</param>
    /// <param name="threads">At most so many threads; all cores if null. The result does not depend on it.</param>
    /// <returns>Per item the share of samples it leads. Refused with fewer than 3 units, or where no sample has a leader.</returns>
    public static Answer<ImmutableArray<double>> Steadiness(
        ResamplingUnits units, int items, Func<ImmutableArray<int>, ImmutableArray<int>> leaders, Seed seed, int draws = 1999, int? threads = null)
    {
        var led = Redraw(units, leaders, seed, draws, threads);
        if (!led.Stands) return led.Refusal!;
        var shares = new double[items];
        var with = 0;
        foreach (var first in led.Value)
        {
            if (first.IsEmpty) continue;
            with++;
            foreach (var item in first) shares[item] += 1.0 / first.Length;
        }

        if (with == 0) return new Refusal(RefusalKind.NoInformation, "No redrawn sample has a leader.");
        return shares.Select(share => share / with).ToImmutableArray();
    }

    private static ImmutableArray<int> Drawn(ResamplingUnits units, Generator generator)
    {
        var rows = ImmutableArray.CreateBuilder<int>(units.Rows);
        for (var unit = 0; unit < units.Units.Length; unit++) rows.AddRange(units.Units[generator.NextInt(units.Units.Length)]);
        return rows.DrainToImmutable();
    }

    /// <summary>The quantile that lies between neighbouring values in proportion.</summary>
    private static double Quantile(double[] sorted, double share)
    {
        var at = share * (sorted.Length - 1);
        var below = (int)at;
        return below + 1 == sorted.Length ? sorted[below] : sorted[below] + ((at - below) * (sorted[below + 1] - sorted[below]));
    }

    private static double? Finite(double? value) => value is { } number && double.IsFinite(number) ? number : null;
}

/// <summary>
/// A permutation test of labels over units: the chance that the statistic is at least as large when the units' labels are dealt anew. Each deal has a seed of its own, so that any number of threads gives the same bits. Exact in
/// size whatever the distribution, as long as units, not rows, are what could have been dealt otherwise. Source: [Pitman1937].
/// </summary>
public static class PermutationTest
{
    // Values equal but for rounding count as reached.
    private const double Slack = 1e-9;

    /// <summary>Deals labels anew.</summary>
    /// <param name="units">What is dealt as one.</param>
    /// <param name="labels">One a unit.</param>
    /// <param name="statistic">From one label a row; large where the labels matter. Called from several threads at once.</param>
    /// <param name="seed">Where chance comes from.</param>
    /// <param name="draws">How many deals, at least 99.</param>
    /// <param name="threads">At most so many threads; all cores if null. The result does not depend on it.</param>
    /// <returns>p = (1 + hits)/(1 + draws). Refused where all labels are the same, or the statistic is not finite.</returns>
    /// <exception cref="ArgumentException">There is not one label a unit.</exception>
    public static Answer<PValue> OfLabels(
        ResamplingUnits units, ImmutableArray<int> labels, Func<ImmutableArray<int>, double> statistic, Seed seed, int draws = 9_999, int? threads = null)
    {
        ArgumentNullException.ThrowIfNull(units);
        ArgumentNullException.ThrowIfNull(statistic);
        ArgumentOutOfRangeException.ThrowIfLessThan(draws, 99);
        if (labels.Length != units.Units.Length) throw new ArgumentException($"There are {labels.Length} labels for {units.Units.Length} units.", nameof(labels));
        if (labels.All(label => label == labels[0])) return new Refusal(RefusalKind.NoInformation, "All labels are the same.");
        var observed = statistic(Spread(units, labels.AsSpan()));
        if (!double.IsFinite(observed)) return new Refusal(RefusalKind.NoInformation, "The statistic does not exist on these ballots.");
        var level = observed - (Slack * Math.Max(1, Math.Abs(observed)));
        var reached = new bool[draws];
        Parallel.For(0, draws, Splitting.Threads(threads), draw =>
        {
            var dealt = labels.ToArray();
            seed.Child("labels").Child(draw).Generator().Shuffle<int>(dealt);
            reached[draw] = statistic(Spread(units, dealt)) >= level;
        });
        return PValue.Drawn(reached.LongCount(hit => hit), draws);
    }

    private static ImmutableArray<int> Spread(ResamplingUnits units, ReadOnlySpan<int> labels)
    {
        var rows = new int[units.Rows];
        for (var unit = 0; unit < labels.Length; unit++)
        {
            foreach (var row in units.Units[unit]) rows[row] = labels[unit];
        }

        return [.. rows];
    }
}

/// <summary>How work is split.</summary>
internal static class Splitting
{
    public static ParallelOptions Threads(int? threads) => new() { MaxDegreeOfParallelism = threads ?? -1 };
}
