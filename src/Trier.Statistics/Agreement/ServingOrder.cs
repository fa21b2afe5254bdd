using System.Collections.Immutable;
using Trier.Statistics.Distributions;
using Trier.Statistics.Randomness;
using Trier.Statistics.RankTests;

namespace Trier.Statistics.Agreement;

/// <summary>One judge's plate and what was said about it.</summary>
/// <param name="Served">Samples in the order served; different ones.</param>
/// <param name="Values">Per sample the liking or place given; null where there is none.</param>
public sealed record ServedPlate(ImmutableArray<int> Served, ImmutableArray<double?> Values);

/// <summary>One position of the serving order.</summary>
/// <param name="Position">0 for the sample served first.</param>
/// <param name="Count">Values given there.</param>
/// <param name="Mean">Their mean residual.</param>
public sealed record PositionEffect(int Position, int Count, double Mean);

/// <summary>How often one sample came straight after another, and how the second fared.</summary>
/// <param name="Before">The sample before.</param>
/// <param name="Sample">The sample after it.</param>
/// <param name="Count">How often, with a value given.</param>
/// <param name="Mean">Mean residual of the sample after; null with fewer than 24 judges, where only counts are told, and where the pair never came.</param>
public sealed record CarryOver(int Before, int Sample, int Count, double? Mean);

/// <summary>What the serving order did.</summary>
/// <param name="Positions">Per position the mean residual.</param>
/// <param name="Statistic">Sum over positions of count times squared mean.</param>
/// <param name="P">The chance of as much when the plates are dealt anew over the judges.</param>
/// <param name="First">The mean residual of the sample served first.</param>
/// <param name="FirstInterval">Its 90 % t interval over judges; null with fewer than 3.</param>
/// <param name="FirstP">The chance of a first-position effect as large either way, in the same deals.</param>
/// <param name="Mentioned">True where p is at most 0.01.</param>
/// <param name="CarryOvers">Every ordered pair of samples.</param>
public sealed record ServingOrderResult(
    ImmutableArray<PositionEffect> Positions, double Statistic, PValue P, double First, Interval? FirstInterval, PValue FirstP, bool Mentioned,
    ImmutableArray<CarryOver> CarryOvers);

/// <summary>
/// Did the place in the serving order matter? Each value loses its sample's mean and its judge's mean (fitted together, so that missing values do not bend them); the statistic is the sum over positions of count times squared mean residual. It is held against dealing
/// the orders that were used anew over the judges, which needs no assumption about the values. An order that names fewer samples than a judge valued leaves the rest of that judge out of that deal. Source: permutation of plates
/// [Pitman1937]; the measure is this project's own.
/// </summary>
public static class ServingOrder
{
    /// <summary>From this many judges on, the mean after each sample is told; below, counts only.</summary>
    public const int FewestForCarryOver = 24;

    private const double Mention = 0.01;
    private const double Slack = 1e-9;

    /// <summary>Tests the serving order.</summary>
    /// <param name="samples">How many samples there are, at least 2.</param>
    /// <param name="plates">One a judge.</param>
    /// <param name="seed">Where chance comes from.</param>
    /// <param name="effort">How many draws; <see cref="Effort.Usual"/> if null.</param>
    /// <returns>Refused for one sample, fewer than 3 judges with values, or plates that are all in one order.</returns>
    /// <exception cref="ArgumentException">A plate names a sample out of range or twice, or its values are not one per sample.</exception>
    public static Answer<ServingOrderResult> Test(int samples, ImmutableArray<ServedPlate> plates, Seed seed, Effort? effort = null)
    {
        effort ??= Effort.Usual;
        for (var j = 0; j < plates.Length; j++) Check(samples, plates[j], j);
        if (samples < 2) return new Refusal(RefusalKind.TooFewItems, "There is one sample: no order to speak of.");
        var kept = plates.Where(plate => plate.Served.Count(sample => plate.Values[sample].HasValue) >= 2).ToArray();
        if (kept.Length < 3) return new Refusal(RefusalKind.TooFewBallots, "Fewer than three judges gave two values.");
        if (kept.All(plate => plate.Served.AsSpan().SequenceEqual(kept[0].Served.AsSpan())))
            return new Refusal(RefusalKind.WrongDesign, "All plates were in one order: position and sample cannot be told apart.");
        var residuals = AdditiveResiduals.Of(kept.Select(Given), samples);
        var positions = kept.Max(plate => plate.Served.Length);
        var orders = kept.Select(plate => Positions(plate.Served, samples)).ToArray();
        var (counts, sums) = (new int[positions], new double[positions]);
        var observed = Sum(residuals, orders, counts, sums);
        var first = counts[0] == 0 ? 0 : sums[0] / counts[0];
        ImmutableArray<PositionEffect> effects = [.. Enumerable.Range(0, positions).Select(p => new PositionEffect(p, counts[p], counts[p] == 0 ? 0 : sums[p] / counts[p]))];
        var hits = DrawParts.Run(effort.Draws, seed.Child("serving order"), (draws, generator) =>
        {
            var (dealtCounts, dealtSums) = (new int[positions], new double[positions]);
            var dealt = (int[][])orders.Clone();
            long all = 0, ahead = 0;
            for (var draw = 0; draw < draws; draw++)
            {
                generator.Shuffle<int[]>(dealt);
                if (Sum(residuals, dealt, dealtCounts, dealtSums) >= observed - Slack) all++;
                if (dealtCounts[0] > 0 && Math.Abs(dealtSums[0] / dealtCounts[0]) >= Math.Abs(first) - Slack) ahead++;
            }

            return new Hits(all, ahead);
        });
        var p = PValue.Drawn(hits.Statistic, effort.Draws);
        double[] firsts = [.. kept.Select((plate, j) => residuals[j][plate.Served[0]]).OfType<double>()];
        return new ServingOrderResult(
            effects, observed, p, first, firsts.Length < 3 ? null : IntervalOf(firsts), PValue.Drawn(hits.Lead, effort.Draws), p.Value <= Mention, After(samples, kept, residuals));
    }

