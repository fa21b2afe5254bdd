using System.Collections.Immutable;
using Trier.Statistics.Randomness;
using Trier.Statistics.RankTests;

namespace Trier.Statistics.Agreement;

/// <summary>Whether two or more sittings treated the samples differently.</summary>
/// <param name="Means">Per sitting, in the order of their labels, per sample the mean residual; null where nobody there valued it.</param>
/// <param name="Labels">The sittings' labels, rising.</param>
/// <param name="Statistic">Sum over sittings and samples of count times squared mean residual.</param>
/// <param name="P">The chance of as much when the sittings' labels are dealt anew over the judges.</param>
/// <param name="Apart">True where p is at most 0.01: the headline is then told per sitting.</param>
public sealed record SittingsResult(
    ImmutableArray<ImmutableArray<double?>> Means, ImmutableArray<int> Labels, double Statistic, PValue P, bool Apart);

/// <summary>
/// The same samples at several sittings: each value loses its sample's and its judge's mean, and what is left is averaged by sitting and sample; labels are dealt anew over the judges. A sitting that likes
/// everything more shows nothing here, because the judges' means take that out. Source: permutation of labels [Pitman1937]; the measure is this project's own.
/// </summary>
public static class Sittings
{
    private const double Mention = 0.01;
    private const double Slack = 1e-9;

    /// <summary>Tests the sittings.</summary>
    /// <param name="values">Per judge one value per sample, null where there is none.</param>
    /// <param name="labels">Per judge the sitting; a judge heard at several is one row a sitting, and the test is then only rough.</param>
    /// <param name="voices">Per judge a number shared with those who spoke with one voice, or null for a voice of their own; nobody is joined if it is left out. At one sitting one voice is one row, the mean of its judges: dealt apart, their agreement would look like the sitting's doing.</param>
    /// <param name="seed">Where chance comes from.</param>
    /// <param name="effort">How many draws; <see cref="Effort.Usual"/> if null.</param>
    /// <returns>Refused for one sample, one sitting, or a sitting of fewer than 3 judges.</returns>
    /// <exception cref="ArgumentException">Judges differ in their number of values, labels are not one a judge, or a value is not finite.</exception>
    public static Answer<SittingsResult> Test(ImmutableArray<ImmutableArray<double?>> values, ImmutableArray<int> labels, Seed seed, Effort? effort = null, ImmutableArray<int?> voices = default)
    {
        effort ??= Effort.Usual;
        if (values.Length != labels.Length) throw new ArgumentException($"There are {labels.Length} labels for {values.Length} judges.", nameof(labels));
        if (values.IsEmpty) return new Refusal(RefusalKind.TooFewBallots, "There is no judge.");
        var samples = values[0].Length;
        if (values.Any(row => row.Length != samples || row.Any(value => value is { } v && !double.IsFinite(v))))
            throw new ArgumentException($"Every judge needs {samples} values, finite or none.", nameof(values));
        if (!voices.IsDefaultOrEmpty && voices.Length != labels.Length) throw new ArgumentException($"There are {voices.Length} voices for {labels.Length} judges.", nameof(voices));
        if (!voices.IsDefaultOrEmpty) (values, labels) = Joined(values, labels, voices);
        if (samples < 2) return new Refusal(RefusalKind.TooFewItems, "There is one sample: nothing can be compared.");
        var kept = Enumerable.Range(0, values.Length).Where(judge => values[judge].Count(value => value.HasValue) >= 2).ToArray();
        var sittings = kept.Select(judge => labels[judge]).Distinct().Order().ToImmutableArray();
        if (sittings.Length < 2) return new Refusal(RefusalKind.WrongDesign, "There is one sitting: nothing can be compared.");
        if (sittings.Any(sitting => kept.Count(judge => labels[judge] == sitting) < 3))
            return new Refusal(RefusalKind.TooFewBallots, "A sitting has fewer than three judges who gave two values.");
        var residuals = AdditiveResiduals.Of(kept.Select(judge => values[judge].ToArray()), samples);
        int[] own = [.. kept.Select(judge => sittings.BinarySearch(labels[judge]))];
        var (counts, sums) = (new int[sittings.Length * samples], new double[sittings.Length * samples]);
        var observed = Sum(residuals, own, samples, counts, sums);
        ImmutableArray<ImmutableArray<double?>> means =
        [
            .. Enumerable.Range(0, sittings.Length).Select(sitting => Enumerable.Range(sitting * samples, samples)
                .Select(cell => counts[cell] == 0 ? null : (double?)(sums[cell] / counts[cell])).ToImmutableArray()),
        ];
        var hits = DrawParts.Run(effort.Draws, seed.Child("sittings"), (draws, generator) =>
        {
            var (dealtCounts, dealtSums) = (new int[counts.Length], new double[counts.Length]);
            var dealt = (int[])own.Clone();
            var reached = 0L;
            for (var draw = 0; draw < draws; draw++)
            {
                generator.Shuffle<int>(dealt);
                if (Sum(residuals, dealt, samples, dealtCounts, dealtSums) >= observed - Slack) reached++;
            }

            return new Hits(reached, 0);
        });
        var p = PValue.Drawn(hits.Statistic, effort.Draws);
        return new SittingsResult(means, sittings, observed, p, p.Value <= Mention);
    }

    private static (ImmutableArray<ImmutableArray<double?>> Values, ImmutableArray<int> Labels) Joined(ImmutableArray<ImmutableArray<double?>> values, ImmutableArray<int> labels, ImmutableArray<int?> voices)
    {
        var rows = Enumerable.Range(0, labels.Length).GroupBy(judge => (Sitting: labels[judge], Voice: voices[judge], Alone: voices[judge] is null ? judge : -1)).ToList();
        var means = rows.Select(row => Enumerable.Range(0, values[0].Length).Select(sample => row.Average(judge => values[judge][sample])).ToImmutableArray());
        return ([.. means], [.. rows.Select(row => row.Key.Sitting)]);
    }

    private static double Sum(double?[][] residuals, int[] sittings, int samples, int[] counts, double[] sums)
    {
        Array.Clear(counts);
        Array.Clear(sums);
        for (var judge = 0; judge < residuals.Length; judge++)
        {
            for (var sample = 0; sample < samples; sample++)
            {
                if (residuals[judge][sample] is not { } residual) continue;
                counts[(sittings[judge] * samples) + sample]++;
                sums[(sittings[judge] * samples) + sample] += residual;
            }
        }

        var statistic = 0.0;
        for (var cell = 0; cell < counts.Length; cell++)
        {
            if (counts[cell] > 0) statistic += sums[cell] * sums[cell] / counts[cell];
        }

        return statistic;
    }
}
