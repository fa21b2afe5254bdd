using Trier.Statistics.Randomness;
using Trier.Trials.Tastings;
using Trier.Trials.Tastings.Steps;

namespace Trier.Trials.Tests.Tastings;

public sealed class WarmingNotesTests
{
    private const string Warmed = "after the wheels had left the cave";

    [Fact]
    public void Samples_that_stood_out_for_unlike_times_are_told_of()
    {
        var day = Out(3);
        day.Wait(29).Send(day.Guest(1), "A B C");
        day.Wait(39).Send(day.Guest(2), "B A C");
        day.Close().Reveal();
        var note = Assert.Single(day.Record().Notes, note => note.Sentence.Contains(Warmed, StringComparison.Ordinal));
        // The plate that opened the tasting took a minute of its own.
        Assert.Equal("What was said came in from 31 to 71 minutes after the wheels had left the cave: what stood longer was warmer, and what that did to the liking cannot be told.", note.Sentence);
        Assert.Equal(note.Sentence, note.Published);
    }

    [Fact]
    public void Nothing_is_told_where_all_tasted_within_minutes_or_only_paper_came_late()
    {
        var day = Out(3);
        day.Wait(29).Send(day.Guest(1), "A B C");
        day.Wait(10).Send(day.Guest(2), "B A C");
        day.Wait(60).Send(day.Guest(3), day.Say("C A B"), BallotStage.Sent, source: BallotSource.Paper);
        day.Close().Reveal();
        Assert.DoesNotContain(day.Record().Notes, note => note.Sentence.Contains(Warmed, StringComparison.Ordinal));
    }

    [Fact]
    public void Nothing_is_told_of_several_sittings_for_the_later_ones_are_cut_from_the_cold()
    {
        var day = new Day().Wheels(3).Guests(1);
        day.Do<DraftTasting>((draft, at) => draft.AddTaster(at, day.NewTaster(), "Guest 2", false, false, 2));
        day.Do<DraftTasting>((draft, at) => draft.Seal(at, new Seed(1))).Do<SealedTasting>((step, at) => step.TakeOut(at)).Do<SealedTasting>((step, at) => step.Open(at));
        day.Send(day.Guest(1), "A B C");
        day.Wait(90).Send(day.Guest(2), "B A C");
        day.Close().Reveal();
        Assert.DoesNotContain(day.Record().Notes, note => note.Sentence.Contains(Warmed, StringComparison.Ordinal));
    }

    private static Day Out(int guests) => Day.Sealed(3, guests).Do<SealedTasting>((step, at) => step.TakeOut(at)).Do<SealedTasting>((step, at) => step.Open(at));
}
