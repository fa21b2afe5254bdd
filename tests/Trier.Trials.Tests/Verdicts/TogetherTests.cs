using System.Collections.Immutable;
using Trier.Statistics.ChoiceModels;
using Trier.Trials.Common;
using Trier.Trials.Makes;
using Trier.Trials.Tastings;
using Trier.Trials.Verdicts;
using Trier.Trials.Verdicts.Together;

namespace Trier.Trials.Tests.Verdicts;

public sealed class TogetherTests
{
    private static readonly SamplingEffort Short = new(2, 300, 3_000);

    [Fact]
    public void A_person_is_one_voice_over_all_tastings_and_so_is_who_compares_notes()
    {
        var first = Held(1, "2025-05-01", ["a", "b"], "AB", "AB", "BA");
        var second = Held(2, "2025-08-01", ["a", "b"], "AB", "AB");
        // T01 and T02 come to both; T02 and T03 compare notes at the first.
        first = first with { Record = first.Record.With("T02", voter => voter with { Voice = 1 }).With("T03", voter => voter with { Voice = 1 }) };
        var pool = Pooling.Of([first, second]);
        Assert.Equal((5L, 2), (pool.Ballots.Ballots, pool.People));
        Assert.Equal(2, pool.Recipes.Length);
        Assert.Equal(4, pool.Wheels.Length);
        Assert.Equal(2, pool.Ballots.Rows.GroupBy(row => row.Voice).Count());
    }

    [Fact]
    public void Who_knew_the_key_and_juniors_left_apart_stay_out()
    {
        var held = Held(1, "2025-05-01", ["a", "b"], "AB", "AB", "BA");
        held = held with { Record = held.Record.With("T02", voter => voter with { Role = VoterRole.KnewTheKey }).With("T03", voter => voter with { Marks = VoterMarks.Junior }) with { Plan = held.Record.Plan with { JuniorsCount = false } } };
        Assert.Equal(1, Pooling.Of([held]).Ballots.Ballots);
    }

    [Fact]
    public void Two_makes_of_each_recipe_have_odds_and_a_recipe_with_one_has_none()
    {
        string[] ballots = ["ABC", "ABC", "ACB", "ABC", "BAC"];
        var found = TogetherFindings.Of([Held(1, "2025-05-01", ["a", "b", "c"], ballots), Held(2, "2025-08-01", ["a", "b"], "AB", "AB", "AB", "BA")], null, null, TestContext.Current.CancellationToken);
        var piece = Assert.Single(found.Pieces);
        Assert.Equal(["a", "b", "c"], piece.Recipes);
        Assert.True(piece.Posterior!.Mixed, $"effective {piece.Posterior.EffectiveSize}, R-hat {piece.Posterior.RHat}");
        var words = TogetherWords.Of(piece);
        Assert.StartsWith("Of the 2 recipes with two makes or more, a is the best bet, about ", words[0], StringComparison.Ordinal);
        Assert.Contains("Of c there is one make so far: its wheels are told, the recipe is not.", words);
        Assert.Contains(words, sentence => sentence.StartsWith("What age does is open: for thirty days more the odds of being preferred change by a factor between ", StringComparison.Ordinal));
        Assert.Equal("2 tastings, 9 ballots by 5 voices: whoever came twice, told by name, is one voice.", TogetherWords.All(found)[0]);
        foreach (var sentence in words.Concat(TogetherWords.All(found)))
        {
            Assert.EndsWith(".", sentence, StringComparison.Ordinal);
            foreach (var word in new[] { "shown", "significan", "prove", "confiden", "no difference", "equal", "%" }) Assert.DoesNotContain(word, sentence, StringComparison.OrdinalIgnoreCase);
        }
    }

    [Fact]
    public void Tastings_that_no_recipe_joins_are_named_and_not_compared()
    {
        var found = TogetherFindings.Of([Held(1, "2025-05-01", ["a", "b"], "AB", "AB"), Held(2, "2025-08-01", ["c", "d"], "AB", "BA")], Short, null, TestContext.Current.CancellationToken);
        Assert.Equal(2, found.Pieces.Length);
        Assert.Equal("No ballot joins a and b, nor c and d: they are not compared with each other. A recipe served in both, or one cheese served at every tasting, would join them.", TogetherWords.All(found)[1]);
        Assert.Equal("Fewer than two recipes have two makes, so no recipe is called better: what follows is told of wheels.", TogetherWords.Of(found.Pieces[0])[0]);
    }