    /// <summary>The values less the mean residual of the position each was served in: what would be counted had the order been no matter.</summary>
    /// <param name="samples">How many samples there are.</param>
    /// <param name="plates">The plates tested.</param>
    /// <param name="found">What the test found on them.</param>
    /// <returns>Per plate one value per sample.</returns>
    public static ImmutableArray<ImmutableArray<double?>> WithoutPosition(int samples, ImmutableArray<ServedPlate> plates, ServingOrderResult found)
    {
        ArgumentNullException.ThrowIfNull(found);
        return
        [
            .. plates.Select(plate =>
            {
                var position = Positions(plate.Served, samples);
                return plate.Values.Select((value, sample) => value - (position[sample] >= 0 && position[sample] < found.Positions.Length ? found.Positions[position[sample]].Mean : 0)).ToImmutableArray();
            }),
        ];
    }

    private static void Check(int samples, ServedPlate plate, int judge)
    {
        if (plate.Values.Length != samples) throw new ArgumentException($"Plate {judge} has {plate.Values.Length} values for {samples} samples.", nameof(plate));
        if (plate.Values.Any(value => value is { } v && !double.IsFinite(v))) throw new ArgumentException($"Plate {judge} has a value that is not a finite number.", nameof(plate));
        if (plate.Served.Any(sample => sample < 0 || sample >= samples) || plate.Served.Distinct().Count() != plate.Served.Length)
            throw new ArgumentException($"Plate {judge} names a sample twice or one that does not exist.", nameof(plate));
    }

    private static double?[] Given(ServedPlate plate)
    {
        var values = new double?[plate.Values.Length];
        foreach (var sample in plate.Served) values[sample] = plate.Values[sample];
        return values;
    }

    private static int[] Positions(ImmutableArray<int> served, int samples)
    {
        var positions = new int[samples];
        Array.Fill(positions, -1);
        for (var place = 0; place < served.Length; place++) positions[served[place]] = place;
        return positions;
    }

    private static double Sum(double?[][] residuals, int[][] orders, int[] counts, double[] sums)
    {
        Array.Clear(counts);
        Array.Clear(sums);
        for (var judge = 0; judge < residuals.Length; judge++)
        {
            var order = orders[judge];
            for (var sample = 0; sample < order.Length; sample++)
            {
                if (order[sample] < 0 || residuals[judge][sample] is not { } residual) continue;
                counts[order[sample]]++;
                sums[order[sample]] += residual;
            }
        }

        var statistic = 0.0;
        for (var p = 0; p < counts.Length; p++)
        {
            if (counts[p] > 0) statistic += sums[p] * sums[p] / counts[p];
        }

        return statistic;
    }

    private static Interval IntervalOf(double[] values)
    {
        var mean = values.Average();
        return Interval.OfMean(mean, values.Sum(value => (value - mean) * (value - mean)) / (values.Length - 1), values.Length);
    }

    private static ImmutableArray<CarryOver> After(int samples, ServedPlate[] plates, double?[][] residuals)
    {
        var (counts, sums) = (new int[samples, samples], new double[samples, samples]);
        for (var judge = 0; judge < plates.Length; judge++)
        {
            var served = plates[judge].Served;
            for (var place = 1; place < served.Length; place++)
            {
                if (residuals[judge][served[place]] is not { } residual) continue;
                counts[served[place - 1], served[place]]++;
                sums[served[place - 1], served[place]] += residual;
            }
        }

        var tell = plates.Length >= FewestForCarryOver;
        return
        [
            .. from before in Enumerable.Range(0, samples)
               from sample in Enumerable.Range(0, samples)
               where before != sample
               let count = counts[before, sample]
               select new CarryOver(before, sample, count, tell && count > 0 ? sums[before, sample] / count : null),
        ];
    }
}
