using System.Collections.Immutable;
using Trier.Statistics.Randomness;
using Trier.Trials.Tastings;
using Trier.Trials.Tastings.Steps;

namespace Trier.Trials.Tests.Tastings;

public class SealedTests
{
    [Fact]
    public void Sealing_gives_every_wheel_one_code_that_counts_and_every_taster_a_plate()
    {
        var day = Day.Sealed(5, 6);
        Assert.Equal(5, day.Key.Lines.Length);
        Assert.All(day.Key.Lines, line => Assert.True(line.Counts));
        Assert.Equal(day.Book.Entries.Select(entry => entry.Wheel).ToHashSet(), day.Key.Lines.Select(line => line.Wheel).ToHashSet());
        Assert.Equal(day.Key.Lines.OrderBy(line => line.Code), day.Key.Lines);
        Assert.All(day.Book.Tasters, taster => Assert.Equal(day.Key.Lines.Select(line => line.Code), day.Book.Plate(taster.Id)!.Codes.Order()));
        Assert.Equal((1, day.Now), (day.Key.Version, day.Book.SealedAt));
    }

    [Fact]
    public void The_same_seed_draws_the_same_key_and_another_seed_another()
    {
        Assert.Equal(Codes(Day.Sealed(5, 3, seed: 4)), Codes(Day.Sealed(5, 3, seed: 4)));
        Assert.NotEqual(Codes(Day.Sealed(5, 3, seed: 4)), Codes(Day.Sealed(5, 3, seed: 5)));
    }

    [Theory]
    [InlineData(2)]
    [InlineData(4)]
    [InlineData(6)]
    [InlineData(8)]
    public void With_an_even_number_each_sample_stands_at_each_position_and_follows_each_other_once_in_as_many_plates(int wheels)
    {
        var plates = Plates(Day.Sealed(wheels, wheels));
        Assert.All(Positions(plates).Values, count => Assert.Equal(1, count));
        Assert.Equal(wheels * wheels, Positions(plates).Count);
        Assert.All(Neighbours(plates).Values, count => Assert.Equal(1, count));
        Assert.Equal(wheels * (wheels - 1), Neighbours(plates).Count);
    }

    [Theory]
    [InlineData(3)]
    [InlineData(5)]
    [InlineData(7)]
    public void With_an_odd_number_twice_as_many_plates_are_balanced_twice(int wheels)
    {
        var plates = Plates(Day.Sealed(wheels, 2 * wheels));
        Assert.All(Positions(plates).Values, count => Assert.Equal(2, count));
        Assert.All(Neighbours(plates).Values, count => Assert.Equal(2, count));
        Assert.Equal(wheels * (wheels - 1), Neighbours(plates).Count);
    }

    [Theory]
    [InlineData(3)]
    [InlineData(4)]
    [InlineData(5)]
    [InlineData(7)]
    public void A_hidden_repeat_is_served_to_everyone_and_never_right_after_itself(int wheels)
    {
        var day = Day.Sealed(wheels, (2 * wheels) + 3, repeat: true);
        var pair = day.Key.Of(day.Wheel("A"));
        Assert.Equal([true, false], pair.Select(line => line.Counts));
        foreach (var plate in Plates(day))
        {
            Assert.Equal(wheels + 1, plate.Length);
            Assert.NotEqual(1, Math.Abs(plate.IndexOf(pair[0].Code) - plate.IndexOf(pair[1].Code)));
        }

        var whole = Plates(Day.Sealed(wheels, wheels + 1, repeat: true));
        Assert.All(Positions(whole).Values, count => Assert.Equal(1, count));
    }

    [Fact]
    public void With_two_wheels_a_repeat_is_balanced_though_it_cannot_always_be_kept_apart()
    {
        var plates = Plates(Day.Sealed(2, 6, repeat: true));
        Assert.All(Positions(plates).Values, count => Assert.Equal(2, count));
    }

    [Fact]
    public void Which_of_the_two_codes_counts_is_a_fair_throw()
    {
        const int throws = 400;
        var lower = Enumerable.Range(0, throws).Count(seed =>
        {
            var day = Day.Sealed(2, 1, repeat: true, seed: (ulong)seed);
            return day.Code("A") < day.CheckCode("A");
        });
        // Five standard deviations of a fair coin.
        Assert.InRange(lower, (throws / 2) - 50, (throws / 2) + 50);
    }

