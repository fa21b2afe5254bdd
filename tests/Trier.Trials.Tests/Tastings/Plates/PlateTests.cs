using System.Collections.Immutable;
using Trier.Statistics.Designs;
using Trier.Statistics.Randomness;
using Trier.Trials.Common;
using Trier.Trials.Plans;
using Trier.Trials.Tastings;
using Trier.Trials.Tastings.Events;
using Trier.Trials.Tastings.Placing;
using Trier.Trials.Tastings.Plates;
using Trier.Trials.Tastings.Steps;
using Trier.Trials.Verdicts;

namespace Trier.Trials.Tests.Tastings.Plates;

/// <summary>Numbered plates: even however many come, with codes of their own where they are asked for.</summary>
public class PlateTests
{
    [Theory]
    [InlineData(4)]
    [InlineData(5)]
    [InlineData(6)]
    [InlineData(8)]
    public void Plates_given_out_as_people_come_are_even_after_every_one_of_them(int wheels)
    {
        var day = Open(wheels, 14, new(null, false, AsTheyCome: true, null));
        Assert.Empty(day.Book.Plates);
        // They come in no order of the list.
        foreach (var number in Enumerable.Range(1, 14).OrderBy(number => number * 5 % 14))
        {
            day.Do<OpenTasting>((open, at) => open.HandOut(at, day.Guest(number), null));
            var facts = PlateFacts.Of(day.Book)!;
            Assert.Equal(day.Book.Plates.Count, facts.Plates);
            Assert.InRange(facts.Balance.PositionSpread, 0, 1);
            Assert.InRange(facts.Balance.CarryOverSpread, 0, 2);
        }

        Assert.Equal(Enumerable.Range(1, 14), day.Book.Plates.Values.Select(plate => plate.Number!.Value).Order());
    }

    [Fact]
    public void When_only_six_of_fourteen_come_the_plates_are_dealt_anew_and_even_among_the_six()
    {
        var day = Day.Sealed(5, 14, repeat: true);
        var codes = day.Key.Lines.Select(line => line.Code).ToList();
        var six = new[] { 2, 3, 7, 9, 10, 14 }.Select(day.Guest).ToList();
        day.Do<SealedTasting>((step, at) => step.OnlyThese(at, six, new Seed(5)));
        Assert.Equal(six, day.Book.Plates.Values.Select(plate => plate.Taster));
        Assert.Equal(codes, day.Key.Lines.Select(line => line.Code));
        var facts = PlateFacts.Of(day.Book)!;
        Assert.Equal((6, 0, 0), (facts.Plates, facts.Balance.PositionSpread, facts.Adjacent));
        Assert.Equal(6, TrialOutline.Of(day.Book).Tasters);
        // Somebody comes after all: the next plate.
        day.Do<SealedTasting>((step, at) => step.Open(at)).Do<OpenTasting>((open, at) => open.HandOut(at, day.Guest(1), null));
        Assert.Equal(7, day.Book.Plate(day.Guest(1))!.Number);
        Assert.Equal(7, TrialOutline.Of(day.Book).Tasters);
        Assert.Contains("has a plate already", day.Refused<OpenTasting>((open, at) => open.HandOut(at, day.Guest(2), null)), StringComparison.Ordinal);
        day.Close().Reveal();
        Assert.Equal(7, day.Record().Voters.Length);
        Assert.Contains(day.Record().Notes, note => note.Sentence == "14 were on the list and 7 came.");
    }

    [Fact]
    public void The_number_on_the_card_decides_which_plate_it_is()
    {
        var day = Open(4, 5, new(null, false, AsTheyCome: true, null));
        day.Do<OpenTasting>((open, at) => open.HandOut(at, day.Guest(1), 3));
        Assert.Equal(day.Book.Orders[2], day.Book.Plate(day.Guest(1))!.Codes);
        Assert.Contains("not free", day.Refused<OpenTasting>((open, at) => open.HandOut(at, day.Guest(2), 3)), StringComparison.Ordinal);
        Assert.Contains("not free", day.Refused<OpenTasting>((open, at) => open.HandOut(at, day.Guest(2), 77)), StringComparison.Ordinal);
        day.Do<OpenTasting>((open, at) => open.HandOut(at, day.Guest(2), null));
        Assert.Equal(1, day.Book.Plate(day.Guest(2))!.Number);
    }

