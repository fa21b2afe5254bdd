using System.Collections.Immutable;
using System.Text.RegularExpressions;
using CsCheck;
using Trier.Statistics.ChoiceModels;
using Trier.Statistics.Randomness;
using Trier.Statistics.RankTests;
using Trier.Trials.Plans;
using Trier.Trials.Tastings;
using Trier.Trials.Verdicts;

namespace Trier.Trials.Tests.Verdicts;

/// <summary>The wording rules of docs/methods/verdict-wording.md, held over many verdicts drawn at random.</summary>
public partial class WordingRuleTests
{
    private static readonly JudgingEffort Little = new(Effort.Usual with { ExactWork = 1e4, Draws = 199, CloseDraws = 199 }, new SamplingEffort(2, 50, 600), 1e8, 0, 99, 19);

    private static readonly string[] Forbidden =
        ["significan", "prove", "statistic", "confiden", "no difference", "equal", "the best cheese", "%", "percent", "p-value", "p =", "p <"];

    private static readonly Gen<TastingRecord> Records =
        from wheels in Gen.Int[1, 5]
        from agree in Gen.Int[0, 100]
        from voters in Gen.Select(Gen.Int[0, 3].Array[7], Gen.Int[0, 100], Gen.Int[0, 100], Gen.Int[0, 9]).Array[1, 14]
        from rule in Gen.Int[0, 2]
        from file in Gen.Bool
        select Record(wheels, agree, voters, rule, file);

    [Fact]
    public void Every_sentence_of_every_verdict_keeps_the_rules() =>
        Records.Sample(record => Check(Judge.Of(record, new Seed(5), Little)), iter: 1_500);

    [Fact]
    public void The_drawn_verdicts_reach_every_level()
    {
        var levels = new System.Collections.Concurrent.ConcurrentDictionary<int, bool>();
        Records.Sample(record => levels[Judge.Of(record, new Seed(5), Little).Level.Level] = true, iter: 1_500);
        Assert.Equal([0, 1, 2, 3, 4, 5, 6], levels.Keys.Order());
    }

    private static void Check(Verdict verdict)
    {
        var words = verdict.Words;
        var all = words.Top.Concat(words.Headlines).Concat(words.HowSureUnfolded).Concat(words.Yardsticks).Concat(words.Tips).Concat(words.Disagreement).Concat(words.Answers).Concat(words.Serving).Concat(words.Next).Concat(words.Limits).Concat(verdict.Cautions).ToList();
        foreach (var sentence in all)
        {
            Assert.Matches(WellFormed(), sentence);
            Assert.DoesNotContain("  ", sentence, StringComparison.Ordinal);
            foreach (var word in Forbidden) Assert.DoesNotContain(word, sentence, StringComparison.OrdinalIgnoreCase);
        }

        var first = string.Join(' ', words.Top.Take(3));
        Assert.Matches(TellsN(), first);
        Assert.Contains(verdict.Record.Plan.Rule switch { CountingRule.Firsts => "firsts", CountingRule.PlacePoints => "place points", _ => "average place" }, first, StringComparison.Ordinal);
        Assert.Equal(3, words.Headlines.Length);
        Assert.DoesNotContain(all, s => Bet().IsMatch(s) && s.Contains("Shown", StringComparison.Ordinal));

        var level = verdict.Level.Level;
        if (level < 4) Assert.DoesNotContain(all, s => ShownWord().IsMatch(s) && !s.StartsWith("Shown: people who like", StringComparison.Ordinal));
        if (level >= 4) Assert.DoesNotContain(words.Headlines, s => s.Contains("came out ahead", StringComparison.Ordinal) || s.Contains("hint", StringComparison.Ordinal));
        if (level >= 3) Assert.Matches(OneTimeIn(), words.Top[2]);
        if (level is 1 or 2) Assert.DoesNotContain("best bet", words.Top[0], StringComparison.Ordinal);
        if (level == 0) Assert.Contains("nothing can be tested", words.Top[0], StringComparison.Ordinal);
        if (level >= 5) Assert.StartsWith("Shown: ", words.Top[2], StringComparison.Ordinal);
    }

    private static TastingRecord Record(int wheels, int agree, (int[] Keys, int Partial, int Tied, int Mark)[] voters, int rule, bool file)
    {
        var names = "ABCDE"[..wheels];
        var ballots = voters.Select(v =>
        {
            var order = names.Select((n, i) => (Sign: n, Key: v.Keys[5] * 33 + v.Tied < agree ? i : (v.Keys[i] * 7) + v.Keys[6] + (i * v.Keys[5]))).OrderBy(x => x.Key).Select(x => x.Sign).ToList();
            if (v.Partial > 80) order = [.. order.Take(Math.Max(0, order.Count - (v.Partial % 3)))];
            var word = string.Join(v.Tied > 90 ? "=" : "", order);
            return v.Tied is > 70 and <= 90 && order.Count > 1 ? word.Insert(1, "=") : word;
        }).ToArray();
        var record = Panels.Of(names, ballots);
        if (file) record = record with { Head = record.Head with { FromFile = true } };
        if (wheels > 2 && agree % 4 == 0)
            record = record with { Samples = [.. record.Samples.Select(s => s.Id == "WC" ? s with { RepeatOf = "WA" } : s)] };
        if (agree % 3 == 0)
            record = record with { Samples = [.. record.Samples.Select(s => s with { Facts = Panels.Facts(s.Id is "WB" ? "recipe A" : $"recipe {s.Id[1..]}") })] };
        record = record with { Voters = [.. record.Voters.Zip(voters, (voter, drawn) => Marked(Tasting(voter, drawn.Partial, drawn.Tied), drawn.Mark))] };
        return record.By(rule switch { 0 => CountingRule.Default, 1 => new CountingRule.Firsts(), _ => new CountingRule.PlacePoints([4, 3, 2, 1, 0]) }, juniors: agree % 2 == 0);
    }

    private static VoterRecord Tasting(VoterRecord voter, int keys, int salt) => voter with
    {
        Taste = voter.Places.IsEmpty || keys % 5 == 0 ? null : voter.Places[0][0] is "WA" == (keys % 7 > 0) ? DeclaredTaste.Milder : DeclaredTaste.Stronger,
        Answers = voter.Answers.Add("WA", new SampleAnswer { Salt = (salt % 3) - 1, Liking = 1 + (keys % 9) }),
    };

    private static VoterRecord Marked(VoterRecord voter, int mark) => mark switch
    {
        0 => voter with { Role = VoterRole.KnewTheKey },
        1 or 2 => voter with { Voice = 1, Marks = VoterMarks.ComparedNotes },
        3 => voter with { Marks = VoterMarks.Junior },
        4 => voter with { Marks = VoterMarks.Late | VoterMarks.AdmittedAfterClose },
        _ => voter,
    };

    [GeneratedRegex(@"^[\p{L}\p{N}][^\n]*\.$", RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex WellFormed();

    [GeneratedRegex(@"\bwhich makes \d+|\bthat is one voice\b|\bNobody placed two\b", RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex TellsN();

    [GeneratedRegex("best (bet|guess)", RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex Bet();

    [GeneratedRegex(@"\b[Ss]hown\b(?! apart)", RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex ShownWord();

    [GeneratedRegex(@"(about|less than) 1 time in ", RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex OneTimeIn();
}
