using System.Collections.Immutable;
using System.Globalization;
using Microsoft.EntityFrameworkCore;
using Trier.Statistics.Randomness;
using Trier.Storage.Common;
using Trier.Trials.Common;
using Trier.Trials.Tastings;
using Trier.Trials.Tastings.Commitments;
using Trier.Trials.Tastings.Events;
using Trier.Trials.Tastings.Steps;

namespace Trier.Storage.Tastings;

/// <summary>What waits while the writer is busy is one batch: these tests keep the writer busy until all have lined up.</summary>
public sealed class BatchTests
{
    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(30);

    [Fact]
    public async Task Sends_that_wait_together_are_committed_together_and_nobody_is_answered_before()
    {
        await using var room = await Room.OpenAsync(12);
        var before = room.Commits();
        var sends = new List<Task<BallotReceipt>>();
        using (await room.Writer.EnterAsync(CancellationToken.None))
        {
            foreach (var taster in room.Tasters) sends.Add(room.ReceiveAsync(await room.SendOfAsync(taster)));
            Assert.DoesNotContain(sends, send => send.IsCompleted);
        }

        Assert.All(await Task.WhenAll(sends), receipt => Assert.True(receipt is { AlreadyHere: false, MadeCurrent: true }));
        Assert.Equal(before + 1, room.Commits());
        room.LetGoOfFile();
        var ballots = await room.Trials.BallotsAsync(await room.FoundAsync());
        Assert.All(sends, send => Assert.Null(Difference.Between(send.Result.Revision, ballots[send.Result.Revision.Taster].Current)));
    }

    [Fact]
    public async Task Sends_of_one_taster_in_one_batch_follow_one_another()
    {
        await using var room = await Room.OpenAsync();
        var taster = room.Tasters[0];
        var first = await room.SendOfAsync(taster);
        var second = await room.SendOfAsync(taster, first.Id);
        var old = await room.SendOfAsync(taster, first.Id);
        var receipts = await TogetherAsync(room, () => room.ReceiveAsync(first), () => room.ReceiveAsync(second), () => room.ReceiveAsync(first), () => room.ReceiveAsync(old));
        Assert.Equal([(false, true), (false, true), (true, false), (false, false)], receipts.Select(receipt => (receipt.AlreadyHere, receipt.MadeCurrent)));
        room.LetGoOfFile();
        var history = await room.HistoryAsync(taster);
        Assert.Equal([first.Id, second.Id, old.Id], history.All.Select(revision => revision.Id));
        Assert.Equal(second.Id, history.Current?.Id);
        Assert.Equal([old.Id], history.Aside.Select(aside => aside.Id));
    }

    [Fact]
    public async Task A_send_after_the_close_in_the_same_batch_is_late()
    {
        await using var room = await Room.OpenAsync();
        await room.ReceiveAsync(await room.SendOfAsync(room.Tasters[0]));
        var late = await room.SendOfAsync(room.Tasters[1]);
        var standings = await TogetherAsync<BallotStanding?>(
            room,
            async () =>
            {
                await room.ActAsync<OpenTasting>(tasting => tasting.Close(room.Trials.Now));
                return null;
            },
            async () => (await room.ReceiveAsync(late)).Revision.Standing);
        Assert.Equal([null, BallotStanding.AfterClose], standings);
        room.LetGoOfFile();
        Assert.IsType<ClosedTasting>(await room.FoundAsync());
        Assert.Equal(BallotStanding.AfterClose, Assert.Single((await room.HistoryAsync(room.Tasters[1])).All).Standing);
    }

    [Fact]
    public async Task A_ballot_is_seen_by_nobody_before_it_is_committed()
    {
        await using var room = await Room.OpenAsync();
        var send = await room.SendOfAsync(room.Tasters[0]);
        var seen = await TogetherAsync(
            room,
            async () => (await room.ReceiveAsync(send)).MadeCurrent ? 1 : 0,
            async () =>
            {
                Task<BallotHistory>? look = null;
                await room.Trials.ActAsync(room.Trial, tasting =>
                {
                    look = room.Trials.BallotAsync(tasting, send.Taster);
                    return Outcome.Of(ImmutableArray<DayEvent>.Empty);
                });
                return (await look!).All.Length;
            });
        Assert.Equal([1, 0], seen);
        Assert.Single((await room.HistoryAsync(send.Taster)).All);
    }