    [Fact]
    public void When_the_spares_are_out_orders_are_used_again()
    {
        var day = Open(4, 2, ServingRules.Usual);
        for (var i = 0; i < 12; i++) day.Do<OpenTasting>((open, at) => open.AddTaster(at, day.NewTaster(), $"New {i}", false, false, 1));
        Assert.Equal(14, day.Book.Plates.Values.Select(plate => plate.Number).Distinct().Count());
        Assert.All(day.Book.Plates.Values, plate => Assert.Equal(4, plate.Codes.Length));
    }

    [Theory]
    [InlineData(12, 6, 14)]
    [InlineData(24, 8, 20)]
    [InlineData(9, 3, 12)]
    public void Where_there_are_more_wheels_than_a_palate_takes_everybody_gets_some_and_every_wheel_its_share(int wheels, int each, int guests)
    {
        var day = Open(wheels, guests, new(each, false, false, null));
        var orders = day.Book.Plates.Values.Select(plate => plate.Codes).ToList();
        Assert.All(orders, codes => Assert.Equal(each, codes.Distinct().Count()));
        var served = day.Key.Lines.Select(line => orders.Count(codes => codes.Contains(line.Code))).ToList();
        Assert.InRange(served.Max() - served.Min(), 0, 1);
        var facts = PlateFacts.Of(day.Book)!;
        var best = wheels * (each - 1.0) / (each * (wheels - 1.0));
        Assert.InRange(facts.Efficiency!.Value, 0.9 * best, best + 1e-9);
        Assert.Equal((each, wheels), (facts.Each, facts.Samples));
    }

    [Fact]
    public void A_plate_carries_eight_at_most_and_place_points_want_every_wheel_placed()
    {
        var day = new Day().Wheels(9).Guests(2);
        Assert.Contains("how many samples each taster gets", day.Refused<DraftTasting>((draft, at) => draft.Seal(at, new Seed(1))), StringComparison.Ordinal);
        Assert.Contains("2 to 8 samples", day.Refused<DraftTasting>((draft, at) => draft.Plan(at, Day.AnyPlan with { Serving = ServingRules.Usual with { SamplesEach = 9 } })), StringComparison.Ordinal);
        var points = new CountingRule.PlacePoints([.. Enumerable.Range(0, 9).Reverse().Select(weight => (decimal)weight)]);
        day.Do<DraftTasting>((draft, at) => draft.Plan(at, Day.AnyPlan with { Rule = points, Serving = ServingRules.Usual with { SamplesEach = 4 } }));
        Assert.Contains("choose another rule", day.Refused<DraftTasting>((draft, at) => draft.Seal(at, new Seed(1))), StringComparison.Ordinal);
    }

    [Fact]
    public void Own_codes_are_all_different_spares_included_and_each_plate_s_can_stand_on_one_table()
    {
        var day = Open(6, 14, new(null, OwnCodes: true, false, null), repeat: true);
        Assert.True(day.Key.OwnCodes);
        Assert.Equal(7 * 18, day.Key.Lines.Length);
        Assert.Equal(day.Key.Lines.Length, day.Key.Lines.Select(line => line.Code).Distinct().Count());
        Assert.All(day.Book.Orders, codes => Assert.All(codes, code => Assert.All(codes.Where(other => other != code), other => Assert.True(code.CanStandBeside(other)))));
        foreach (var plate in day.Book.Plates.Values)
        {
            Assert.Equal(day.Book.Entries.Length, plate.Codes.Select(code => day.Key[code]!.Wheel).Distinct().Count());
            Assert.Single(plate.Codes, code => !day.Key[code]!.Counts);
            Assert.All(plate.Codes, code => Assert.Equal(plate.Number, day.Key[code]!.Plate));
        }
    }

