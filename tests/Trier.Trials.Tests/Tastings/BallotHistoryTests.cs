using Trier.Trials.Common;
using Trier.Trials.Tastings;

namespace Trier.Trials.Tests.Tastings;

public class BallotHistoryTests
{
    private static readonly IReadOnlySet<RevisionId> Nobody = new HashSet<RevisionId>();

    [Fact]
    public void Nothing_sent_is_nothing_counted()
    {
        Assert.Null(BallotHistory.None.Counted);
        Assert.Null(BallotHistory.Of([], Nobody).Current);
    }

    [Fact]
    public void Each_send_that_goes_on_from_the_current_one_becomes_current()
    {
        var history = BallotHistory.Of([Sent(1, null), Sent(2, 1), Sent(3, 2)], Nobody);
        Assert.Equal((3, 3), (Id(history.Current), Id(history.Counted)));
        Assert.Empty(history.Aside);
    }

    [Fact]
    public void A_send_from_an_older_page_is_kept_aside_and_can_be_taken_up_later()
    {
        var history = BallotHistory.Of([Sent(1, null), Sent(2, 1), Sent(3, 1), Sent(4, null)], Nobody);
        Assert.Equal(2, Id(history.Current));
        Assert.Equal([3, 4], history.Aside.Select(Id));
        Assert.Equal(4, history.All.Length);
        var chosen = BallotHistory.Of([Sent(1, null), Sent(2, 1), Sent(3, 1), Sent(4, 2)], Nobody);
        Assert.Equal(4, Id(chosen.Counted));
    }

    [Fact]
    public void A_later_draft_never_unseats_a_sent_ballot()
    {
        var history = BallotHistory.Of([Sent(1, null), Saved(2, 1), Saved(3, 2)], Nobody);
        Assert.Equal((3, 1), (Id(history.Current), Id(history.Counted)));
    }

    [Fact]
    public void Where_nothing_was_sent_the_last_draft_is_looked_at()
    {
        var history = BallotHistory.Of([Saved(1, null), Saved(2, 1)], Nobody);
        Assert.Equal(2, Id(history.Counted));
    }

    [Fact]
    public void A_send_after_the_close_counts_only_once_it_is_let_in()
    {
        BallotRevision[] arrived = [Sent(1, null), Sent(2, 1, BallotStanding.AfterClose)];
        Assert.Equal(1, Id(BallotHistory.Of(arrived, Nobody).Counted));
        Assert.Equal(2, Id(BallotHistory.Of(arrived, Admit(2)).Counted));
    }

    [Fact]
    public void A_late_ballot_that_is_let_in_counts_whatever_it_began_from() =>
        Assert.Equal(3, Id(BallotHistory.Of([Sent(1, null), Sent(2, 1), Sent(3, null, BallotStanding.AfterClose)], Admit(3)).Counted));

    [Fact]
    public void Nothing_after_the_reveal_ever_counts()
    {
        var history = BallotHistory.Of([Sent(1, null), Sent(2, 1, BallotStanding.AfterReveal)], Admit(2));
        Assert.Equal(1, Id(history.Counted));
        Assert.Equal(2, history.All.Length);
        Assert.Empty(history.Aside);
    }

    [Fact]
    public void A_ballot_sent_after_a_reopening_stands_though_an_earlier_late_one_is_let_in_afterwards()
    {
        BallotRevision[] arrived = [Sent(1, null), Sent(2, 1, BallotStanding.AfterClose), Sent(3, 1)];
        Assert.Equal(3, Id(BallotHistory.Of(arrived, Nobody).Counted));
        Assert.Equal(3, Id(BallotHistory.Of(arrived, Admit(2)).Counted));
        Assert.Empty(BallotHistory.Of(arrived, Admit(2)).Aside);
    }

    [Fact]
    public void Whoever_goes_on_from_their_own_late_send_after_a_reopening_has_missed_nothing()
    {
        BallotRevision[] arrived = [Sent(1, null), Sent(2, 1, BallotStanding.AfterClose), Sent(3, 2)];
        Assert.Equal(3, Id(BallotHistory.Of(arrived, Nobody).Counted));
        Assert.Equal(3, Id(BallotHistory.Of(arrived, Admit(2)).Counted));
    }

    private static BallotRevision Sent(int id, int? begunFrom, BallotStanding standing = BallotStanding.InTime) => Revision(id, begunFrom, BallotStage.Sent, standing);

    private static BallotRevision Saved(int id, int? begunFrom) => Revision(id, begunFrom, BallotStage.Tasting, BallotStanding.InTime);

    private static BallotRevision Revision(int id, int? begunFrom, BallotStage stage, BallotStanding standing) => new(
        Named(id),
        new TasterId(Day.Number(0xCC, 1)),
        begunFrom is { } from ? Named(from) : null,
        "a phone",
        BallotSource.Phone,
        stage,
        standing,
        DateTimeOffset.UnixEpoch.AddMinutes(id),
        Ballot.Empty);

    private static HashSet<RevisionId> Admit(params int[] ids) => [.. ids.Select(Named)];

    private static RevisionId Named(int id) => new(Day.Number(0xDD, id));

    private static int? Id(BallotRevision? revision) => revision is null ? null : BitConverter.ToInt32(revision.Id.Value.ToByteArray());
}