    [Fact]
    public async Task One_that_cannot_be_written_takes_nobody_along()
    {
        await using var room = await Room.OpenAsync();
        await Room.AskAsync(room.Database, "CREATE TRIGGER spoilt BEFORE INSERT ON ballot_revisions WHEN NEW.Device = 'spoilt' BEGIN SELECT RAISE(ABORT, 'spoilt'); END");
        var sends = new List<BallotSend>();
        foreach (var taster in room.Tasters.Take(3)) sends.Add(await room.SendOfAsync(taster));
        sends[1] = sends[1] with { Device = "spoilt" };
        var stored = await TogetherAsync(room, [.. sends.Select(send => (Func<Task<bool>>)(() => StoredAsync(send)))]);
        Assert.Equal([true, false, true], stored);
        Assert.True(await StoredAsync(sends[1] with { Device = "phone" }));
        room.LetGoOfFile();
        Assert.Equal(3, (await room.Trials.BallotsAsync(await room.FoundAsync())).Values.Sum(history => history.All.Length));

        async Task<bool> StoredAsync(BallotSend send)
        {
            try
            {
                return (await room.ReceiveAsync(send)).MadeCurrent;
            }
            catch (DbUpdateException)
            {
                return false;
            }
        }
    }

    [Fact]
    public async Task An_act_that_breaks_takes_nobody_along()
    {
        await using var room = await Room.OpenAsync();
        var send = await room.SendOfAsync(room.Tasters[0]);
        var stored = await TogetherAsync(
            room,
            async () =>
            {
                await Assert.ThrowsAsync<InvalidOperationException>(() => room.Trials.ActAsync(room.Trial, _ => throw new InvalidOperationException("broken")));
                return false;
            },
            async () => (await room.ReceiveAsync(send)).MadeCurrent);
        Assert.Equal([false, true], stored);
    }

    [Fact]
    public async Task What_another_program_appended_meanwhile_is_found_when_a_row_is_to_be_written()
    {
        await using var room = await Room.OpenAsync();
        var taster = room.Tasters[0];
        using var writer = new WriterGate();
        var other = new TrialStore(room.Databases, writer, room.Clock);
        var (mine, first) = (await room.SendOfAsync(taster), await room.SendOfAsync(taster));
        Assert.Empty((await room.HistoryAsync(taster)).All);
        await other.ReceiveAsync(room.Trial, first);
        await other.ActAsync(room.Trial, tasting => ((OpenTasting)tasting).Close(room.Trials.Now));
        var receipt = await room.ReceiveAsync(mine);
        Assert.True(receipt is { AlreadyHere: false, MadeCurrent: false, Revision.Standing: BallotStanding.AfterClose });
        Assert.Equal([first.Id, mine.Id], (await room.HistoryAsync(taster)).All.Select(revision => revision.Id));
    }

    [Fact]
    public async Task Each_act_of_a_batch_is_decided_in_the_language_of_whoever_asked_for_it()
    {
        await using var room = await Room.OpenAsync();
        var before = CultureInfo.CurrentUICulture;
        await TogetherAsync(room, [.. new[] { "fr", "it", "de" }.Select((language, at) => (Func<Task<bool>>)(async () =>
        {
            CultureInfo.CurrentUICulture = CultureInfo.GetCultureInfo(language);
            await room.ActAsync<OpenTasting>(tasting => tasting.ChooseLanguage(room.Trials.Now, room.Tasters[at], CultureInfo.CurrentUICulture.Name));
            return true;
        }))]);
        CultureInfo.CurrentUICulture = before;
        Assert.Equal(["fr", "it", "de", null], (await room.FoundAsync()).Book.Tasters.Select(taster => taster.Language));
    }

    [Fact]
    public async Task Who_gives_up_before_their_turn_has_written_nothing()
    {
        await using var room = await Room.OpenAsync();
        using var impatient = new CancellationTokenSource();
        var (given, kept) = (await room.SendOfAsync(room.Tasters[0]), await room.SendOfAsync(room.Tasters[1]));
        Task<Outcome<BallotReceipt>> givenUp;
        Task<BallotReceipt> stays;
        using (await room.Writer.EnterAsync(CancellationToken.None))
        {
            (givenUp, stays) = (room.Trials.ReceiveAsync(room.Trial, given, impatient.Token), room.ReceiveAsync(kept));
            await impatient.CancelAsync();
        }

        await Assert.ThrowsAnyAsync<OperationCanceledException>(() => givenUp);
        Assert.True((await stays).MadeCurrent);
        room.LetGoOfFile();
        Assert.Equal([kept.Taster], (await room.Trials.BallotsAsync(await room.FoundAsync())).Keys);
    }

