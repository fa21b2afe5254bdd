using Trier.Statistics.Randomness;
using Trier.Trials.Tastings;
using Trier.Trials.Tastings.Steps;
using Trier.Trials.Verdicts;
using Trier.Trials.Verdicts.Publishing;

namespace Trier.Trials.Tests.Tastings;

/// <summary>Versions of a published verdict: a slip makes a new one, the old one stays, the note says what changed and whether the leader did.</summary>
public class PublishingTests
{
    [Fact]
    public void A_slip_put_right_makes_a_new_version_and_the_old_one_stays_as_it_was()
    {
        var day = Published();
        Assert.Equal("Nothing has changed since version 1: it stands.", day.Refused<RevealedTasting>((revealed, at) => revealed.Publish(at)));
        Mend(day, "C B A").Do<RevealedTasting>((revealed, at) => revealed.Publish(at));
        var (first, second) = (Record(day, 0), Record(day, 1));
        Assert.Equal("W1 W2 W3", Order(first));
        Assert.Equal("W3 W2 W1", Order(second));
        Assert.False(first.Voters[0].Marks.HasFlag(VoterMarks.Corrected));
        Assert.True(second.Voters[0].Marks.HasFlag(VoterMarks.Corrected));
        Assert.Equal("Corrected on 30/08/2025: 1 ballot was put right. The leader is the same.", Note(day));
        var told = Assert.Single(second.Notes);
        Assert.Contains("the paper says C first; seen by Bo", told.Sentence, StringComparison.Ordinal);
        Assert.DoesNotContain("Bo", told.Published, StringComparison.Ordinal);
        Assert.Equal(["A ballot that had been taken in wrongly was put right after the reveal; the old record is kept."], PublishedRecord.Of(second).Notes.Select(note => note.Sentence));
    }

    [Fact]
    public void A_changed_leader_is_said()
    {
        var day = Day.Open(3, 2);
        day.Send(day.Guest(1), "A B C");
        day.Send(day.Guest(2), "B A C");
        day.Close().Reveal();
        day.Do<RevealedTasting>((revealed, at) => revealed.Publish(at));
        Mend(day, "C B A").Do<RevealedTasting>((revealed, at) => revealed.Publish(at));
        Assert.Equal("Corrected on 30/08/2025: 1 ballot was put right. The leader changes: before, A and B share the lead; now B leads.", Note(day));
    }

    [Fact]
    public void A_corrected_wheel_is_told_by_name_and_nothing_else_is()
    {
        var day = Published();
        day.Do<RevealedTasting>((revealed, at) => revealed.CorrectEntry(at, day.Wheel("B"), "Beech", day.Book.Entries[1].Facts));
        day.Do<RevealedTasting>((revealed, at) => revealed.Publish(at));
        Assert.Equal("Corrected on 30/08/2025: what is known of Beech was put right. The leader is the same.", Note(day));
        Assert.Equal(["B", "Beech"], [Record(day, 0).Samples[1].Name, Record(day, 1).Samples[1].Name]);
    }

    [Fact]
    public void A_mended_ballot_needs_a_reason_a_witness_and_codes_of_the_plate()
    {
        var day = Published();
        var wrong = Ballot.Stored([[BlindCode.Of(day.Book.Key!.Lines.Select(line => line.Code.ToString()).Contains("999") ? 998 : 997)]], Ballot.Empty.Answers);
        var refused = day.Refused<RevealedTasting>((revealed, at) => revealed.Mend(at, day.Guest(1), wrong, " ", ""));
        Assert.Contains("not on the plate of Guest 1", refused, StringComparison.Ordinal);
    }

    [Fact]
    public void What_has_not_changed_is_said_to_be_the_same()
    {
        var day = Published();
        Mend(day, "A B C").Do<RevealedTasting>((revealed, at) => revealed.Publish(at));
        Assert.Equal("Corrected on 30/08/2025: what strangers may read is the same. The leader is the same.", Note(day));
    }

    [Fact]
    public void What_is_taken_out_is_dated_by_the_day_it_was_and_what_is_given_again_stands()
    {
        var day = Published();
        day.Do<RevealedTasting>((revealed, at) => revealed.Agree(at, day.Guest(1), new(Named: true, Quoted: true)));
        day.Do<RevealedTasting>((revealed, at) => revealed.Publish(at));
        day.Do<RevealedTasting>((revealed, at) => revealed.TakeBack(at.AddDays(1), day.Guest(1), name: true, words: false));
        day.Do<RevealedTasting>((revealed, at) => revealed.TakeBack(at.AddDays(3), day.Guest(1), name: false, words: true));
        Assert.Empty(TakenOut(day, 0));
        // Guest 1 wrote nothing, so no words could be taken out.
        Assert.Equal(["Taken out on 31/08/2025: 1 name. No place and no test changes."], TakenOut(day, 1));
        day.Do<RevealedTasting>((revealed, at) => revealed.Agree(at, day.Guest(1), new(Named: true, Quoted: false)));
        Assert.Empty(TakenOut(day, 1));
    }

    private static System.Collections.Immutable.ImmutableArray<string> TakenOut(Day day, int version)
    {
        var revealed = (RevealedTasting)day.Tasting;
        var published = revealed.Book.Published[version];
        return TakenOutNote.Of(revealed.Book, published, PublishedRecord.Of(revealed.AsOf(published, agreedThen: true).Record(day.Ballots)), PublishedRecord.Of(Record(day, version)));
    }

    private static Day Published()
    {
        var day = Day.Open(3, 3);
        day.Send(day.Guest(1), "A B C");
        day.Send(day.Guest(2), "A C B");
        day.Send(day.Guest(3), "A B C");
        day.Close().Reveal();
        return day.Do<RevealedTasting>((revealed, at) => revealed.Publish(at));
    }

    private static Day Mend(Day day, string order) =>
        day.Do<RevealedTasting>((revealed, at) => revealed.Mend(at, day.Guest(1), Ballot.Stored([.. order.Split(' ').Select(name => (System.Collections.Immutable.ImmutableArray<BlindCode>)[day.Code(name)])], Ballot.Empty.Answers), "the paper says C first", "Bo"));

    private static TastingRecord Record(Day day, int version)
    {
        var revealed = (RevealedTasting)day.Tasting;
        return revealed.AsOf(revealed.Book.Published[version]).Record(day.Ballots);
    }

    private static string Note(Day day) => VersionNote.Of(new DateOnly(2025, 8, 30), Judge.Headline(PublishedRecord.Of(Record(day, 0)), new Seed(1)), Judge.Headline(PublishedRecord.Of(Record(day, 1)), new Seed(1)));

    private static string Order(TastingRecord record) => string.Join(' ', record.Voters[0].Places.SelectMany(group => group));
}
