using System.Collections.Immutable;
using Trier.Statistics.Randomness;
using Trier.Trials.Plans;
using Trier.Trials.Tastings;
using Trier.Trials.Verdicts;
using Trier.Trials.Verdicts.Findings;

namespace Trier.Trials.Tests.Verdicts;

public class VariantTests
{
    private static readonly Seed Seed = new(417);

    /// <summary>A leads B by one ballot of five; C is always last.</summary>
    private static TastingRecord Close => Panels.Of("ABC", "ABC", "ABC", "ABC", "BAC", "BAC");

    [Fact]
    public void The_maker_s_ballot_is_apart_and_only_ever_compared()
    {
        var record = Close with { Voters = [.. Close.Voters, Panels.Voter("M1", "BAC") with { Role = VoterRole.KnewTheKey, Name = "Benedita" }] };
        var verdict = Judge.Of(record, Seed);
        Assert.Equal((5, 5L), (verdict.Panel.Tasters, verdict.Panel.Ballots));
        Assert.Equal(["Benedita"], verdict.Panel.KnewTheKey);
        Assert.Equal(StripStanding.Apart, verdict.Ballots.Single(b => b.Id == "M1").Standing);
        var with = Assert.Single(verdict.Variants, v => v.Kind == VariantKind.WithTheKey);
        Assert.Null(with.Level);
        Assert.Equal(VariantEffect.LeaderChanges, with.Effect);
        Assert.Equal(["WA", "WB"], with.Leaders);
        Assert.Equal(3, verdict.TallyWithTheKey.Single(t => t.Id == "WB").Firsts);
        Assert.Contains("Wheel A and Wheel B share the lead with Benedita’s own ballot, not blind", string.Join(' ', verdict.Words.Top), StringComparison.Ordinal);
        Assert.Equal(Judge.Of(Close, Seed).Gate!.P, verdict.Gate!.P);
    }

    [Theory]
    [InlineData(VoterMarks.Late, VariantKind.WithoutLate, "without Taster T01, who came late")]
    [InlineData(VoterMarks.Junior, VariantKind.WithoutJuniors, "without Taster T01, tasting as junior")]
    [InlineData(VoterMarks.AdmittedAfterClose, VariantKind.WithoutAdmitted, "without Taster T01, let in after the close")]
    [InlineData(VoterMarks.AfterKeyOpened, VariantKind.WithoutAfterKey, "without Taster T01, sent after the key was opened")]
    public void Marked_ballots_count_and_are_left_out_in_a_variant(VoterMarks mark, VariantKind kind, string label)
    {
        var verdict = Judge.Of(Close.With("T01", v => v with { Marks = mark }), Seed);
        Assert.Equal(5, verdict.Panel.Ballots);
        var variant = Assert.Single(verdict.Variants, v => v.Kind == kind);
        Assert.Equal((label, VariantEffect.LeaderChanges), (variant.Label, variant.Effect));
        Assert.Equal(["WA", "WB"], variant.Leaders);
    }

    [Fact]
    public void A_wheel_named_aloud_is_left_out_of_the_ballots_that_came_after_it()
    {
        var record = Close.With("T01", v => v with { Named = ["WA"] }).With("T02", v => v with { Named = ["WA"] });
        var variant = Assert.Single(Judge.Of(record, Seed).Variants, v => v.Kind == VariantKind.WithoutNamed);
        Assert.Equal("WA", variant.Subject);
        Assert.Equal("with Wheel A left out of the ballots that came in after the name was said aloud", variant.Label);
        // Two who had put A first after hearing its name now have B first.
        Assert.Equal([1L, 4L, 0L], variant.Firsts);
        Assert.DoesNotContain(Judge.Of(Close, Seed).Variants, v => v.Kind == VariantKind.WithoutNamed);
    }

    [Fact]
    public void Juniors_left_out_by_plan_are_shown_apart_and_put_in_by_a_variant()
    {
        var verdict = Judge.Of(Close.With("T01", v => v with { Marks = VoterMarks.Junior }).By(Trier.Trials.Plans.CountingRule.Default, juniors: false), Seed);
        Assert.Equal(4, verdict.Panel.Ballots);
        Assert.Equal(["WA", "WB"], verdict.Leaders);
        Assert.Equal(["Taster T01"], verdict.Panel.JuniorsApart);
        Assert.Equal(["WA"], Assert.Single(verdict.Variants, v => v.Kind == VariantKind.WithJuniors).Leaders);
    }

    [Fact]
    public void Every_ballot_is_left_out_in_turn_and_those_that_tip_it_are_named()
    {
        var verdict = Judge.Of(Close, Seed);
        Assert.Equal(["T01", "T02", "T03"], verdict.Variants.Where(v => v is { Kind: VariantKind.WithoutOne, Effect: VariantEffect.LeaderChanges }).Select(v => v.Subject));
        Assert.Contains("Without Taster T01’s, Taster T02’s or Taster T03’s ballot, Wheel A and Wheel B share the lead.", verdict.Words.Tips);
        Assert.Equal((1L, 2L), (verdict.Fewest!.ToTie, verdict.Fewest.ToPass));
    }

    [Fact]
    public void The_fewest_ballots_are_found_where_ballots_differ_in_length()
    {
        // A over B 6 to 2 with one partial ballot: five of the six must go before B leads.
        var verdict = Judge.Of(Panels.Of("ABC", "AB", "AB", "AB", "ABC", "ABC", "ABC", "BAC", "BAC"), Seed);
        Assert.Equal(MainCount.AllBallots, verdict.Panel.Main);
        Assert.NotNull(verdict.Fewest);
        Assert.True(verdict.Fewest.ToPass is 4 or 5, $"{verdict.Fewest.ToPass}");
    }

