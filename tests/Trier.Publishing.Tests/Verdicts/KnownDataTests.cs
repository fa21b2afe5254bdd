using System.Diagnostics;
using System.Text.RegularExpressions;
using Trier.Publishing.BallotFiles;
using Trier.Statistics.Randomness;
using Trier.Statistics.RankTests;
using Trier.TestKit;
using Trier.Trials.Verdicts;

namespace Trier.Publishing.Tests.Verdicts;

/// <summary>
/// Published data, brought into a layout by the very commands of docs/handbook/ballot-files.md and judged end to end. Statistics and
/// chi-square p: R 4.2.2 friedman.test; exact p: a convolution in numpy; sources stand beside each case.
/// </summary>
public partial class KnownDataTests
{
    public static TheoryData<string, string, double, double, double?, double[]> Friedman => new()
    {
        // Conover, Practical Nonparametric Statistics, grass example.
        { "friedman_grass.csv", "low", 8.097345133, 0.04404213782, 0.04005718368, [38, 23.5, 24.5, 34] },

        // Hollander & Wolfe (1973), p. 140, rounding first base.
        { "friedman_rounding_first_base.csv", "low", 11.14285714, 0.003805040776, 0.003149827282, [53, 47, 32] },

        // Sachs, Angewandte Statistik (1997), p. 675, diuretics.
        { "friedman_diuretics.csv", "low", 23.33333333, 0.0002914597502, null, [8, 23, 25, 10, 27, 33] },

        // Demsar (2006), JMLR 7, Table 6; rank 1 is the highest.
        { "friedman_demsar_auc.csv", "high", 10.95238095, 0.01198617633, 0.009124952481, [44, 28, 41, 27] },

        // Hollander & Wolfe, stuttering adaptation.
        { "friedman_stuttering_adaptation.csv", "low", 1.107692308, 0.5747350346, 0.6049895291, [33, 39, 36] },
    };

    [Theory]
    [MemberData(nameof(Friedman))]
    public void Measurements_ranked_by_the_documented_command_give_the_recorded_test(string file, string best, double statistic, double chiSquare, double? exact, double[] rankSums)
    {
        var path = Path.Combine(Checkout.Root, "tests", "Trier.Statistics.Tests", "Checks", "data", file);
        var verdict = Judged(Converted("measurements", path, ("BEST", best)));
        Assert.Equal(statistic, verdict.Friedman!.Statistic, 1e-6 * statistic);
        Assert.Equal(chiSquare, verdict.Friedman.ChiSquareP, 1e-6);
        var header = File.ReadLines(path).First().Split(',').Skip(1).ToArray();
        Assert.Equal(rankSums, header.Select(code => verdict.Tally.Single(t => t.Id == code).RankSum));
        if (exact is not { } p) return;
        Assert.Equal(TestMethod.Exact, verdict.Friedman.P.Method);
        Assert.Equal(p, verdict.Friedman.P.Value, 1e-9);
    }

    [Fact]
    public void Thirty_two_salads_give_the_recorded_numbers()
    {
        var verdict = Judged(Converted("ranks", Shared("pl_salad_ranks.csv")));
        Assert.Equal(41.1, verdict.Friedman!.Statistic, 1e-9);
        Assert.Equal(6.227518e-9, verdict.Friedman.ChiSquareP, 1e-14);
        Assert.Equal(0.428125, verdict.Friedman.KendallW, 1e-9);
        Assert.Equal([("B", 46.0, 82.0), ("C", 74, 54), ("D", 90, 38), ("A", 110, 18)], verdict.Tally.Select(t => (t.Id, t.RankSum, t.PlacePoints)));
        Assert.Equal((1L, 39.0), (verdict.Kemeny!.Optima, verdict.Kemeny.Distance));
        Assert.Equal(["B", "C", "D", "A"], verdict.Kemeny.Orders[0]);
        Assert.Equal(6, verdict.Level.Level);
    }

