using Trier.Trials.Tastings;
using Trier.Trials.Tastings.Steps;
using Trier.Trials.Verdicts;

namespace Trier.Trials.Tests.Tastings;

/// <summary>What the day book and the ballots become once the key is applied.</summary>
public class RecordTests
{
    [Fact]
    public void Codes_become_wheels_and_a_second_serving_a_check()
    {
        var day = Day.Open(3, 1, repeat: true);
        day.Send(day.Guest(1), day.Say([[day.CheckCode("A")], [day.Code("C")], [day.Code("A"), day.Code("B")]]), BallotStage.Sent);
        var record = day.Close().Reveal().Record();
        Assert.Equal(["W1", "W1 again", "W2", "W3"], record.Samples.Select(sample => sample.Id));
        Assert.Equal("W1", record.Samples[1].RepeatOf);
        Assert.Equal(day.CheckCode("A").ToString(), record.Samples[1].Code);
        Assert.Equal(["W1 again", "W3", "W1+W2"], record.Voters[0].Places.Select(group => string.Join('+', group)));
        Assert.Equal(4, record.Voters[0].ServingOrder.Length);
        Assert.Equal(VoterMarks.None, record.Voters[0].Marks);
    }

    [Fact]
    public void Two_codes_that_stood_wrong_on_a_plate_are_read_the_right_way_on_that_plate_alone()
    {
        var day = Day.Open(3, 2);
        day.Send(day.Guest(1), "A B C");
        day.Send(day.Guest(2), "A B C");
        day.Do<RoomTasting>((room, at) => room.SwapCodes(at, day.Guest(1), day.Code("A"), day.Code("B"), "the labels were peeled", "Bo"));
        var record = day.Close().Reveal().Record();
        Assert.Equal(["W2", "W1", "W3"], record.Voters[0].Places.Select(group => group[0]));
        Assert.Equal(["W1", "W2", "W3"], record.Voters[1].Places.Select(group => group[0]));
        Assert.True(record.Voters[0].Marks.HasFlag(VoterMarks.Corrected));
        Assert.False(record.Voters[1].Marks.HasFlag(VoterMarks.Corrected));
        Assert.Contains("codes put right", record.Voters[0].Remarks);
        Assert.Contains("the labels were peeled; seen by Bo", Assert.Single(record.Notes).Sentence, StringComparison.Ordinal);
    }

    [Fact]
    public void A_wheel_withdrawn_at_the_table_leaves_the_places_and_names_who_had_it()
    {
        var day = Day.Open(3, 2);
        day.Send(day.Guest(1), "B A C");
        day.Do<RoomTasting>((room, at) => room.Withdraw(at, day.Wheel("B"), "Tastes of soap", "Bo"));
        day.Send(day.Guest(2), "C A");
        var record = day.Close().Reveal().Record();
        Assert.Equal(["W1", "W3"], record.Samples.Select(sample => sample.Id));
        Assert.Equal(["W1", "W3"], record.Voters[0].Places.Select(group => group[0]));
        Assert.Equal(["W3", "W1"], record.Voters[1].Places.Select(group => group[0]));
        var gone = Assert.Single(record.Withdrawals);
        Assert.Equal(("W2", "Tastes of soap", true), (gone.Id, gone.Reason, gone.WhileTasting));
        Assert.Equal(["Guest 1"], gone.HadIt);
        Assert.DoesNotContain(VoterMarks.FewerSamples, record.Voters.Select(voter => voter.Marks));
    }

    [Fact]
    public void Marks_of_the_day_stand_on_the_ballots_they_belong_to()
    {
        var day = Day.Open(3, 5);
        day.Do<RoomTasting>((room, at) => room.CameLate(at, day.Guest(1)))
            .Do<RoomTasting>((room, at) => room.Leave(at, day.Guest(2)))
            .Do<RoomTasting>((room, at) => room.CompareNotes(at, [day.Guest(3), day.Guest(4)]));
        foreach (var number in new[] { 1, 3, 4, 5 }) day.Send(day.Guest(number), "A B C");
        day.Send(day.Guest(2), "A B");
        var voters = day.Close().Reveal().Record().Voters;
        Assert.Equal(
            [VoterMarks.Late, VoterMarks.LeftEarly | VoterMarks.FewerSamples, VoterMarks.ComparedNotes, VoterMarks.ComparedNotes, VoterMarks.None],
            voters.Select(voter => voter.Marks));
        Assert.Equal([null, null, 1, 1, null], voters.Select(voter => voter.Voice));
        Assert.StartsWith("came 15:", Assert.Single(voters[0].Remarks), StringComparison.Ordinal);
    }

    [Fact]
    public void Notes_compared_in_a_chain_make_one_voice()
    {
        var day = Day.Open(2, 5);
        foreach (var (one, other) in new[] { (1, 2), (4, 5), (2, 4) }) day.Do<RoomTasting>((room, at) => room.CompareNotes(at, [day.Guest(one), day.Guest(other)]));
        Assert.Equal([1, 1, null, 1, 1], day.Close().Reveal().Record().Voters.Select(voter => voter.Voice));
    }

