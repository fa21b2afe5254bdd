using System.Collections.Immutable;
using System.Text;
using Trier.Publishing.BallotFiles;
using Trier.Publishing.Verdicts;
using Trier.Trials.Common;
using Trier.Trials.Verdicts;

namespace Trier.Publishing.Bundles;

/// <summary>A verdict drawn anew from a bundle, and whether it is the one that the bundle holds.</summary>
/// <param name="Verdict">The verdict as this program draws it.</param>
/// <param name="Differences">What is not the same, one sentence each; empty where all is.</param>
public sealed record BundleCheck(Verdict Verdict, ImmutableArray<string> Differences)
{
    /// <summary>Files of a bundle that are looked at.</summary>
    public static ImmutableArray<string> Files { get; } = [Bundle.RecordFile, Bundle.VerdictFile, Bundle.BallotsFile];

    /// <summary>Draws the verdict anew.</summary>
    /// <param name="files">The bundle's files by name.</param>
    public static Outcome<BundleCheck> Of(IReadOnlyDictionary<string, byte[]> files)
    {
        ArgumentNullException.ThrowIfNull(files);
        if (!files.TryGetValue(Bundle.RecordFile, out var record)) return Outcome.Fault<BundleCheck>("bundle", "There is no record.json: this is no bundle of a verdict.");
        return PublishedRecordJson.Read(record).Then(read =>
        {
            var verdict = Judge.Of(read.Record, read.Seed);
            var differences = ImmutableArray.CreateBuilder<string>();
            if (!files.TryGetValue(Bundle.VerdictFile, out var held)) differences.Add("verdict.json is missing, so there is nothing to hold the verdict against.");
            else differences.AddRange(SameJson.Differences(held, VerdictJson.Write(verdict)));
            if (!files.TryGetValue(Bundle.BallotsFile, out var ballots)) differences.Add("ballots.csv is missing.");
            else if (!ballots.AsSpan().SequenceEqual(Encoding.UTF8.GetBytes(BallotsCsv.Write(read.Record)))) differences.Add("ballots.csv does not hold the ballots of record.json: one of the two was changed.");
            return Outcome.Of(new BundleCheck(verdict, differences.ToImmutable()));
        });
    }
}