    [Fact]
    public void A_sample_left_off_after_sealing_stands_nowhere_on_that_plate_and_the_others_keep_their_order()
    {
        var day = Day.Sealed(4, 4, repeat: true);
        var before = Wheels(day, 2);
        var others = day.Book.Present.Where(taster => taster.Number != 2).Select(taster => day.Book.Plate(taster.Id)!).ToList();
        day.Do<SealedTasting>((step, at) => step.LeaveOff(at, day.Guest(2), [day.Wheel("A")], new Seed(3)));
        Assert.Equal(before.Where(wheel => wheel != day.Wheel("A")), Wheels(day, 2));
        Assert.Equal((2, 3), (day.Key.Version, Wheels(day, 2).Count));
        Assert.All(others, plate => Assert.Equal(plate.Codes, day.Book.Plate(plate.Taster)!.Codes));
        day.Do<SealedTasting>((step, at) => step.LeaveOff(at, day.Guest(2), [], new Seed(4)));
        Assert.Equal(before.OrderBy(wheel => wheel.Value), Wheels(day, 2).OrderBy(wheel => wheel.Value));
        Assert.Superset(day.Book.Plate(day.Guest(1))!.Codes.ToHashSet(), day.Book.Plate(day.Guest(2))!.Codes.ToHashSet());
    }

    [Fact]
    public void A_plate_with_a_sample_left_off_bears_no_code_of_anybody_else_s_so_none_is_missing()
    {
        var day = new Day().Wheels(4).Guests(3);
        day.Do<DraftTasting>((draft, at) => draft.LeaveOff(at, day.Guest(2), [day.Wheel("B")])).Do<DraftTasting>((draft, at) => draft.Seal(at, new Seed(1)));
        Assert.Empty(day.Book.Plate(day.Guest(2))!.Codes.Intersect(day.Book.Plate(day.Guest(1))!.Codes));
        var first = day.Book.Plate(day.Guest(2))!.Codes;
        // Leaving off another, or putting one back, gives away no code either: all of them are new.
        day.Do<SealedTasting>((step, at) => step.LeaveOff(at, day.Guest(2), [day.Wheel("B"), day.Wheel("C")], new Seed(2)));
        Assert.Empty(day.Book.Plate(day.Guest(2))!.Codes.Intersect(first));
        Assert.Superset(first.ToHashSet(), day.Key.Retired.ToHashSet());
    }

    [Fact]
    public void A_sample_left_off_in_the_draft_is_left_off_the_plate_that_is_dealt()
    {
        var day = new Day().Wheels(3).Guests(2);
        day.Do<DraftTasting>((draft, at) => draft.LeaveOff(at, day.Guest(2), [day.Wheel("B")])).Do<DraftTasting>((draft, at) => draft.Seal(at, new Seed(1)));
        Assert.DoesNotContain(day.Code("B"), day.Book.Plate(day.Guest(2))!.Codes);
        Assert.Equal((3, 2), (day.Book.Plate(day.Guest(1))!.Codes.Length, day.Book.Plate(day.Guest(2))!.Codes.Length));
    }

    [Fact]
    public void Whoever_was_let_go_has_no_plate_and_nothing_can_be_left_off_it()
    {
        var day = new Day().Wheels(3).Guests(2);
        day.Do<DraftTasting>((draft, at) => draft.LetGo(at, day.Guest(2))).Do<DraftTasting>((draft, at) => draft.Seal(at, new Seed(1)));
        Assert.Null(day.Book.Plate(day.Guest(2)));
        day.Refused<SealedTasting>((step, at) => step.LeaveOff(at, day.Guest(2), [day.Wheel("A")], new Seed(2)));
        day.Refused<SealedTasting>((step, at) => step.LetGo(at, day.Guest(2)));
    }

