using Trier.Trials.Tastings;

namespace Trier.Trials.Tests.Tastings;

public class BallotTests
{
    private static readonly BlindCode[] Plate = [BlindCode.Of(317), BlindCode.Of(582), BlindCode.Of(640), BlindCode.Of(905)];

    [Fact]
    public void A_ballot_keeps_its_order_ties_and_gaps()
    {
        var ballot = Ballot.Of(Plate, [[Plate[2]], [], [Plate[1], Plate[0]]], []).Value;
        Assert.Equal([[Plate[2]], [Plate[0], Plate[1]]], ballot.Places.Select(group => group.ToArray()));
        Assert.Equal(3, ballot.Placed);
    }

    [Fact]
    public void Every_unknown_or_doubled_code_is_told_at_once()
    {
        var strange = BlindCode.Of(471);
        var outcome = Ballot.Of(Plate, [[Plate[0]], [strange], [Plate[0]]], [new(strange, new SampleAnswer { Liking = 3 }), new(Plate[1], new SampleAnswer { Liking = 3 }), new(Plate[1], new SampleAnswer { Liking = 4 })]);
        Assert.Equal(
            ["Sample 471 is not on this plate.", "Sample 317 stands in the places twice: give it one place.", "Sample 471 is not on this plate.", "Sample 582 is answered twice."],
            outcome.Problems.Select(problem => problem.Sentence));
    }

    [Fact]
    public void An_answer_that_says_nothing_is_not_kept() =>
        Assert.Empty(Ballot.Of(Plate, [], [new(Plate[0], SampleAnswer.Nothing), new(Plate[1], new SampleAnswer { Words = [] })]).Value.Answers);

    [Theory]
    [InlineData(0)]
    [InlineData(10)]
    public void Liking_runs_from_one_to_nine(int liking)
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => new SampleAnswer { Liking = liking });
        Assert.Throws<ArgumentOutOfRangeException>(() => new SampleAnswer { FirstLiking = liking });
    }

    [Theory]
    [InlineData(-2)]
    [InlineData(2)]
    public void Salt_runs_from_too_little_to_too_much(int salt) => Assert.Throws<ArgumentOutOfRangeException>(() => new SampleAnswer { Salt = salt });

    [Fact]
    public void A_stored_ballot_cannot_hold_a_code_twice() =>
        Assert.Throws<ArgumentException>(() => Ballot.Stored([[Plate[0]], [Plate[0]]], Ballot.Empty.Answers));

    [Fact]
    public void Two_ballots_that_say_the_same_are_equal()
    {
        var one = Ballot.Of(Plate, [[Plate[1], Plate[0]]], [new(Plate[0], new SampleAnswer { Liking = 5, Words = ["nutty"] })]).Value;
        var same = Ballot.Of(Plate, [[Plate[0], Plate[1]]], [new(Plate[0], new SampleAnswer { Liking = 5, Words = ["nutty"] })]).Value;
        Assert.Equal(one, same);
        Assert.Equal(one.GetHashCode(), same.GetHashCode());
        Assert.NotEqual(one, Ballot.Of(Plate, [[Plate[0]], [Plate[1]]], []).Value);
        Assert.NotEqual(one, Ballot.Of(Plate, [[Plate[0], Plate[1]]], [new(Plate[0], new SampleAnswer { Liking = 5, Words = ["sharp"] })]).Value);
    }
}
