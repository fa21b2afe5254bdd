using System.Collections.Immutable;
using System.Globalization;
using Trier.Statistics.Randomness;
using Trier.Trials.Common;
using Trier.Trials.Makes;
using Trier.Trials.Plans;
using Trier.Trials.Tastings.Events;
using Trier.Trials.Tastings.Steps;

namespace Trier.Trials.Tests.Tastings;

public class DraftTests
{
    [Fact]
    public void A_trial_begins_with_a_title_and_one_question()
    {
        var outcome = DraftTasting.Begin(DateTimeOffset.UnixEpoch, Day.AnyPlan with { Title = " ", Question = "" });
        Assert.Equal(["title", "question"], outcome.Problems.Select(problem => problem.Field));
        var longOnes = DraftTasting.Begin(DateTimeOffset.UnixEpoch, Day.AnyPlan with { Title = new('a', 81), Question = new('a', 201) });
        Assert.Equal(["title", "question"], longOnes.Problems.Select(problem => problem.Field));
        var trimmed = Assert.IsType<TrialPlanned>(DraftTasting.Begin(DateTimeOffset.UnixEpoch, Day.AnyPlan with { Title = " Five ", Host = " Us " }).Value[0]);
        Assert.Equal(("Five", "Us"), (trimmed.Plan.Title, trimmed.Plan.Host));
    }

    [Theory]
    [InlineData(new[] { 3, 2, 1 }, true)]
    [InlineData(new[] { 3, 0, 0 }, true)]
    [InlineData(new[] { 1, 2, 3 }, false)]
    [InlineData(new[] { 3, 1, 2 }, false)]
    [InlineData(new[] { 1, 1, 1 }, false)]
    [InlineData(new[] { 1 }, false)]
    [InlineData(new int[0], false)]
    public void Place_points_fall_from_first_to_last(int[] weights, bool accepted)
    {
        var plan = Day.AnyPlan with { Rule = new CountingRule.PlacePoints([.. weights.Select(weight => (decimal)weight)]) };
        Assert.Equal(accepted, DraftTasting.Begin(DateTimeOffset.UnixEpoch, plan).Ok);
    }

    [Theory]
    [InlineData("1000.001", "0")]
    [InlineData("0", "-1000.001")]
    [InlineData("1.0004", "1")]
    public void Place_points_that_the_count_cannot_carry_do_not_exist(string first, string last)
    {
        ImmutableArray<decimal> weights = [decimal.Parse(first, CultureInfo.InvariantCulture), decimal.Parse(last, CultureInfo.InvariantCulture)];
        Assert.NotNull(CountingRule.PlacePoints.Fault(weights));
        Assert.Throws<ArgumentException>(() => new CountingRule.PlacePoints(weights));
        Assert.Null(CountingRule.PlacePoints.Fault(CountingRule.PlacePoints.Stored(weights).Weights));
    }

    [Fact]
    public void Place_points_stored_before_they_had_bounds_keep_their_ratios_to_the_thousandth()
    {
        Assert.Equal([1000m, 500m, 0.002m, 0m], CountingRule.PlacePoints.Stored([8_000_000m, 4_000_000m, 16.5m, 0m]).Weights);
        Assert.Equal([1m, 1m, 0m], CountingRule.PlacePoints.Stored([1.0004m, 1m, 0m]).Weights);
        Assert.Equal([1000m, -1.25m], CountingRule.PlacePoints.Stored([1000m, -1.25m]).Weights);
    }

    [Fact]
    public void The_plan_can_be_written_anew_until_it_is_sealed()
    {
        var day = new Day().Do<DraftTasting>((draft, at) => draft.Plan(at, Day.AnyPlan with { Title = "Another" }));
        Assert.Equal("Another", day.Book.Plan.Title);
    }

    [Fact]
    public void Wheels_get_labels_that_are_never_used_again()
    {
        var day = new Day().Wheels(3);
        day.Do<DraftTasting>((draft, at) => draft.Remove(at, day.Wheel("B"))).Do<DraftTasting>((draft, at) => draft.Enter(at, day.NewWheel("D")));
        Assert.Equal(["W1 A", "W3 C", "W4 D"], day.Book.Entries.Select(entry => $"{entry.Label} {entry.Name}"));
    }