    [Fact]
    public void Whoever_joins_gets_the_first_plate_nobody_has()
    {
        var day = Day.Sealed(4, 4);
        var freed = day.Book.Plate(day.Guest(3))!.Codes;
        day.Do<SealedTasting>((step, at) => step.LetGo(at, day.Guest(3)));
        day.Do<SealedTasting>((step, at) => step.AddTaster(at, day.NewTaster(), "New", false, false, 1));
        Assert.Equal(freed, day.Book.Plate(day.Guest(5))!.Codes);
        Assert.Empty(day.Book.Late);
        Assert.Contains("needs a name", day.Refused<SealedTasting>((step, at) => step.AddTaster(at, day.NewTaster(), " ", false, false, 1)), StringComparison.Ordinal);
    }

    [Fact]
    public void A_wheel_pulled_before_the_guests_come_leaves_no_gap()
    {
        var day = Day.Sealed(4, 4);
        var (gone, kept) = (day.Code("B"), day.Key.Lines.Where(line => line.Wheel != day.Wheel("B")).ToHashSet());
        day.Do<SealedTasting>((step, at) => step.Withdraw(at, day.Wheel("B"), "Smells of ammonia", "Ana", day.Wheel("A"), new Seed(9)));
        Assert.Equal((2, day.Wheel("A")), (day.Key.Version, day.Book.Repeat));
        Assert.Contains(gone, day.Key.Retired);
        var served = Plates(day);
        Assert.All(served, plate => Assert.DoesNotContain(gone, plate));
        Assert.All(served, plate => Assert.Equal(4, plate.Distinct().Count()));
        Assert.All(Positions(served).Values, count => Assert.Equal(1, count));
        Assert.Superset(kept.Select(line => line.Code).ToHashSet(), day.Key.Lines.Select(line => line.Code).ToHashSet());
        Assert.Equal([true, false], day.Key.Of(day.Wheel("A")).Select(line => line.Counts));
        var (check, counts) = (day.CheckCode("A"), day.Code("A"));
        Assert.Contains(kept, line => line.Wheel == day.Wheel("A") && (line.Code == check || line.Code == counts));
    }

    [Fact]
    public void A_withdrawal_throws_no_second_coin_for_a_repeat_that_stays()
    {
        for (ulong seed = 0; seed < 20; seed++)
        {
            var day = Day.Sealed(3, 1, repeat: true, seed: seed);
            var (counts, check) = (day.Code("A"), day.CheckCode("A"));
            day.Do<SealedTasting>((step, at) => step.Withdraw(at, day.Wheel("B"), "Cracked", null, day.Wheel("A"), new Seed(seed + 100)));
            Assert.Equal((counts, check), (day.Code("A"), day.CheckCode("A")));
        }
    }

    [Fact]
    public void The_repeat_goes_with_its_wheel()
    {
        var day = Day.Sealed(4, 3, repeat: true);
        var gone = day.Key.Of(day.Wheel("A")).Select(line => line.Code).ToArray();
        day.Do<SealedTasting>((step, at) => step.Withdraw(at, day.Wheel("A"), "Cracked", null, null, new Seed(2)));
        Assert.Null(day.Book.Repeat);
        Assert.Superset(gone.ToHashSet(), day.Key.Retired.ToHashSet());
        Assert.All(Plates(day), plate => Assert.Equal(3, plate.Length));
    }

    [Fact]
    public void One_hidden_repeat_is_enough_and_only_a_standing_wheel_can_be_it()
    {
        var day = Day.Sealed(4, 3, repeat: true);
        Assert.Contains("A is served twice already", day.Refused<SealedTasting>((step, at) => step.Withdraw(at, day.Wheel("B"), "Cracked", null, day.Wheel("C"), new Seed(2))), StringComparison.Ordinal);
        Assert.Contains("stays in the trial", day.Refused<SealedTasting>((step, at) => step.Withdraw(at, day.Wheel("A"), "Cracked", null, day.Wheel("A"), new Seed(2))), StringComparison.Ordinal);
        day.Do<SealedTasting>((step, at) => step.Withdraw(at, day.Wheel("A"), "Cracked", null, day.Wheel("C"), new Seed(2)));
        Assert.Equal(2, day.Key.Of(day.Wheel("C")).Length);
    }