    [Fact]
    public void A_ballot_after_the_close_counts_only_when_let_in_and_the_record_tells_either()
    {
        var day = Day.Open(2, 2).Close();
        var admitted = day.Send(day.Guest(1), "A B");
        day.Send(day.Guest(2), "B A");
        day.Do<ClosedTasting>((closed, at) => closed.Admit(at, admitted));
        var record = day.Reveal().Record();
        Assert.Equal([2, 0], record.Voters.Select(voter => voter.Places.Length));
        Assert.True(record.Voters[0].Marks.HasFlag(VoterMarks.AdmittedAfterClose));
        Assert.Contains(record.Notes, note => note.Sentence.Contains("Guest 1", StringComparison.Ordinal) && note.Sentence.EndsWith("let in before the reveal.", StringComparison.Ordinal));
        Assert.Contains(record.Notes, note => note.Sentence.Contains("Guest 2", StringComparison.Ordinal) && note.Sentence.EndsWith("kept and does not count.", StringComparison.Ordinal));
        day.Send(day.Guest(2), "B A");
        Assert.Equal([2, 0], day.Record().Voters.Select(voter => voter.Places.Length));
    }

    [Fact]
    public void What_comes_in_from_somebody_let_go_counts_nowhere_and_what_came_before_stays()
    {
        var day = Day.Open(2, 3);
        day.Send(day.Guest(1), "A B");
        day.Do<OpenTasting>((open, at) => open.LetGo(at, day.Guest(1)))
            .Do<OpenTasting>((open, at) => open.LetGo(at, day.Guest(2)));
        day.Send(day.Guest(1), "B A");
        day.Send(day.Guest(2), "B A");
        var voters = day.Close().Reveal().Record().Voters;
        Assert.Equal(["Guest 1", "Guest 3"], voters.Select(voter => voter.Name));
        Assert.Equal("W1", voters[0].Places[0][0]);
    }

    [Fact]
    public void Whoever_gets_to_know_the_key_is_apart_from_the_next_send_on()
    {
        var day = Day.Open(2, 3);
        day.Send(day.Guest(1), "A B");
        day.Do<RoomTasting>((room, at) => room.LearnKey(at, day.Guest(1)))
            .Do<RoomTasting>((room, at) => room.OpenKey(at, "Bo", early: false, day.Guest(2)));
        Assert.Contains("knowing the key already", day.Refused<RoomTasting>((room, at) => room.LearnKey(at, day.Guest(2))), StringComparison.Ordinal);
        day.Refused<RoomTasting>((room, at) => room.OpenKey(at, "Bo", early: false, day.NewTaster()));
        day.Send(day.Guest(2), "A B");
        day.Send(day.Guest(3), "A B");
        var record = day.Close().Reveal().Record();
        Assert.Equal([VoterRole.Guest, VoterRole.KnewTheKey, VoterRole.Guest], record.Voters.Select(voter => voter.Role));
        Assert.Equal(2, record.Notes.Count(note => note.Kind == DayNoteKind.KeyLearned));
        Assert.DoesNotContain(VoterMarks.AfterKeyOpened, record.Voters.Select(voter => voter.Marks));
    }

    [Fact]
    public void A_key_seen_early_marks_every_ballot_that_comes_in_after_it()
    {
        var day = Day.Open(2, 2);
        day.Send(day.Guest(1), "A B");
        day.Do<RoomTasting>((room, at) => room.OpenKey(at, "The maker", early: true, taster: null));
        day.Send(day.Guest(2), "A B");
        var record = day.Close().Reveal().Record();
        Assert.Equal([VoterMarks.None, VoterMarks.AfterKeyOpened], record.Voters.Select(voter => voter.Marks));
        Assert.Equal(DayNoteKind.KeyOpenedEarly, Assert.Single(record.Notes).Kind);
    }

    [Fact]
    public void A_name_said_aloud_stays_on_the_ballots_that_come_in_after_it()
    {
        var day = Day.Open(3, 2);
        day.Send(day.Guest(1), "A B C");
        day.Do<RoomTasting>((room, at) => room.SpeakAloud(at, day.Code("B"), null));
        day.Send(day.Guest(2), "A B C");
        var voters = day.Close().Reveal().Record().Voters;
        Assert.Empty(voters[0].Named);
        Assert.Equal(["W2"], voters[1].Named);
        Assert.Contains("after B was named aloud", voters[1].Remarks);
    }

    [Fact]
    public void Places_that_were_saved_and_never_sent_count_for_nothing_and_likings_do()
    {
        var day = Day.Open(2, 1);
        day.Send(day.Guest(1), day.Say([[day.Code("A")], [day.Code("B")]], (day.Code("A"), new SampleAnswer { Liking = 7 })), BallotStage.Tasting);
        var voter = Assert.Single(day.Close().Reveal().Record().Voters);
        Assert.Empty(voter.Places);
        Assert.Equal(7, voter.Answers["W1"].Liking);
        Assert.Contains("not sent: likings kept, no places", voter.Remarks);
    }
}
