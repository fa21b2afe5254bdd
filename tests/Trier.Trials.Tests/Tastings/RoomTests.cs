using Trier.Trials.Common;
using Trier.Trials.Makes;
using Trier.Trials.Tastings;
using Trier.Trials.Tastings.Events;
using Trier.Trials.Tastings.Steps;

namespace Trier.Trials.Tests.Tastings;

public class RoomTests
{
    [Fact]
    public void A_tasting_walks_through_its_five_steps()
    {
        var day = new Day().Wheels(2).Guests(1);
        Assert.IsType<DraftTasting>(day.Tasting);
        day.Do<DraftTasting>((draft, at) => draft.Seal(at, new(1)));
        Assert.IsType<SealedTasting>(day.Tasting);
        day.Do<SealedTasting>((step, at) => step.Open(at));
        Assert.IsType<OpenTasting>(day.Tasting);
        Assert.Equal(day.Now, day.Book.OpenedAt);
        day.Close();
        Assert.IsType<ClosedTasting>(day.Tasting);
        day.Reveal();
        Assert.IsType<RevealedTasting>(day.Tasting);
    }

    [Fact]
    public void A_late_guest_gets_the_next_free_order_and_keeps_the_mark()
    {
        var day = Day.Open(4, 3);
        day.Do<OpenTasting>((open, at) => open.AddTaster(at, day.NewTaster(), "Late Lou", false, false, 1));
        var plates = day.Book.Present.Select(taster => string.Join(' ', day.Book.Plate(taster.Id)!.Codes));
        Assert.Equal(4, plates.Distinct().Count());
        Assert.Equal(day.Guest(4), Assert.Single(day.Book.Late).Taster);
        Assert.Contains("marked late already", day.Refused<RoomTasting>((room, at) => room.CameLate(at, day.Guest(4))), StringComparison.Ordinal);
        day.Refused<RoomTasting>((room, at) => room.CameLate(at, day.NewTaster()));
        day.Refused<OpenTasting>((open, at) => open.AddTaster(at, day.NewTaster(), "Late Lou", false, false, 1));
    }

    [Fact]
    public void A_wheel_pulled_with_guests_at_the_table_leaves_the_plates_still_to_come()
    {
        var day = Day.Open(4, 3);
        var (gone, dealt) = (day.Code("B"), day.Book.Plate(day.Guest(1))!.Codes);
        day.Do<RoomTasting>((room, at) => room.Withdraw(at, day.Wheel("B"), "Tastes of soap", null))
            .Do<OpenTasting>((open, at) => open.AddTaster(at, day.NewTaster(), "Late Lou", false, false, 1));
        Assert.Equal(dealt, day.Book.Plate(day.Guest(1))!.Codes);
        Assert.Equal(dealt.Remove(gone), day.Book.Served(day.Guest(1)));
        Assert.DoesNotContain(gone, day.Book.Plate(day.Guest(4))!.Codes);
        Assert.Contains(gone, day.Key.Retired);
        Assert.True(Assert.Single(day.Book.Withdrawals).WhileTasting);
        day.Refused<RoomTasting>((room, at) => room.Withdraw(at, day.Wheel("B"), "Again", null));
        day.Refused<RoomTasting>((room, at) => room.Withdraw(at, day.Wheel("C"), "", null));
    }

    [Fact]
    public void A_repeat_pulled_at_the_table_is_no_repeat_any_more()
    {
        var day = Day.Open(4, 3, repeat: true);
        Assert.Equal(day.Wheel("A"), day.Book.Repeat);
        var codes = day.Key.Of(day.Wheel("A")).Select(line => line.Code).ToList();
        day.Do<RoomTasting>((room, at) => room.Withdraw(at, day.Wheel("A"), "Tastes of soap", null));
        Assert.Null(day.Book.Repeat);
        Assert.All(codes, code => Assert.DoesNotContain(code, day.Book.Served(day.Guest(1))));
    }

    [Fact]
    public void A_wheel_can_still_be_pulled_after_the_close()
    {
        var day = Day.Open(3, 1);
        day.Send(day.Guest(1), "B A C");
        day.Close().Do<ClosedTasting>((closed, at) => closed.Withdraw(at, day.Wheel("B"), "A guest felt ill", null)).Reveal();
        Assert.Equal(["W1", "W3"], day.Record().Voters[0].Places.Select(group => group[0]));
    }

