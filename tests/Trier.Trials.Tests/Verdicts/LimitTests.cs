using Trier.Statistics.ChoiceModels;
using Trier.Statistics.Randomness;
using Trier.Statistics.RankTests;
using Trier.Trials.Makes;
using Trier.Trials.Verdicts;
using Trier.Trials.Verdicts.Sentences;

namespace Trier.Trials.Tests.Verdicts;

/// <summary>What a tasting cannot know, from what is recorded of its wheels.</summary>
public sealed class LimitTests
{
    private static readonly JudgingEffort Little = new(Effort.Usual with { ExactWork = 1e5, Draws = 199, CloseDraws = 199 }, new SamplingEffort(2, 50, 600), 1e8, 0, 0, 0);
    private static readonly string[] Ballots = ["ABC", "ABC", "ACB", "ABC", "BAC", "ABC", "CAB", "ABC"];

    [Fact]
    public void What_parts_leader_and_second_is_ranked_tied_things_first()
    {
        // A and B differ in milk and rind; C shares A's rind, so the rind can be told from the recipe and the milk cannot.
        var words = Words(("A", "a", "2025-03-30", "lot 1", "washed"), ("B", "b", "2025-03-30", "lot 2", "dry"), ("C", "b", "2025-03-30", "lot 2", "washed"));
        Assert.Contains("Wheel A and Wheel B differ in more than their recipe: milk and rind. No other wheel takes milk apart from the recipe here, so what parts them may be either.", words);
    }

    [Fact]
    public void A_wheel_a_year_older_is_told_beside_its_result()
    {
        var words = Words(("A", "a", "2025-03-30", "lot 1", "washed"), ("B", "b", "2025-03-28", "lot 1", "washed"), ("C", "a", "2024-03-30", "lot 3", "washed"));
        Assert.Contains("Wheel C was 518 days old, the next oldest 155: what people said of it may be its age, or milk or milk year, which came with it; nobody can take them apart here. Held against Wheel A, of the same recipe, it shows what all of these did together, and age alone cannot be named.", words);
        Assert.DoesNotContain(Words(("A", "a", "2025-03-30", "1", "x"), ("B", "b", "2025-03-28", "1", "x"), ("C", "a", "2025-03-01", "1", "x")), sentence => sentence.Contains("next oldest", StringComparison.Ordinal));
    }

    [Fact]
    public void An_old_leader_s_age_is_named_with_both_ages_first()
    {
        var words = Words(("A", "a", "2024-03-30", "lot 1", "washed"), ("B", "b", "2025-03-28", "lot 1", "washed"), ("C", "c", "2025-03-28", "lot 1", "washed"));
        Assert.Contains("Wheel A and Wheel B differ in more than their recipe: age (518 days and 155 days) and milk year. No other wheel takes age and milk year apart from the recipe here, so what parts them may be either.", words);
    }

    [Fact]
    public void Two_makes_as_far_apart_as_the_lead_withhold_the_recipe()
    {
        var words = Words(("A", "a", "2025-03-30", "1", "x"), ("B", "b", "2025-03-30", "1", "x"), ("C", "a", "2025-03-28", "1", "x"));
        Assert.Contains(words, sentence => sentence.StartsWith("Two makes of a came out ", StringComparison.Ordinal) && sentence.EndsWith("one make differs from the next at least as much, so nothing is said of recipes.", StringComparison.Ordinal));
    }

    [Fact]
    public void With_nothing_else_written_the_recipe_and_the_day_are_left()
    {
        Assert.Contains("Wheel A and Wheel B differ, as far as is written, in their recipe and their vat day alone; which of the two parts them cannot be told.", Words(("A", "a", "2025-03-30", "1", "x"), ("B", "b", "2025-03-28", "1", "x"), ("C", "c", "2025-03-30", "1", "x")));
        Assert.Contains("Wheel A and Wheel B are one recipe and, as far as is written, differ in their vat day alone.", Words(("A", "a", "2025-03-30", "1", "x"), ("B", "a", "2025-03-28", "1", "x"), ("C", "c", "2025-03-30", "1", "x")));
        Assert.Contains("Wheel A and Wheel B are of one day and differ, as far as is written, in their recipe alone; how much one make strays from the next cannot be told.", Words(("A", "a", "2025-03-30", "1", "x"), ("B", "b", "2025-03-30", "1", "x"), ("C", "c", "2025-03-30", "1", "x")));
        Assert.Contains("Wheel A and Wheel B are of one make; as far as is written they are alike.", Words(("A", "a", "2025-03-30", "1", "x"), ("B", "a", "2025-03-30", "1", "x"), ("C", "c", "2025-03-30", "1", "x")));
    }