    [Fact]
    public void A_wheel_needs_a_short_name_of_its_own_and_enters_once()
    {
        var day = new Day().Wheels(1);
        Assert.Contains("needs a name", day.Refused<DraftTasting>((draft, at) => draft.Enter(at, day.NewWheel(" "))), StringComparison.Ordinal);
        Assert.Contains("30 letters", day.Refused<DraftTasting>((draft, at) => draft.Enter(at, day.NewWheel(new('x', 31)))), StringComparison.Ordinal);
        Assert.Contains("already called a", day.Refused<DraftTasting>((draft, at) => draft.Enter(at, day.NewWheel(" a "))), StringComparison.Ordinal);
        Assert.Contains("in the trial already", day.Refused<DraftTasting>((draft, at) => draft.Enter(at, new Wheel(day.Wheel("A"), "B", WheelFacts.None))), StringComparison.Ordinal);
    }

    [Fact]
    public void A_trial_has_twenty_four_wheels_at_most_withdrawn_ones_apart()
    {
        var day = new Day().Wheels(24);
        Assert.Contains("24 wheels at most", day.Refused<DraftTasting>((draft, at) => draft.Enter(at, day.NewWheel("Z"))), StringComparison.Ordinal);
        day.Do<DraftTasting>((draft, at) => draft.Withdraw(at, day.Wheel("H"), "Split rind", null)).Do<DraftTasting>((draft, at) => draft.Enter(at, day.NewWheel("Z")));
        Assert.Equal(24, day.Book.Standing.Count());
    }

    [Fact]
    public void A_withdrawn_wheel_stays_in_the_record_and_cannot_be_removed_or_served_twice()
    {
        var day = new Day().Wheels(3).Do<DraftTasting>((draft, at) => draft.ServeTwice(at, new(Day.Number(0xBB, 1))));
        day.Do<DraftTasting>((draft, at) => draft.Withdraw(at, day.Wheel("A"), " Late blowing ", "Ana"));
        var withdrawal = Assert.Single(day.Book.Withdrawals);
        Assert.Equal(("Late blowing", "Ana", false), (withdrawal.Reason, withdrawal.DecidedBy, withdrawal.WhileTasting));
        Assert.Null(day.Book.Repeat);
        Assert.Contains("its record stays", day.Refused<DraftTasting>((draft, at) => draft.Remove(at, day.Wheel("A"))), StringComparison.Ordinal);
        Assert.Contains("withdrawn already", day.Refused<DraftTasting>((draft, at) => draft.Withdraw(at, day.Wheel("A"), "Again", null)), StringComparison.Ordinal);
        Assert.Contains("Say why", day.Refused<DraftTasting>((draft, at) => draft.Withdraw(at, day.Wheel("B"), " ", null)), StringComparison.Ordinal);
        day.Refused<DraftTasting>((draft, at) => draft.ServeTwice(at, day.Wheel("A")));
        day.Refused<DraftTasting>((draft, at) => draft.Remove(at, new WheelId(Day.Number(0xBB, 99))));
        day.Refused<DraftTasting>((draft, at) => draft.Withdraw(at, new WheelId(Day.Number(0xBB, 99)), "Gone", null));
    }

    [Fact]
    public void A_wheel_withdrawn_from_a_draft_is_told_in_the_record()
    {
        var day = new Day().Wheels(3).Guests(1);
        day.Do<DraftTasting>((draft, at) => draft.Withdraw(at, day.Wheel("A"), "Late blowing", null))
            .Do<DraftTasting>((draft, at) => draft.Seal(at, new Seed(1)))
            .Do<SealedTasting>((step, at) => step.Open(at)).Close().Reveal();
        var record = day.Record();
        Assert.Equal(["W2", "W3"], record.Samples.Select(sample => sample.Id));
        Assert.Equal(("W1", false), (record.Withdrawals.Single().Id, record.Withdrawals.Single().WhileTasting));
    }

    [Fact]
    public void Taking_off_the_wheel_that_is_served_twice_takes_the_repeat_off()
    {
        var day = new Day().Wheels(3);
        day.Do<DraftTasting>((draft, at) => draft.ServeTwice(at, day.Wheel("A"))).Do<DraftTasting>((draft, at) => draft.Remove(at, day.Wheel("A")));
        Assert.Null(day.Book.Repeat);
    }