    [Fact]
    public void What_happened_in_the_room_is_noted_and_nonsense_is_refused()
    {
        var day = Day.Open(3, 3);
        day.Do<RoomTasting>((room, at) => room.Leave(at, day.Guest(1)));
        Assert.Contains("having left already", day.Refused<RoomTasting>((room, at) => room.Leave(at, day.Guest(1))), StringComparison.Ordinal);
        day.Refused<RoomTasting>((room, at) => room.Leave(at, day.NewTaster()));
        day.Do<RoomTasting>((room, at) => room.CompareNotes(at, [day.Guest(1), day.Guest(2)]));
        Assert.Contains("two or more", day.Refused<RoomTasting>((room, at) => room.CompareNotes(at, [day.Guest(1), day.Guest(1)])), StringComparison.Ordinal);
        day.Refused<RoomTasting>((room, at) => room.CompareNotes(at, [day.Guest(1), day.NewTaster()]));
        day.Do<RoomTasting>((room, at) => room.SpeakAloud(at, day.Code("A"), " that is the old one "));
        Assert.Equal("that is the old one", Assert.Single(day.Book.Spoken).Words);
        var strange = BlindCodes.Draw(1, day.Key.Lines.Select(line => line.Code), day.Key.Lines.Select(line => line.Code), new Statistics.Randomness.Seed(5).Generator()).Value[0];
        Assert.Contains($"No sample {strange}", day.Refused<RoomTasting>((room, at) => room.SpeakAloud(at, strange, null)), StringComparison.Ordinal);
        Assert.Null(day.Do<RoomTasting>((room, at) => room.SpeakAloud(at, day.Code("B"), " ")).Book.Spoken[1].Words);
    }

    [Fact]
    public void Codes_on_one_plate_are_put_right_once_with_reason_and_witness()
    {
        var day = Day.Open(3, 2);
        var (a, b) = (day.Code("A"), day.Code("B"));
        var sentences = day.Refused<RoomTasting>((room, at) => room.SwapCodes(at, day.Guest(1), a, a, "", " "));
        Assert.Contains("two different codes", sentences, StringComparison.Ordinal);
        Assert.Contains("how it was noticed", sentences, StringComparison.Ordinal);
        Assert.Contains("who saw it", sentences, StringComparison.Ordinal);
        Assert.Contains("no plate", day.Refused<RoomTasting>((room, at) => room.SwapCodes(at, day.NewTaster(), a, b, "Seen", "Bo")), StringComparison.Ordinal);
        day.Do<RoomTasting>((room, at) => room.SwapCodes(at, day.Guest(1), a, b, "Seen", "Bo"));
        Assert.Contains("put right already", day.Refused<RoomTasting>((room, at) => room.SwapCodes(at, day.Guest(1), b, a, "Seen", "Bo")), StringComparison.Ordinal);
        Assert.Equal((b, a, day.Code("C")), (day.Book.PutRight(day.Guest(1), a), day.Book.PutRight(day.Guest(1), b), day.Book.PutRight(day.Guest(1), day.Code("C"))));
        Assert.Equal(a, day.Book.PutRight(day.Guest(2), a));
    }

    [Fact]
    public void A_note_of_the_room_can_be_taken_back_and_stays_in_the_row()
    {
        var day = Day.Open(3, 3);
        day.Do<RoomTasting>((room, at) => room.Leave(at, day.Guest(1)));
        var left = day.Log[^1].Sequence;
        day.Do<RoomTasting>((room, at) => room.Undo(at, left));
        Assert.Empty(day.Book.Left);
        Assert.IsType<TasterLeft>(day.Book.Log[left - 1].Event);
        Assert.Contains("cannot be taken back", day.Refused<RoomTasting>((room, at) => room.Undo(at, left)), StringComparison.Ordinal);
        day.Refused<RoomTasting>((room, at) => room.Undo(at, day.Log[^1].Sequence));
        day.Refused<RoomTasting>((room, at) => room.Undo(at, 1));
        day.Refused<RoomTasting>((room, at) => room.Undo(at, 999));
        day.Do<RoomTasting>((room, at) => room.Leave(at, day.Guest(1)));
        Assert.Single(day.Book.Left);
    }

    [Fact]
    public void A_taster_let_go_can_be_called_back_where_they_had_a_plate()
    {
        var day = new Day().Wheels(3).Guests(3);
        day.Do<DraftTasting>((draft, at) => draft.LetGo(at, day.Guest(1)));
        var beforeThePlates = day.Log[^1].Sequence;
        day.Do<DraftTasting>((draft, at) => draft.Seal(at, new(1))).Do<SealedTasting>((step, at) => step.Open(at));
        day.Refused<RoomTasting>((room, at) => room.Undo(at, beforeThePlates));
        day.Do<OpenTasting>((open, at) => open.LetGo(at, day.Guest(2)));
        Assert.Equal(["Guest 3"], day.Book.Present.Select(taster => taster.Name));
        day.Do<RoomTasting>((room, at) => room.Undo(at, day.Log[^1].Sequence));
        Assert.Equal(["Guest 2", "Guest 3"], day.Book.Present.Select(taster => taster.Name));
        day.Refused<OpenTasting>((open, at) => open.LetGo(at, day.Guest(1)));
    }

    [Fact]
    public void A_name_taken_since_keeps_the_old_bearer_from_coming_back()
    {
        var day = Day.Sealed(3, 2);
        day.Do<SealedTasting>((step, at) => step.LetGo(at, day.Guest(1)));
        var gone = day.Log[^1].Sequence;
        day.Do<SealedTasting>((step, at) => step.AddTaster(at, day.NewTaster(), "Guest 1", false, false, 1)).Do<SealedTasting>((step, at) => step.Open(at));
        day.Refused<RoomTasting>((room, at) => room.Undo(at, gone));
    }