    [Fact]
    public void One_vat_split_in_two_is_not_one_recipe_made_twice()
    {
        var split = Judged(("A", "a", "2025-03-30", "1", "washed"), ("B", "b", "2025-03-30", "1", "dry"), ("C", "a", "2025-03-30", "1", "dry"));
        Assert.DoesNotContain(split.Words.Limits, sentence => sentence.StartsWith("Two makes of", StringComparison.Ordinal));
        Assert.Contains("Wheel A and Wheel C are of one make of a, and came out 1.4 places apart, further than Wheel A and Wheel B (0.9).", split.Words.Yardsticks);
        Assert.Contains("Wheel A and Wheel B are of one make and differ, as far as is written, in rind alone.", Words(("A", "a", "2025-03-30", "1", "washed"), ("B", "a", "2025-03-30", "1", "dry"), ("C", "c", "2025-03-28", "1", "dry")));
        Assert.Contains("Wheel A and Wheel B are of one make and differ in rind and milk; which of these parts them cannot be told.", Words(("A", "a", "2025-03-30", "1", "washed"), ("B", "a", "2025-03-30", "2", "dry"), ("C", "c", "2025-03-28", "1", "dry")));
        Assert.Contains("Wheel A and Wheel B are one recipe and differ in rind and their vat day; which of these parts them cannot be told.", Words(("A", "a", "2025-03-30", "1", "washed"), ("B", "a", "2025-03-28", "1", "dry"), ("C", "c", "2025-03-28", "1", "dry")));
        var all = Judged(("A", "a", "2025-03-30", "1", "washed"), ("B", "a", "2025-03-30", "1", "dry"), ("C", "a", "2025-03-30", "1", "waxed"));
        Assert.Contains("All wheels are of one make, so this compares what was done with each, and the wheels, not recipes.", all.Words.Limits.Concat(all.Words.Top));
    }

    [Fact]
    public void The_two_leaders_gap_is_not_held_against_itself()
    {
        var both = Judged(("A", "a", "2025-03-30", "1", "x"), ("B", "a", "2025-03-28", "1", "x"), ("C", "c", "2025-03-28", "1", "x"));
        Assert.DoesNotContain(both.Words.Limits, sentence => sentence.StartsWith("Two makes of", StringComparison.Ordinal));
        Assert.Contains("Wheel A and Wheel B are one recipe (a) made twice, and came out 0.9 places apart; they are the first two here.", both.Words.Yardsticks);
    }

    [Fact]
    public void Six_of_fourteen_are_too_few_to_show_any_of_five_and_the_words_say_so()
    {
        var verdict = Judge.Of(Panels.Of("ABCDE", "ABCDE", "BACDE", "ABCDE", "ABCED", "ABCDE", "ABDCE"), new Seed(1), Little);
        Assert.Contains("With 5 wheels no pair can be told apart with fewer than 8 voices, even if all agree.", verdict.Words.HowSure);
        Assert.DoesNotContain(verdict.Pairs, pair => pair.Shown);
        // Six who all put one wheel first can still show it ahead of all; then the sentence would mislead.
        var all = Judge.Of(Panels.Of("ABCDE", "ABCDE", "ABDCE", "ACBDE", "ABCED", "AEBCD", "ABDCE"), new Seed(1), Little);
        Assert.Equal(6, all.Level.Level);
        Assert.DoesNotContain(all.Words.HowSure, sentence => sentence.Contains("no pair can be told apart", StringComparison.Ordinal));
    }

    [Fact]
    public void A_gap_smaller_than_two_servings_of_one_cheese_is_not_separated()
    {
        // A was served again as C, and everybody puts the two servings two places apart.
        var record = Panels.Of("ABC", "ABC", "ABC", "ABC", "ABC", "CBA", "CBA");
        record = record with { Samples = [.. record.Samples.Select(sample => sample.Id == "WC" ? sample with { RepeatOf = "WA" } : sample)] };
        var words = Judge.Of(record, new Seed(1), Little).Words.Yardsticks;
        Assert.Contains("Wheel A was served twice, and tasters put its two servings 2 places apart on average", words[0], StringComparison.Ordinal);
        Assert.EndsWith("Wheel A and Wheel B are nearer than that: not separated.", words[1], StringComparison.Ordinal);
    }

    private static System.Collections.Immutable.ImmutableArray<string> Words(params (string Sign, string Recipe, string Made, string Milk, string Rind)[] wheels) => Judged(wheels).Words.Limits;

    private static Verdict Judged(params (string Sign, string Recipe, string Made, string Milk, string Rind)[] wheels)
    {
        var record = Panels.Of(string.Concat(wheels.Select(wheel => wheel.Sign)), Ballots);
        record = record with
        {
            Samples =
            [
                .. record.Samples.Zip(wheels, (sample, wheel) => sample with
                {
                    Facts = WheelFacts.Of([new(WheelFacts.RecipeFact, wheel.Recipe), new(WheelFacts.MadeFact, wheel.Made), new(WheelFacts.MilkFact, wheel.Milk), new(WheelFacts.RindFact, wheel.Rind)]),
                }),
            ],
        };
        var verdict = Judge.Of(record, new Seed(1), Little);
        Assert.Equal(["WA", "WB", "WC"], verdict.Wheels.Select(wheel => wheel.Id));
        return verdict;
    }
}
