using System.Globalization;
using System.Text;
using Trier.Commands.Verdicts;
using Trier.Publishing.BallotFiles;
using Trier.Statistics.Randomness;
using Trier.TestKit;
using Trier.Trials.Verdicts;

namespace Trier.Tests.Commands.Verdicts;

/// <summary>
/// Real data sets judged to the last word. The whole text stands in Golden, read line by line by a person when it was accepted; the numbers are those of
/// reference software or of the book, named beside each case. Data that may not be copied into this repository leave only sentences there, no ballots.
/// A change of wording: run with TRIER_APPROVE=1, read what changed, and keep it if it is better.
/// </summary>
public sealed class GoldenVerdictTests
{
    private const string Own = "own";
    private const string Shared = "shared";

    /// <summary>File; how it is laid out; where it lies; the gate's statistic and its source.</summary>
    public static TheoryData<string, string, string, double> Sets => new()
    {
        // Conover, Practical Nonparametric Statistics: R 4.2.2 friedman.test.
        { "friedman_grass", "low", Own, 8.097345133 },

        // Hollander & Wolfe (1973), p. 140: R 4.2.2 friedman.test.
        { "friedman_rounding_first_base", "low", Own, 11.14285714 },

        // Sachs (1997), p. 675: R 4.2.2 friedman.test.
        { "friedman_diuretics", "low", Own, 23.33333333 },

        // Demsar (2006), Table 6: R 4.2.2 friedman.test.
        { "friedman_demsar_auc", "high", Own, 10.95238095 },

        // Hollander & Wolfe, stuttering adaptation: R 4.2.2 friedman.test.
        { "friedman_stuttering_adaptation", "low", Own, 1.107692308 },

        // Conover's ice creams, a balanced incomplete design: Durbin's statistic, R package PMCMRplus durbinTest.
        { "durbin_ice_cream", "rank", Own, 12 },

        // Moore & Bliss (1942), a balanced incomplete design: Durbin's statistic by its formula.
        { "durbin_chemical_toxicity", "rows", Own, 7.714285714 },

        // Critchlow & Fligner, 32 salads: R 4.2.2 friedman.test.
        { "pl_salad_ranks", "ranks", Shared, 41.1 },
    };

    [Theory]
    [MemberData(nameof(Sets))]
    public void A_real_data_set_gives_the_recorded_number_and_the_accepted_words(string name, string layout, string place, double statistic)
    {
        var path = place == Own ? Path.Combine(Checkout.Root, "tests", "Trier.Statistics.Tests", "Checks", "data", name + ".csv") : Checkout.Shared(Path.Combine("data", name + ".csv"));
        Assert.SkipUnless(path is not null && File.Exists(path), Checkout.SharedAbsent);
        var verdict = Judge.Of(BallotFile.Read(Encoding.UTF8.GetBytes(Laid(File.ReadAllLines(path!), layout)), name, BallotFileOptions.Default).Value, new Seed(20250830));
        Assert.Equal(statistic, verdict.Gate!.Statistic, 1e-6 * statistic);
        Accepted(name, place == Own ? TerminalPage.Write(verdict) : Sentences(verdict));
    }

    [Fact]
    public async Task The_demo_s_ballots_give_the_accepted_words()
    {
        var demo = await File.ReadAllBytesAsync(Path.Combine(Checkout.Root, "src", "Trier", "Demo", "demo-trial.ballots.csv"), TestContext.Current.CancellationToken);
        var verdict = Judge.Of(BallotFile.Read(demo, "demo-trial", BallotFileOptions.Default with { Repeats = [new("862", "417")] }).Value, new Seed(20250830));
        Assert.Equal(9.824268, verdict.Friedman!.Statistic, 1e-6);
        Accepted("demo-trial", TerminalPage.Write(verdict));
    }

    private static void Accepted(string name, string text)
    {
        var file = Path.Combine(Checkout.Root, "tests", "Trier.Tests", "Commands", "Verdicts", "Golden", name + ".txt");
        if (Environment.GetEnvironmentVariable("TRIER_APPROVE") == "1") File.WriteAllText(file, text);
        Assert.Equal(File.ReadAllText(file).ReplaceLineEndings("\n"), text);
    }

    private static string Sentences(Verdict verdict)
    {
        var words = verdict.Words;
        var text = new StringBuilder();
        foreach (var (word, sentences) in new[] { ("Top", words.Top), ("Headlines", words.Headlines), ("How sure", words.HowSureUnfolded), ("The yardstick", words.Yardsticks), ("What tips it", words.Tips), ("Who disagrees", words.Disagreement), ("What next", words.Next), ("Cannot be known", words.Limits), ("Mind that", verdict.Cautions) })
        {
            if (sentences.IsEmpty) continue;
            text.Append(word).Append('\n');
            foreach (var sentence in sentences) text.Append("  ").Append(sentence).Append('\n');
        }

        return text.ToString();
    }

    /// <summary>Measurements become places within their row; a rank a row is laid out as a ballot file.</summary>
    private static string Laid(string[] lines, string layout)
    {
        var head = lines[0].Split(',');
        var rows = lines.Skip(1).Where(line => line.Length > 0).Select(line => line.Split(',')).ToList();
        return layout switch
        {
            "rank" => "taster,code,place\n" + string.Concat(rows.Select(row => $"{row[0]},{row[1]},{row[2]}\n")),
            "rows" => "taster,code,place\n" + string.Concat(rows.GroupBy(row => row[0]).SelectMany(group => group.Zip(Places([.. group.Select(row => (double?)double.Parse(row[2], CultureInfo.InvariantCulture))], highest: false), (row, placed) => $"{row[0]},{row[1]},{placed}\n"))),
            "ranks" => "taster," + string.Join(',', head.Skip(1)) + "\n" + string.Concat(rows.Select(row => string.Join(',', row) + "\n")),
            _ => "taster," + string.Join(',', head.Skip(1)) + "\n" + string.Concat(rows.Select(row => row[0] + "," + string.Join(',', Places(row.Skip(1).Select(cell => double.TryParse(cell, CultureInfo.InvariantCulture, out var value) ? value : (double?)null).ToList(), layout == "high")) + "\n")),
        };
    }

    private static IEnumerable<string> Places(List<double?> values, bool highest) =>
        values.Select(value => value is null ? "" : (1 + values.Count(other => highest ? other > value : other < value) + ((values.Count(other => other.Equals(value)) - 1) / 2.0)).ToString(CultureInfo.InvariantCulture));
}