    [Fact]
    public void Once_plates_are_out_a_name_stays_taken_because_its_ballot_may_stand()
    {
        var day = Day.Open(3, 2);
        day.Do<OpenTasting>((open, at) => open.LetGo(at, day.Guest(1)));
        day.Refused<OpenTasting>((open, at) => open.AddTaster(at, day.NewTaster(), "Guest 1", false, false, 1));
    }

    [Fact]
    public void A_closed_tasting_opens_again_with_a_reason_and_lets_late_ballots_in()
    {
        var day = Day.Open(3, 2);
        var inTime = day.Send(day.Guest(2), "A B C");
        day.Close();
        var (saved, late) = (day.Send(day.Guest(1), day.Say("A B C"), BallotStage.Tasting), day.Send(day.Guest(1), "C B A"));
        Assert.Null(day.Ballots[day.Guest(1)].Counted);
        Assert.Contains("after the close", day.Refused<ClosedTasting>((closed, at) => closed.Admit(at, inTime)), StringComparison.Ordinal);
        Assert.Contains("never sent", day.Refused<ClosedTasting>((closed, at) => closed.Admit(at, saved)), StringComparison.Ordinal);
        day.Do<ClosedTasting>((closed, at) => closed.Admit(at, late));
        Assert.Equal(late, day.Ballots[day.Guest(1)].Counted);
        Assert.Contains("let in already", day.Refused<ClosedTasting>((closed, at) => closed.Admit(at, late)), StringComparison.Ordinal);
        Assert.Contains("Say why", day.Refused<ClosedTasting>((closed, at) => closed.Reopen(at, " ")), StringComparison.Ordinal);
        day.Do<ClosedTasting>((closed, at) => closed.Reopen(at, "Two guests were still eating"));
        Assert.IsType<OpenTasting>(day.Tasting);
        Assert.Equal("Two guests were still eating", Assert.Single(day.Book.Reopenings).Reason);
        Assert.IsType<ClosedTasting>(day.Close().Tasting);
    }

    [Fact]
    public void Tastes_are_declared_before_the_close_and_never_after()
    {
        var day = Day.Open(3, 1);
        day.Do<OpenTasting>((open, at) => open.DeclareTaste(at, day.Guest(1), DeclaredTaste.Milder));
        Assert.Equal(DeclaredTaste.Milder, day.Book.Tasters[0].Taste);
        day.Refused<OpenTasting>((open, at) => open.DeclareTaste(at, day.NewTaster(), DeclaredTaste.Milder));
        day.Close();
        Assert.Contains("before tasting", day.Refused<ClosedTasting>((closed, at) => closed.DeclareTaste(at, day.Guest(1), DeclaredTaste.Stronger)), StringComparison.Ordinal);
        day.Reveal();
        day.Refused<RevealedTasting>((revealed, at) => revealed.DeclareTaste(at, day.Guest(1), DeclaredTaste.Stronger));
    }

    [Fact]
    public void Names_and_facts_are_corrected_at_every_step_and_the_old_ones_kept()
    {
        var day = new Day().Wheels(2).Guests(2);
        Correct(day, "A1", "Bo");
        day.Do<DraftTasting>((draft, at) => draft.Seal(at, new(1)));
        Assert.Empty(day.Book.Corrections);
        Correct(day, "A2", "Bob");
        day.Do<SealedTasting>((step, at) => step.Open(at));
        Correct(day, "A3", "Bobby");
        day.Close();
        Correct(day, "A4", "Robert");
        day.Reveal();
        Correct(day, "A5", "Roberta");
        Assert.Equal(("A5", "Roberta"), (day.Book.Entries[0].Name, day.Book.Tasters[0].Name));
        Assert.Equal(["A1", "A2", "A3", "A4", "A5"], day.Log.Select(logged => logged.Event).OfType<EntryCorrected>().Select(corrected => corrected.Name));
        Assert.Equal(4, day.Book.Corrections.Length);
        Assert.Equal(4, day.Record().Notes.Length);
        day.Refused<Tasting>((any, at) => any.CorrectEntry(at, day.Book.Entries[0].Wheel, "B", WheelFacts.None));
        day.Refused<Tasting>((any, at) => any.CorrectEntry(at, day.Book.Entries[0].Wheel, "", WheelFacts.None));
        day.Refused<Tasting>((any, at) => any.CorrectEntry(at, day.Book.Entries[0].Wheel, new('x', 31), WheelFacts.None));
        day.Refused<Tasting>((any, at) => any.CorrectEntry(at, new WheelId(Guid.Empty), "C", WheelFacts.None));
        day.Refused<Tasting>((any, at) => any.CorrectTaster(at, day.Guest(1), "guest 2", false));
        day.Refused<Tasting>((any, at) => any.CorrectTaster(at, new TasterId(Guid.Empty), "C", false));
    }

    private static void Correct(Day day, string wheel, string taster) => day
        .Do<Tasting>((any, at) => any.CorrectEntry(at, day.Book.Entries[0].Wheel, $" {wheel} ", WheelFacts.Of([new("milk", "raw")])))
        .Do<Tasting>((any, at) => any.CorrectTaster(at, day.Book.Tasters[0].Id, $" {taster} ", false));
}