    [Fact]
    public void A_withdrawal_needs_a_reason_and_leaves_two_wheels_and_no_empty_plate()
    {
        var day = Day.Sealed(3, 2);
        Assert.Contains("Say why", day.Refused<SealedTasting>((step, at) => step.Withdraw(at, day.Wheel("A"), "", null, null, new Seed(2))), StringComparison.Ordinal);
        day.Do<SealedTasting>((step, at) => step.LeaveOff(at, day.Guest(1), [day.Wheel("A"), day.Wheel("B")], new Seed(2)));
        Assert.Contains("Guest 1's plate", day.Refused<SealedTasting>((step, at) => step.Withdraw(at, day.Wheel("C"), "Cracked", null, null, new Seed(2))), StringComparison.Ordinal);
        day.Do<SealedTasting>((step, at) => step.Withdraw(at, day.Wheel("A"), "Cracked", null, null, new Seed(2)));
        Assert.Contains("fewer than two", day.Refused<SealedTasting>((step, at) => step.Withdraw(at, day.Wheel("B"), "Cracked", null, null, new Seed(2))), StringComparison.Ordinal);
    }

    [Fact]
    public void A_broken_seal_retires_every_code_for_good()
    {
        var day = Day.Sealed(5, 3, repeat: true);
        var seen = new HashSet<BlindCode>();
        for (ulong round = 0; round < 20; round++)
        {
            var now = day.Key.Lines.Select(line => line.Code).ToHashSet();
            Assert.Empty(seen.Intersect(now));
            Assert.Equal((int)round + 1, day.Key.Version);
            seen.UnionWith(now);
            day.Do<SealedTasting>((step, at) => step.BreakSeal(at));
            Assert.IsType<DraftTasting>(day.Tasting);
            Assert.Null(day.Book.Plate(day.Guest(1)));
            day.Do<DraftTasting>((draft, at) => draft.Seal(at, new Seed(round)));
        }
    }

    [Fact]
    public void When_the_codes_run_out_sealing_is_refused_in_a_sentence()
    {
        var day = Day.Sealed(8, 1);
        for (ulong round = 0; round < 200; round++)
        {
            day.Do<SealedTasting>((step, at) => step.BreakSeal(at));
            var outcome = day.Try<DraftTasting>((draft, at) => draft.Seal(at, new Seed(round)));
            if (!outcome.Ok)
            {
                Assert.Contains("No three-digit codes are left", Assert.Single(outcome.Problems).Sentence, StringComparison.Ordinal);
                Assert.InRange(round, 50UL, 110UL);
                return;
            }

            day.Append(outcome.Value);
        }

        Assert.Fail("Codes never ran out.");
    }

    [Fact]
    public void Breaking_the_seal_ends_what_an_early_look_at_the_key_was_worth()
    {
        var day = Day.Sealed(3, 1).Do<SealedTasting>((step, at) => step.OpenKey(at, "The maker", early: true, taster: null));
        Assert.Single(day.Book.KeyOpenings);
        day.Do<SealedTasting>((step, at) => step.BreakSeal(at)).Do<DraftTasting>((draft, at) => draft.Seal(at, new Seed(7)));
        Assert.Empty(day.Book.KeyOpenings);
        Assert.Contains(day.Log, logged => logged.Event is Trials.Tastings.Events.KeyOpened);
    }

    private static ImmutableArray<ImmutableArray<BlindCode>> Plates(Day day) => [.. day.Book.Present.Select(taster => day.Book.Plate(taster.Id)!.Codes)];

    private static List<Common.WheelId> Wheels(Day day, int guest) => [.. day.Book.Plate(day.Guest(guest))!.Codes.Select(code => day.Key[code]!.Wheel)];

    private static IEnumerable<BlindCode> Codes(Day day) => day.Key.Lines.Select(line => line.Code).Concat(Plates(day).SelectMany(plate => plate));

    private static Dictionary<(BlindCode Code, int Position), int> Positions(IEnumerable<ImmutableArray<BlindCode>> plates) =>
        plates.SelectMany(plate => plate.Select((code, position) => (code, position))).GroupBy(stand => stand).ToDictionary(group => group.Key, group => group.Count());

    private static Dictionary<(BlindCode Code, BlindCode Next), int> Neighbours(IEnumerable<ImmutableArray<BlindCode>> plates) =>
        plates.SelectMany(plate => plate.Zip(plate.Skip(1))).GroupBy(pair => pair).ToDictionary(group => group.Key, group => group.Count());
}
