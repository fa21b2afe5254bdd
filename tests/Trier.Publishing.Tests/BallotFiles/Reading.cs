using System.Text;
using Trier.Publishing.BallotFiles;
using Trier.TestKit;
using Trier.Trials.Common;
using Trier.Trials.Verdicts;

namespace Trier.Publishing.Tests.BallotFiles;

/// <summary>Short ways to read a ballot file in a test.</summary>
internal static class Reading
{
    public static byte[] Demo => File.ReadAllBytes(Path.Combine(Checkout.Root, "src", "Trier", "Demo", "demo-trial.ballots.csv"));

    public static Outcome<TastingRecord> Text(string text, Unplaced unplaced = Unplaced.NotTasted, params (string Check, string Counts)[] repeats) =>
        Bytes(Encoding.UTF8.GetBytes(text), unplaced, repeats);

    public static Outcome<TastingRecord> Bytes(byte[] bytes, Unplaced unplaced = Unplaced.NotTasted, params (string Check, string Counts)[] repeats) =>
        BallotFile.Read(bytes, "test", new BallotFileOptions { Unplaced = unplaced, Repeats = [.. repeats.Select(r => new RepeatPair(r.Check, r.Counts))] });

    public static IReadOnlyList<string> Sentences(this Outcome<TastingRecord> outcome) => [.. outcome.Problems.Select(p => p.Sentence)];

    /// <summary>Every ballot as "taster: order | below".</summary>
    public static IReadOnlyList<string> Orders(this Outcome<TastingRecord> outcome) =>
        [.. outcome.Value.Voters.Select(v => v.Id + ": " + string.Join('>', v.Places.Select(g => string.Join('=', g.Order(StringComparer.Ordinal)))) + (v.Below.IsEmpty ? "" : " | " + string.Join('=', v.Below)))];
}