    [Fact]
    public void Five_thousand_ballots_of_a_society_give_the_recorded_numbers()
    {
        var verdict = Judged(Converted("counted", Shared("real_full_rankings_apa1980.csv")));
        Assert.Equal(5738, verdict.Panel.Ballots);
        (string Id, double Mean, double Points)[] expected = [("A", 2.83949111, 12397), ("C", 2.91704427, 11952), ("E", 2.99442314, 11508), ("D", 3.09236668, 10946), ("B", 3.1566748, 10577)];
        Assert.Equal(expected, verdict.Tally.Select(t => (t.Id, Math.Round(t.AveragePlace!.Value, 8), t.PlacePoints)));
        Assert.Equal(26967, verdict.Kemeny!.Distance);
        Assert.Equal(["A", "C", "E", "D", "B"], Assert.Single(verdict.Kemeny.Orders));
        Assert.Equal(2935, verdict.HeadToHead.Single(h => h is { Id: "C", Other: "E" }).Above);
        Assert.Equal(1609, verdict.Tally.Single(t => t.Id == "C").Firsts);
        Assert.Equal(["C"], verdict.Variants.Single(v => v.Subject == "firsts").Leaders);

        // What is said of so many ballots, read and accepted.
        Assert.Equal(
        [
            "A is our best bet: it has the best average place.",
            "5738 tasters placed all 5 samples and count here, by average place, the usual rule, for a file fixes none; each is one voice, which makes 5738.",
            "Shown: our tasters placed A above every other sample. Luck alone would part the samples this far about 1 time in 87 000.",
            "A is a strong bet, more than 9 in 10, to be the favourite of people like these; a blind guess is right 1 time in 5.",
            "C has the most firsts, 1609, but A has the best average place.",
            "The two ways of counting part because firsts look at the top of each ballot alone: C was put last by 1326, A by 851.",
        ], verdict.Words.Top);
        Assert.Equal(
        [
            "Shown: our tasters placed A above every other sample. Luck alone would part the samples this far about 1 time in 87 000.",
            "A lead this big over the next turns up by luck about 1 time in 6200.",
            "2897 of 5738 voices put A above C; by average place it seems 0.1 places ahead.",
            "Drawing as many voices again from these same ballots, A leads nearly every time; no other leads in more than 1 of 20: that tells how steady the lead is among these same ballots, not how likely A is the favourite.",
        ], verdict.Words.HowSureUnfolded);
        Assert.Equal("At least 112 ballots would have to go before C passes A.", Assert.Single(verdict.Words.Tips));
        Assert.Equal("For the next vat make A.", Assert.Single(verdict.Words.Next));
    }

    private static Verdict Judged(byte[] ballots) => Judge.Of(BallotFile.Read(ballots, "known", BallotFileOptions.Default).Value, new Seed(20250830));

    private static string Shared(string file)
    {
        var path = Checkout.Shared(Path.Combine("data", file));
        Assert.SkipUnless(path is not null && File.Exists(path), Checkout.SharedAbsent);
        return path!;
    }

    /// <summary>Runs the command that the handbook prints under a heading mark, with its placeholders filled in.</summary>
    private static byte[] Converted(string name, string file, params (string Placeholder, string Value)[] values)
    {
        var handbook = File.ReadAllText(Path.Combine(Checkout.Root, "docs", "handbook", "ballot-files.md"));
        var command = Command().Matches(handbook).Single(m => m.Groups["name"].Value == name).Groups["command"].Value.Trim();
        foreach (var (placeholder, value) in values) command = command.Replace(placeholder, value, StringComparison.Ordinal);
        command = command.Replace("FILE", $"'{file}'", StringComparison.Ordinal);
        Assert.SkipUnless(File.Exists("/bin/sh") && !OperatingSystem.IsWindows(), "Needs a shell with awk and sed to run the handbook's commands.");
        using var shell = Process.Start(new ProcessStartInfo("/bin/sh", ["-c", command]) { RedirectStandardOutput = true, UseShellExecute = false })!;
        using var output = new MemoryStream();
        shell.StandardOutput.BaseStream.CopyTo(output);
        shell.WaitForExit();
        Assert.Equal(0, shell.ExitCode);
        return output.ToArray();
    }

    [GeneratedRegex(@"<!-- command: (?<name>\w+) -->\s*```sh\n(?<command>.*?)```", RegexOptions.Singleline | RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex Command();
}
