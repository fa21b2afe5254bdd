using System.Collections.Immutable;
using Trier.Storage.Common;
using Trier.Storage.Crasher;
using Trier.Trials.Common;
using Trier.Trials.Tastings;
using Trier.Trials.Tastings.Events;
using Trier.Trials.Tastings.Steps;

namespace Trier.Storage.Tastings;

public sealed class SendTests
{
    [Fact]
    public async Task A_send_is_stored_as_it_was_sent()
    {
        await using var room = await Room.OpenAsync();
        var send = await room.SendOfAsync(room.Tasters[1]);
        var receipt = await room.ReceiveAsync(send);
        Assert.True(receipt is { AlreadyHere: false, MadeCurrent: true });
        var kept = Assert.Single((await room.HistoryAsync(room.Tasters[1])).All);
        Assert.Null(Difference.Between(receipt.Revision, kept));
        Assert.Equal(new BallotRevision(send.Id, send.Taster, null, "phone", BallotSource.Phone, BallotStage.Sent, BallotStanding.InTime, kept.ReceivedAt, send.Content), kept);
        Assert.Equal(TimeSpan.FromHours(2), kept.ReceivedAt.Offset);
        Assert.Empty((await room.HistoryAsync(room.Tasters[0])).All);
    }

    [Fact]
    public async Task The_same_send_twice_is_stored_once_and_acknowledged_twice()
    {
        await using var room = await Room.OpenAsync();
        var send = await room.SendOfAsync(room.Tasters[0]);
        var first = await room.ReceiveAsync(send);
        var again = await room.ReceiveAsync(send);
        Assert.True(again is { AlreadyHere: true, MadeCurrent: true });
        Assert.Null(Difference.Between(first.Revision, again.Revision));
        Assert.Single((await room.HistoryAsync(room.Tasters[0])).All);
    }

    [Fact]
    public async Task The_same_send_after_the_close_keeps_the_standing_it_came_in_with()
    {
        await using var room = await Room.OpenAsync();
        var send = await room.SendOfAsync(room.Tasters[0]);
        await room.ReceiveAsync(send);
        await room.ActAsync<OpenTasting>(tasting => tasting.Close(room.Trials.Now));
        var again = await room.ReceiveAsync(send);
        Assert.True(again.AlreadyHere);
        Assert.Equal(BallotStanding.InTime, again.Revision.Standing);
    }

    [Fact]
    public async Task A_send_under_somebody_elses_id_is_refused_with_a_sentence()
    {
        await using var room = await Room.OpenAsync();
        var send = await room.SendOfAsync(room.Tasters[0]);
        await room.ReceiveAsync(send);
        var other = send with { Taster = room.Tasters[1], Content = Said.On((await room.FoundAsync()).Book.Served(room.Tasters[1]), send.Id) };
        var outcome = await room.Trials.ReceiveAsync(room.Trial, other);
        Assert.Equal("ballot", Assert.Single(outcome.Problems).Field);
        Assert.Empty((await room.HistoryAsync(room.Tasters[1])).All);
    }

    [Fact]
    public async Task A_send_begun_from_an_older_one_is_kept_aside()
    {
        await using var room = await Room.OpenAsync();
        var taster = room.Tasters[0];
        var first = await room.ReceiveAsync(await room.SendOfAsync(taster));
        var second = await room.ReceiveAsync(await room.SendOfAsync(taster, first.Revision.Id));
        var old = await room.ReceiveAsync(await room.SendOfAsync(taster, first.Revision.Id));
        var fresh = await room.ReceiveAsync(await room.SendOfAsync(taster));
        Assert.True(second.MadeCurrent);
        Assert.False(old.MadeCurrent);
        Assert.False(fresh.MadeCurrent);
        var history = await room.HistoryAsync(taster);
        Assert.Equal(4, history.All.Length);
        Assert.Equal(second.Revision.Id, history.Current?.Id);
        Assert.Equal([old.Revision.Id, fresh.Revision.Id], history.Aside.Select(aside => aside.Id));
    }

    [Fact]
    public async Task A_send_stands_by_the_step_it_came_in_at()
    {
        await using var room = await Room.SealedAsync();
        var early = await room.Trials.ReceiveAsync(room.Trial, await room.SendOfAsync(room.Tasters[0]));
        Assert.Equal("trial", Assert.Single(early.Problems).Field);

        await room.ActAsync<SealedTasting>(tasting => tasting.Open(room.Trials.Now));
        var inTime = await room.ReceiveAsync(await room.SendOfAsync(room.Tasters[0]));
        await room.ActAsync<OpenTasting>(tasting => tasting.Close(room.Trials.Now));
        var late = await room.ReceiveAsync(await room.SendOfAsync(room.Tasters[1]));
        await room.ActAsync<ClosedTasting>(tasting => tasting.Admit(room.Trials.Now, late.Revision));
        Assert.Equal(late.Revision.Id, (await room.HistoryAsync(room.Tasters[1])).Current?.Id);
        await room.ActAsync<ClosedTasting>(tasting => tasting.Reopen(room.Trials.Now, "two were still tasting"));
        var again = await room.ReceiveAsync(await room.SendOfAsync(room.Tasters[2]));
        await room.ActAsync<OpenTasting>(tasting => tasting.Close(room.Trials.Now));
        await room.ActAsync<ClosedTasting>(tasting => tasting.Reveal(room.Trials.Now));
        var after = await room.ReceiveAsync(await room.SendOfAsync(room.Tasters[3]));

        Assert.Equal(
            [BallotStanding.InTime, BallotStanding.AfterClose, BallotStanding.InTime, BallotStanding.AfterReveal],
            new[] { inTime, late, again, after }.Select(receipt => receipt.Revision.Standing));
        var ballots = await room.Trials.BallotsAsync(await room.FoundAsync());
        Assert.Equal(4, ballots.Count);
        Assert.Null(ballots[room.Tasters[3]].Counted);
        Assert.Equal(after.Revision.Id, Assert.Single(ballots[room.Tasters[3]].All).Id);
    }

    [Fact]
    public async Task A_send_of_nobody_or_to_nowhere_is_refused_with_a_sentence()
    {
        await using var room = await Room.OpenAsync();
        var send = await room.SendOfAsync(room.Tasters[0]);
        Assert.Equal("taster", Assert.Single((await room.Trials.ReceiveAsync(room.Trial, send with { Taster = new TasterId(Guid.NewGuid()) })).Problems).Field);
        Assert.Equal("trial", Assert.Single((await room.Trials.ReceiveAsync(new TrialId(Guid.NewGuid()), send)).Problems).Field);
        Assert.Empty(await room.Trials.BallotsAsync(await room.FoundAsync()));
    }

    [Fact]
    public async Task An_act_whose_events_cannot_be_read_leaves_the_trial_as_it_was()
    {
        await using var room = await Room.OpenAsync();
        var before = await Room.RowsAsync(room.Database);
        ImmutableArray<DayEvent> broken = [new PlateDealt(room.Trials.Now, new Plate(new TasterId(Guid.NewGuid()), []))];
        await Assert.ThrowsAnyAsync<Exception>(() => room.Trials.ActAsync(room.Trial, _ => Outcome.Of(broken)));
        Assert.IsType<OpenTasting>(await room.FoundAsync());
        Assert.Equal(before, await Room.RowsAsync(room.Database));
    }
}