    [Fact]
    public void With_own_codes_either_of_the_repeat_s_two_can_be_the_one_that_counts()
    {
        var lower = 0;
        for (ulong seed = 0; seed < 40; seed++)
        {
            var day = new Day(Day.AnyPlan with { Serving = new(null, OwnCodes: true, false, null) }).Wheels(4).Guests(6);
            day.Do<DraftTasting>((draft, at) => draft.ServeTwice(at, day.Wheel("A"))).Do<DraftTasting>((draft, at) => draft.Seal(at, new Seed(seed)));
            lower += day.Book.Orders.Count(codes => day.Key[codes.Where(code => day.Key[code]!.Wheel == day.Wheel("A")).Min()]!.Counts);
        }

        // 40 times 10 plates: five standard deviations of a fair coin.
        Assert.InRange(lower, 150, 250);
    }

    [Fact]
    public void Where_six_hundred_codes_are_not_enough_everybody_has_the_same()
    {
        Assert.True(Sealed(8, 60, new(null, OwnCodes: true, false, null)).Key.OwnCodes);
        var shared = Sealed(8, 61, new(null, OwnCodes: true, false, null));
        Assert.False(shared.Key.OwnCodes);
        Assert.Equal(8, shared.Key.Lines.Length);
    }

    [Fact]
    public void Ballots_in_own_codes_are_read_as_wheels_and_the_samples_of_the_record_have_no_code()
    {
        var day = Open(3, 3, new(null, OwnCodes: true, false, null));
        foreach (var guest in new[] { 1, 2, 3 })
        {
            var codes = day.Book.Plate(day.Guest(guest))!.Codes;
            var byName = codes.OrderBy(code => day.Book.Entry(day.Key[code]!.Wheel)!.Name, StringComparer.Ordinal).Select(code => new[] { code });
            day.Send(day.Guest(guest), Ballot.Of(codes, byName, []).Value, BallotStage.Sent);
        }

        day.Close().Reveal();
        var record = day.Record();
        Assert.Equal(["W1", "W2", "W3"], record.Samples.Select(sample => sample.Id));
        Assert.All(record.Samples, sample => Assert.Null(sample.Code));
        Assert.All(record.Voters, voter => Assert.Equal(["W1", "W2", "W3"], voter.Places.Select(group => Assert.Single(group))));
    }

    [Theory]
    [InlineData(1), InlineData(2), InlineData(3), InlineData(4), InlineData(5), InlineData(6), InlineData(7), InlineData(8)]
    public void A_wheel_pulled_with_guests_at_the_table_leaves_their_plates_and_makes_the_others_again(ulong seed)
    {
        var day = Day.Open(5, 6);
        day.Send(day.Guest(1), "A B");
        day.Send(day.Guest(2), "E");
        var (before, third) = (day.Book.Plate(day.Guest(1))!.Codes, day.Book.Plate(day.Guest(3))!);
        var gone = day.Code("B");
        day.Do<OpenTasting>((open, at) => open.WithdrawAndDraw(at, day.Wheel("B"), "Smells of ammonia", "Ana", new HashSet<TasterId> { day.Guest(1), day.Guest(2) }, day.Wheel("A"), new Seed(seed)));
        Assert.Equal(day.Key.Lines.Length, day.Key.Lines.Select(line => line.Code).Distinct().Count());
        // Who had begun has the first code alone: it goes on counting, however the coin would fall.
        Assert.All(day.Key.Of(day.Wheel("A")), line => Assert.Equal(before.Contains(line.Code), line.Counts));
        Assert.Equal(before.Where(code => code != gone), day.Book.Served(day.Guest(1)));
        Assert.Contains(gone, day.Key.Retired);
        // What was said of the wheel stays on the ballot, and the ballot can still grow.
        Assert.Equal(before, day.Book.Plate(day.Guest(1))!.Codes);
        Assert.True(BallotEditing.Answer(day.Ballots[day.Guest(1)].Current!.Content, day.Book.Plate(day.Guest(1))!.Codes, day.Code("C"), 7, null, slip: false).Ok);
        foreach (var guest in new[] { 3, 4, 5, 6 })
        {
            var plate = day.Book.Plate(day.Guest(guest))!;
            Assert.Equal((guest, 5), (plate.Number, plate.Codes.Length));
            Assert.Equal(2, plate.Codes.Count(code => day.Key[code]!.Wheel == day.Wheel("A")));
        }

        Assert.NotEqual(third.Codes, day.Book.Plate(day.Guest(3))!.Codes);
        day.Close().Reveal();
        Assert.Equal(["A"], day.Record().Voters[0].Places.SelectMany(group => group).Select(id => day.Book.Entries.Single(entry => entry.Label == id).Name));
    }

