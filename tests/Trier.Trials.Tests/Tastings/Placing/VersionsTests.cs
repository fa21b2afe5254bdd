using Trier.Trials.Common;
using Trier.Trials.Tastings;
using Trier.Trials.Tastings.Placing;

namespace Trier.Trials.Tests.Tastings.Placing;

public class VersionsTests
{
    private static readonly BlindCode[] Plate = [BlindCode.Of(417), BlindCode.Of(593)];

    private static readonly DateTimeOffset Noon = new(2026, 5, 2, 12, 0, 0, TimeSpan.Zero);

    [Fact]
    public void A_send_from_an_older_base_waits_for_a_choice_until_a_later_send_settles_it()
    {
        var first = Revision(1, null, 3);
        var second = Revision(2, first, 4);
        var older = Revision(3, first, 5);
        Assert.Same(older, Versions.Unsettled(Of(first, second, older)));
        Assert.Same(second, Versions.Working(Of(first, second, older)));
        Assert.Same(older, Versions.Unsettled(Of(first, second, older, Revision(4, second, 6, BallotStage.Tasting))));
        Assert.Null(Versions.Unsettled(Of(first, second, older, Revision(4, second, 5))));
    }

    [Fact]
    public void Saves_on_the_way_and_equal_ballots_need_no_choice()
    {
        var first = Revision(1, null, 3);
        var second = Revision(2, first, 4);
        Assert.Null(Versions.Unsettled(Of(first, second, Revision(3, first, 5, BallotStage.Tasting))));
        Assert.Null(Versions.Unsettled(Of(first, second, Revision(3, first, 4))));
    }

    [Fact]
    public void A_change_after_sending_is_seen_until_it_is_sent()
    {
        var sent = Revision(1, null, 3);
        var changed = Revision(2, sent, 4, BallotStage.Tasting);
        Assert.False(Versions.ChangedSinceSent(Of(sent)));
        Assert.True(Versions.ChangedSinceSent(Of(sent, changed)));
        Assert.False(Versions.ChangedSinceSent(Of(sent, changed, Revision(3, changed, 4))));
        Assert.False(Versions.ChangedSinceSent(Of(Revision(1, null, 3, BallotStage.Tasting))));
    }

    [Fact]
    public void The_page_goes_on_from_what_came_late_without_making_it_count()
    {
        var sent = Revision(1, null, 3);
        var late = Revision(2, sent, 4) with { Standing = BallotStanding.AfterClose };
        var history = Of(sent, late);
        Assert.Same(late, Versions.Working(history));
        Assert.Same(sent, history.Counted);
    }

    private static BallotHistory Of(params BallotRevision[] arrived) => BallotHistory.Of(arrived, new HashSet<RevisionId>());

    private static BallotRevision Revision(byte number, BallotRevision? from, int liking, BallotStage stage = BallotStage.Sent) => new(
        new RevisionId(new Guid(number, 0, 0, [0, 0, 0, 0, 0, 0, 0, 0])),
        new TasterId(Guid.Empty),
        from?.Id,
        "phone",
        BallotSource.Phone,
        stage,
        BallotStanding.InTime,
        Noon.AddMinutes(number),
        BallotEditing.Answer(Ballot.Empty, Plate, Plate[0], liking, null, slip: false).Value);
}
