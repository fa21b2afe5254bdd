// Sends ballots for every taster of a trial at once, as fast as they are acknowledged, and between them signs tasters in, which is two events each time.
// Prints each acknowledged send and act on a line of its own. Made to be killed; ends by itself after a minute, so that it cannot outlive a test that
// broke.
//
//     Trier.Storage.Crasher DATABASE TRIAL

using Trier.Storage;
using Trier.Storage.Crasher;
using Trier.Storage.Sqlite;
using Trier.Storage.Tastings;
using Trier.Trials.Common;
using Trier.Trials.Tastings;

var trial = new TrialId(Guid.Parse(args[1]));
using var writer = new WriterGate();
var trials = new TrialStore(new SqliteDatabases(args[0]), writer, TimeProvider.System);
var tasting = await trials.FindAsync(trial) ?? throw new InvalidOperationException("There is no such trial.");
using var minute = new CancellationTokenSource(TimeSpan.FromMinutes(1));
// Each in a thread of its own: where nobody else writes, a write is done at once, and the first would never let the next one begin.
await Task.WhenAll([Task.Run(SignInAsync), .. tasting.Book.Present.Select(taster => Task.Run(() => SendAsync(taster.Id)))]);

async Task SendAsync(TasterId taster)
{
    var plate = tasting.Book.Served(taster);
    var standing = (await trials.BallotAsync(tasting, taster)).Current?.Id;
    while (!minute.IsCancellationRequested)
    {
        var id = new RevisionId(Guid.NewGuid());
        var outcome = await trials.ReceiveAsync(trial, new BallotSend(id, taster, standing, "crasher", BallotSource.Phone, BallotStage.Sent, Said.On(plate, id)));
        if (!outcome.TryGet(out var receipt) || !receipt.MadeCurrent) throw new InvalidOperationException("A ballot was refused.");
        standing = id;
        await Console.Out.WriteLineAsync($"acknowledged {taster.Value:N} {id.Value:N} .");
    }
}

async Task SignInAsync()
{
    for (var agrees = !tasting.Book.Tasters[0].Agreed.Named; !minute.IsCancellationRequested; agrees = !agrees)
    {
        var said = new SignIn(null, NoSmell: false, Junior: false, new Agreed(agrees, agrees), [], AsksHost: false);
        var after = (await trials.ActAsync(trial, now => now.SignIn(trials.Now, now.Book.Tasters[0].Id, said))).Value;
        await Console.Out.WriteLineAsync($"signed in {after.Book.Log.Length} .");
    }
}