    [Fact]
    public void A_sample_of_the_second_flight_comes_last_is_liked_and_is_not_placed()
    {
        var day = new Day().Wheels(4).Guests(4);
        day.Do<DraftTasting>((draft, at) => draft.ChooseFlight(at, day.Wheel("D"), second: true));
        Assert.Contains("measures nothing", day.Refused<DraftTasting>((draft, at) => draft.ServeTwice(at, day.Wheel("D"))), StringComparison.Ordinal);
        day.Do<DraftTasting>((draft, at) => draft.Seal(at, new Seed(2))).Do<SealedTasting>((step, at) => step.Open(at));
        var last = day.Code("D");
        Assert.All(day.Book.Plates.Values, plate => Assert.Equal(last, plate.Codes[^1]));
        Assert.DoesNotContain(last, day.Book.Placed(day.Guest(1)));
        day.Send(day.Guest(1), day.Say([[day.Code("A")], [day.Code("B")], [day.Code("C")]], (last, new SampleAnswer { Liking = 8 })), BallotStage.Sent);
        day.Close().Reveal();
        var record = day.Record();
        Assert.DoesNotContain(record.Samples, sample => sample.Name == "D");
        Assert.Contains(record.Notes, note => note.Sentence == "D was served in a second flight, after the others, and is not placed among them: 1 said how they liked it, 8.0 of 9 on average.");
        Assert.Equal(VoterMarks.None, record.Voters[0].Marks);
    }

    [Fact]
    public void A_tasting_sealed_before_plates_had_numbers_goes_on_as_it_was()
    {
        var day = Day.Sealed(3, 3);
        var old = day.Log.Select(logged => logged.Event is KeySealed key
            ? key with { Planned = null, Orders = [.. key.Orders.Take(6)], Plates = [.. key.Plates.Select(plate => plate with { Number = null })] }
            : logged.Event).ToImmutableArray();
        var before = new Day();
        before.Append([.. old.Skip(1)]);
        before.Do<SealedTasting>((step, at) => step.AddTaster(at, before.NewTaster(), "New", false, false, 1));
        Assert.Equal(before.Book.Orders[3], before.Book.Plate(before.Guest(4))!.Codes);
        before.Do<SealedTasting>((step, at) => step.LeaveOff(at, before.Guest(1), [before.Wheel("A")], new Seed(1)));
        Assert.Equal(2, before.Book.Plate(before.Guest(1))!.Codes.Length);
        before.Do<SealedTasting>((step, at) => step.Open(at)).Do<OpenTasting>((open, at) => open.WithdrawAndDraw(at, before.Wheel("B"), "Mould", null, new HashSet<TasterId>(), null, new Seed(1)));
        Assert.Single(before.Book.Served(before.Guest(1)));
    }

    [Fact]
    public void What_is_left_off_beforehand_leaves_positions_even_among_all_plates()
    {
        var day = new Day().Wheels(5).Guests(12);
        day.Do<DraftTasting>((draft, at) => draft.LeaveOff(at, day.Guest(4), [day.Wheel("C")])).Do<DraftTasting>((draft, at) => draft.LeaveOff(at, day.Guest(9), [day.Wheel("C")]));
        day.Do<DraftTasting>((draft, at) => draft.Seal(at, new Seed(3)));
        var facts = PlateFacts.Of(day.Book)!;
        Assert.Equal(12, facts.Plates);
        // Ten plates of five stand each sample twice at each position; the two shorter plates add one sample at a position each.
        Assert.InRange(facts.Balance.PositionSpread, 0, 1);
    }

    private static Day Sealed(int wheels, int guests, ServingRules rules, bool repeat = false)
    {
        var day = new Day(Day.AnyPlan with { Serving = rules }).Wheels(wheels).Guests(guests);
        if (repeat) day.Do<DraftTasting>((draft, at) => draft.ServeTwice(at, day.Wheel("A")));
        return day.Do<DraftTasting>((draft, at) => draft.Seal(at, new Seed(4)));
    }

    private static Day Open(int wheels, int guests, ServingRules rules, bool repeat = false) =>
        Sealed(wheels, guests, rules, repeat).Do<SealedTasting>((step, at) => step.Open(at));
}