    [Fact]
    public void A_ballot_that_looks_upside_down_is_pointed_at_and_turned_in_a_variant()
    {
        var answers = new[] { ("WA", 9), ("WB", 8), ("WC", 4), ("WD", 1) }.ToImmutableSortedDictionary(x => x.Item1, x => new SampleAnswer { Liking = x.Item2 }, StringComparer.Ordinal);
        var record = Panels.Of("ABCD", "ABCD", "ABCD", "ABCD", "ABCD", "DCBA").With("T05", v => v with { Answers = answers });
        var verdict = Judge.Of(record, Seed);
        Assert.Contains("Taster T05 liked best what the ballot places last; the places may be upside down.", verdict.Cautions);
        Assert.Equal([5L, 0, 0, 0], Assert.Single(verdict.Variants, v => v.Kind == VariantKind.Turned).Firsts);
    }

    [Fact]
    public void The_other_code_of_a_repeat_is_counted_in_its_place()
    {
        var record = Panels.Of("ABCR", "ABCR", "ABCR", "RBCA", "RBAC", "RBCA", "RBCA");
        record = record with { Samples = [.. record.Samples.Select(s => s.Id == "WR" ? s with { RepeatOf = "WA" } : s)] };
        var verdict = Judge.Of(record, Seed);
        Assert.Equal(["WB"], verdict.Leaders);
        Assert.Equal(3, verdict.Wheels.Length);
        var other = Assert.Single(verdict.Variants, v => v.Kind == VariantKind.OtherCode);
        Assert.Equal(["WA", "WB"], other.Leaders);
        Assert.Equal(VariantEffect.LeaderChanges, other.Effect);
        var repeat = Assert.Single(verdict.Repeats);
        Assert.Equal((6L, 17.0, 0L), (repeat.Ballots, repeat.SumOfDistances, repeat.NextToEachOther));
    }

    [Fact]
    public void Other_rules_are_reported_where_they_part()
    {
        var verdict = Judge.Of(Panels.Of("ABC", "ABC", "ABC", "BCA", "BCA", "CBA", "ACB"), Seed);
        var firsts = Assert.Single(verdict.Variants, v => v is { Kind: VariantKind.OtherRule, Subject: "firsts" });
        Assert.Equal(["WA"], firsts.Leaders);
        Assert.Equal(["firsts", "place points", "head-to-heads", "the order nearest to all ballots"], verdict.Variants.Where(v => v.Kind == VariantKind.OtherRule).Select(v => v.Subject));
    }

    [Fact]
    public void Withdrawals_notes_and_recipes_stand_among_the_limits()
    {
        var record = Close with
        {
            Withdrawals = [new("WD", "Short brine", new DateTimeOffset(2025, 8, 30, 16, 52, 0, TimeSpan.Zero), "rind crack.", true, ["Ana", "Rui"], null)],
            Notes = [new(DayNoteKind.SpokenAloud, new DateTimeOffset(2025, 8, 30, 16, 55, 0, TimeSpan.Zero), "At 16:55 somebody said aloud what sample 417 was.")],
        };
        var verdict = Judge.Of(record, Seed);
        Assert.Contains("Short brine was withdrawn at 16:52, with guests at the table (rind crack), so nothing is said about it. Ana and Rui had already tasted it.", verdict.Words.Limits);
        Assert.Contains("One wheel of each recipe cannot tell whether the recipe or the day did it.", verdict.Words.Top);
        Assert.Contains("At 16:55 somebody said aloud what sample 417 was.", verdict.Cautions);
        Assert.Contains(verdict.Words.Limits, s => s.StartsWith("The tasting was not fully blind", StringComparison.Ordinal));
        var twice = Close with { Samples = [.. Close.Samples.Select(s => s with { Facts = Panels.Facts(s.Id == "WC" ? "recipe A" : $"recipe {s.Id[1..]}") })] };
        var same = Assert.Single(Judge.Of(twice, Seed).SameRecipe);
        Assert.Equal(("WA", "WC", 1.6), (same.Better, same.Worse, Math.Round(same.Gap, 9)));
        Assert.Contains(Judge.Of(twice, Seed).Words.Limits, s => s.StartsWith("With so few wheels of each recipe nobody can tell whether the recipe or the day did it: two wheels of recipe A came out 1.6 places apart, further than Wheel A and ", StringComparison.Ordinal));
    }

    [Fact]
    public void Two_wheels_of_one_recipe_are_held_against_the_leaders_by_average_place_whatever_the_rule()
    {
        // By firsts A leads, by average place B: they lie .6 apart, C and D .2.
        var record = Panels.Of("ABCD", "ABCD", "ABDC", "ABCD", "BCDA", "BDCA").By(new CountingRule.Firsts());
        var verdict = Judge.Of(record with { Samples = [.. record.Samples.Select(s => s with { Facts = Panels.Facts(s.Id is "WC" or "WD" ? "recipe C" : $"recipe {s.Id[1..]}") })] }, Seed);
        Assert.Equal(0.2, Assert.Single(verdict.SameRecipe).Gap, 9);
        Assert.Contains("With so few wheels of each recipe nobody can tell whether the recipe or the day did it.", verdict.Words.Limits);
    }
}