    private static async Task<T[]> TogetherAsync<T>(Room room, params Func<Task<T>>[] works)
    {
        // Whatever is read first is read before, so that each is in the queue when its call returns.
        await room.HistoryAsync(room.Tasters[0]);
        List<Task<T>> waiting;
        using (await room.Writer.EnterAsync(CancellationToken.None)) waiting = [.. works.Select(work => work())];
        return await Task.WhenAll(waiting);
    }

    [Fact]
    public async Task A_ballot_is_acknowledged_while_something_that_takes_long_is_decided_and_the_decision_knows_of_it()
    {
        await using var room = await Room.OpenAsync();
        await room.ReceiveAsync(await room.SendOfAsync(room.Tasters[0]));
        var (begun, goOn) = (new TaskCompletionSource(), new TaskCompletionSource());
        var known = new List<int>();
        var deciding = Task.Run(() => room.Trials.ActBesideAsync(room.Trial, (tasting, said) =>
        {
            known.Add(said.Count);
            begun.TrySetResult();
            goOn.Task.Wait();
            return ((OpenTasting)tasting).CompareNotes(room.Trials.Now, [room.Tasters[0], room.Tasters[1]]);
        }));
        await begun.Task;
        // Were the decision made in the queue, neither would ever be answered.
        await room.ReceiveAsync(await room.SendOfAsync(room.Tasters[0])).WaitAsync(Patience);
        await room.ReceiveAsync(await room.SendOfAsync(room.Tasters[1])).WaitAsync(Patience);
        Assert.False(deciding.IsCompleted);
        goOn.SetResult();
        Assert.True((await deciding).Ok);
        // The first ballot of somebody may change what is decided; a further one of the same taster may not.
        Assert.Equal([1, 2], known);
        room.LetGoOfFile();
        Assert.Equal(2, (await room.HistoryAsync(room.Tasters[0])).All.Length);
        Assert.Single((await room.FoundAsync()).Book.Log, logged => logged.Event is NotesCompared);
    }

    [Fact]
    public async Task Commitments_that_cross_are_numbered_and_chained_as_if_one_had_waited_for_the_other()
    {
        await using var room = await Room.SealedAsync();
        var (begun, goOn) = (new TaskCompletionSource(), new TaskCompletionSource());
        var tries = 0;
        Outcome<ImmutableArray<DayEvent>> Draw(Tasting tasting, int taster, int salt) => ((SealedTasting)tasting)
            .LeaveOff(room.Trials.Now, room.Tasters[taster], [tasting.Book.Entries[0].Wheel], new Seed(7))
            .Then(events => Outcome.Of(Committing.With(tasting.Book, events, [.. Enumerable.Repeat((byte)salt, Commitment.SaltBytes)])));
        var overtaken = Task.Run(() => room.Trials.ActBesideAsync(room.Trial, (tasting, _) =>
        {
            tries++;
            var decided = Draw(tasting, 0, 1);
            begun.TrySetResult();
            goOn.Task.Wait();
            return decided;
        }));
        await begun.Task;
        Assert.True((await room.Trials.ActBesideAsync(room.Trial, (tasting, _) => Draw(tasting, 1, 2)).WaitAsync(Patience)).Ok);
        goOn.SetResult();
        Assert.True((await overtaken).Ok);
        Assert.Equal(2, tries);
        room.LetGoOfFile();
        var commitments = (await room.FoundAsync()).Book.Commitments;
        Assert.Equal([(1, "02"), (2, "01")], commitments.Select(commitment => (commitment.Number, commitment.Salt[..2])));
        Assert.True(commitments[0].KeyVersion < commitments[1].KeyVersion);
        Assert.Contains(commitments[1].Lines, line => line.Contains(commitments[0].Words, StringComparison.Ordinal));
        Assert.True(commitments[1].Holds());
    }
}