    [Fact]
    public void The_same_wheel_at_two_ages_stays_one_wheel()
    {
        var first = Held(1, "2025-05-01", ["a", "b"], "AB", "AB");
        var second = Held(2, "2025-08-01", ["a", "b"], "AB", "AB");
        second = second with { Entries = [second.Entries[0] with { Wheel = first.Entries[0].Wheel, Facts = first.Entries[0].Facts }, second.Entries[1]] };
        var pool = Pooling.Of([first, second]);
        Assert.Equal(3, pool.Wheels.Length);
        Assert.Equal([52.0, 144.0], pool.Items.Where(item => item.Wheel == 0).Select(item => item.AgeDays!.Value));
        Assert.Single(RecipeRecords.Of([first, second]).Single(record => record.Recipe == "a").Wheels);
    }

    [Fact]
    public void A_record_counts_withdrawn_wheels_and_tells_what_good_ones_shared_as_hints()
    {
        var first = Held(1, "2025-05-01", ["a", "b", "a"], "ABC", "ABC", "ACB");
        var second = Held(2, "2025-08-01", ["a", "b", "c"], "ABC", "ACB", "ABC");
        ImmutableArray<Entry> Rinds(HeldTasting held, params string[] rinds) => [.. held.Entries.Zip(rinds, (entry, rind) => entry with { Facts = entry.Facts.With(WheelFacts.RindFact, rind) })];
        first = first with
        {
            Entries = [.. Rinds(first, "washed", "dry", "dry"), Entry(9, "WX", "a", "dry")],
            Record = first.Record with { Withdrawals = [new("WX", "Wheel X", default, "blown", WhileTasting: false, [], null)] },
        };
        second = second with { Entries = Rinds(second, "washed", "dry", "dry") };
        var record = RecipeRecords.Of([second, first]).Single(record => record.Recipe == "a");
        Assert.Equal((4, 3, 2), (record.Wheels.Length, record.Tasted, record.GoodOnes));
        Assert.Equal("blown", record.Wheels[2].Appearances[0].Withdrawn);
        Assert.Equal((1.0, 3, 3L, true), (record.Wheels[0].Appearances[0].Place!.Value, record.Wheels[0].Appearances[0].Of, record.Wheels[0].Appearances[0].Firsts, record.Wheels[0].Appearances[0].Leads));
        var words = RecordWords.All(record);
        Assert.Equal("4 wheels of a were entered, 1 withdrawn; 2 of the 3 tasted came out in the upper half of a tasting.", words[0]);
        Assert.StartsWith("Withdrawn ones counted, 2 of 4 turned out well by that measure. A count, no test", words[1], StringComparison.Ordinal);
        Assert.Equal(["The 2 good ones had the same rind (washed); of the 2 others, 0 had it."], RecordWords.Hints(record));
        var lone = RecipeRecords.Of([second]).Single(record => record.Recipe == "c");
        Assert.Equal("That is one make so far: it says what this wheel did, and not yet what the recipe does.", RecordWords.All(lone)[1]);
        Assert.Empty(RecordWords.Hints(lone));
    }

    [Fact]
    public void No_tasting_at_all_is_no_trouble()
    {
        Assert.Empty(RecipeRecords.Of([]));
        Assert.Empty(TogetherFindings.Of([], null, null, TestContext.Current.CancellationToken).Pieces);
    }

    private static HeldTasting Held(int number, string day, string[] recipes, params string[] ballots)
    {
        var record = Panels.Of("ABCDE"[..recipes.Length], ballots);
        record = record with { Head = record.Head with { Day = DateOnly.ParseExact(day, "yyyy-MM-dd", System.Globalization.CultureInfo.InvariantCulture) } };
        return new(new TrialId(new Guid(number, 0, 0, new byte[8])), record, [.. record.Samples.Select((sample, i) => Entry((10 * number) + i, sample.Id, recipes[i], null))]);
    }

    // Every wheel is of a day of its own.
    private static Entry Entry(int number, string label, string recipe, string? rind) =>
        new(new WheelId(new Guid(number, 1, 1, new byte[8])), label, $"Wheel {label}", new WheelMark(1, 0, 1), WheelFacts.Of([new(WheelFacts.RecipeFact, recipe), new(WheelFacts.MadeFact, $"2025-03-{number:00}"), new(WheelFacts.RindFact, rind)]));
}