    [Fact]
    public void A_taster_needs_a_name_of_their_own()
    {
        var day = new Day().Guests(1);
        Assert.Contains("needs a name", day.Refused<DraftTasting>((draft, at) => draft.AddTaster(at, day.NewTaster(), "", false, false, 1)), StringComparison.Ordinal);
        Assert.Contains("60 letters", day.Refused<DraftTasting>((draft, at) => draft.AddTaster(at, day.NewTaster(), new('x', 61), false, false, 1)), StringComparison.Ordinal);
        Assert.Contains("on the list already", day.Refused<DraftTasting>((draft, at) => draft.AddTaster(at, day.NewTaster(), "guest 1", false, false, 1)), StringComparison.Ordinal);
        Assert.Contains("counted from 1", day.Refused<DraftTasting>((draft, at) => draft.AddTaster(at, day.NewTaster(), "Bo", false, false, 0)), StringComparison.Ordinal);
        day.Refused<DraftTasting>((draft, at) => draft.AddTaster(at, day.Guest(1), "Bo", false, false, 1));
    }

    [Fact]
    public void A_taster_let_go_by_mistake_can_join_again_under_a_new_number()
    {
        var day = new Day().Guests(2);
        day.Do<DraftTasting>((draft, at) => draft.LetGo(at, day.Guest(1))).Do<DraftTasting>((draft, at) => draft.AddTaster(at, day.NewTaster(), "Guest 1", true, true, 2));
        Assert.Equal(["T02 Guest 2", "T03 Guest 1"], day.Book.Present.Select(taster => $"{taster.Label} {taster.Name}"));
        Assert.Equal((true, true, 2), (day.Book.Tasters[2].KnowsTheKey, day.Book.Tasters[2].Junior, day.Book.Tasters[2].Sitting));
        day.Refused<DraftTasting>((draft, at) => draft.LetGo(at, day.Guest(1)));
    }

    [Fact]
    public void A_trial_takes_five_hundred_tasters_at_most()
    {
        var day = new Day().Wheels(2).Guests(500);
        Assert.Contains("500 tasters", day.Refused<DraftTasting>((draft, at) => draft.AddTaster(at, day.NewTaster(), "One more", false, false, 1)), StringComparison.Ordinal);
        day.Do<DraftTasting>((draft, at) => draft.Seal(at, new Seed(1)));
        day.Refused<SealedTasting>((step, at) => step.AddTaster(at, day.NewTaster(), "One more", false, false, 1));
        day.Do<SealedTasting>((step, at) => step.Open(at));
        day.Refused<OpenTasting>((open, at) => open.AddTaster(at, day.NewTaster(), "One more", false, false, 1));
    }

    [Fact]
    public void Nobody_is_left_without_any_sample()
    {
        var day = new Day().Wheels(3).Guests(1);
        Assert.Contains("nothing is left", day.Refused<DraftTasting>((draft, at) => draft.LeaveOff(at, day.Guest(1), [.. day.Book.Entries.Select(entry => entry.Wheel)])), StringComparison.Ordinal);
        day.Refused<DraftTasting>((draft, at) => draft.LeaveOff(at, day.Guest(1), [new(Day.Number(0xBB, 99))]));
        day.Do<DraftTasting>((draft, at) => draft.LeaveOff(at, day.Guest(1), [day.Wheel("A"), day.Wheel("B")])).Do<DraftTasting>((draft, at) => draft.Remove(at, day.Wheel("C")));
        Assert.Contains("Guest 1's plate", day.Refused<DraftTasting>((draft, at) => draft.Seal(at, new Seed(1))), StringComparison.Ordinal);
        day.Do<DraftTasting>((draft, at) => draft.LetGo(at, day.Guest(1)));
        day.Refused<DraftTasting>((draft, at) => draft.LeaveOff(at, day.Guest(1), []));
    }

    [Fact]
    public void Sealing_needs_two_wheels_a_taster_and_a_weight_for_each_wheel()
    {
        var day = new Day(Day.AnyPlan with { Rule = new CountingRule.PlacePoints([2, 1, 0]) }).Wheels(1);
        var sentences = day.Refused<DraftTasting>((draft, at) => draft.Seal(at, new Seed(1)));
        Assert.Contains("at least two wheels", sentences, StringComparison.Ordinal);
        Assert.Contains("at least one taster", sentences, StringComparison.Ordinal);
        Assert.Contains("one weight for each of the 1 wheels; there are 3", sentences, StringComparison.Ordinal);
    }

    [Fact]
    public void A_log_that_does_not_begin_with_a_plan_is_a_defect()
    {
        Assert.Throws<ArgumentException>(() => Tasting.Read(new TrialId(Guid.Empty), []));
        Assert.Throws<ArgumentException>(() => Tasting.Read(new TrialId(Guid.Empty), [new Logged(1, new TastingOpened(DateTimeOffset.UnixEpoch))]));
    }
}
