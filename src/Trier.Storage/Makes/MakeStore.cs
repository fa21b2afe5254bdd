using System.Collections.Immutable;
using Microsoft.EntityFrameworkCore;
using Trier.Trials.Common;
using Trier.Trials.Makes;
using Trier.Trials.Makes.Days;

namespace Trier.Storage.Makes;

/// <summary>Makes, each its events. A touch is on the disk before it is acknowledged; the same send twice is one event.</summary>
/// <param name="databases">Opens the database.</param>
/// <param name="writer">The one writer of this database.</param>
/// <param name="clock">The host's clock.</param>
public sealed class MakeStore(IDbContextFactory<TrierDb> databases, WriterGate writer, TimeProvider clock)
{
    /// <summary>The host's time, with its offset.</summary>
    public DateTimeOffset Now => clock.GetLocalNow();

    /// <summary>Begins a make.</summary>
    /// <param name="id">Its id.</param>
    /// <param name="events">Its first events, as <see cref="Make.Begin"/> yields them.</param>
    /// <param name="cancellation">Stops the wait.</param>
    public async Task<Make> BeginAsync(MakeId id, ImmutableArray<MakeEvent> events, CancellationToken cancellation = default)
    {
        var make = Make.Read(id, [.. Number(events, 0)]);
        using var turn = await writer.EnterAsync(cancellation);
        await using var db = await databases.CreateDbContextAsync(CancellationToken.None);
        db.Makes.Add(new MakeRow { Id = id, Recipe = make.Begun.RecipeId, Version = make.Begun.Version, BegunAt = Now.UtcTicks });
        Append(db, id, events, 0, null);
        await db.SaveChangesAsync(CancellationToken.None);
        return make;
    }

    /// <summary>All makes, newest first.</summary>
    /// <param name="cancellation">Stops the wait.</param>
    public async Task<ImmutableArray<Make>> AllAsync(CancellationToken cancellation = default)
    {
        await using var db = await databases.CreateDbContextAsync(cancellation);
        var order = await db.Makes.AsNoTracking().OrderByDescending(row => row.BegunAt).Select(row => row.Id).ToListAsync(cancellation);
        var rows = await db.MakeEvents.AsNoTracking().OrderBy(row => row.Sequence).ToListAsync(cancellation);
        var byMake = rows.ToLookup(row => row.Make);
        return [.. order.Select(id => Make.Read(id, [.. byMake[id].Select(Logged)]))];
    }

    /// <summary>One make, or null.</summary>
    /// <param name="id">Which make.</param>
    /// <param name="cancellation">Stops the wait.</param>
    public async Task<Make?> FindAsync(MakeId id, CancellationToken cancellation = default)
    {
        await using var db = await databases.CreateDbContextAsync(cancellation);
        return await ReadAsync(db, id, cancellation);
    }

    /// <summary>Does one act and appends what it yields.</summary>
    /// <param name="id">Which make.</param>
    /// <param name="send">The sender's id of this touch, or null; the same id again changes nothing.</param>
    /// <param name="act">Decides on the make as it stands now; may be refused.</param>
    /// <param name="cancellation">Stops the wait for the writer; once begun, the write is finished.</param>
    public async Task<Outcome<Make>> ActAsync(MakeId id, Guid? send, Func<Make, Outcome<ImmutableArray<MakeEvent>>> act, CancellationToken cancellation = default)
    {
        using var turn = await writer.EnterAsync(cancellation);
        await using var db = await databases.CreateDbContextAsync(CancellationToken.None);
        if (await ReadAsync(db, id, CancellationToken.None) is not { } make) return Outcome.Fault<Make>("make", "There is no such make.");
        if (await WhereAsync(db, send) is { } where) return where == id ? Outcome.Of(make) : Elsewhere;
        var outcome = act(make);
        if (!outcome.TryGet(out var events)) return Outcome.Fault<Make>(outcome.Problems);
        // Read before it is written: what cannot be read must never reach the disk.
        var after = Make.Read(id, [.. make.Log, .. Number(events, make.Log.Length)]);
        Append(db, id, events, make.Log.Length, send);
        await FollowAsync(db, make, after);
        await db.SaveChangesAsync(CancellationToken.None);
        return Outcome.Of(after);
    }

    /// <summary>Gives a vat's wheels numbers and writes them down as wheels, all or nothing.</summary>
    /// <param name="id">Which make.</param>
    /// <param name="send">The sender's id, or null.</param>
    /// <param name="wheels">Wheels without numbers: names, masses, what differs; their ids are new.</param>
    /// <param name="cancellation">Stops the wait.</param>
    public async Task<Outcome<Make>> BearAsync(MakeId id, Guid? send, ImmutableArray<BornWheel> wheels, CancellationToken cancellation = default)
    {
        using var turn = await writer.EnterAsync(cancellation);
        await using var writing = await databases.CreateDbContextAsync(CancellationToken.None);
        if (await ReadAsync(writing, id, CancellationToken.None) is not { } make) return Outcome.Fault<Make>("make", "There is no such make.");
        if (await WhereAsync(writing, send) is { } where) return where == id ? Outcome.Of(make) : Elsewhere;
        var first = 1 + (await writing.WheelNumbers.MaxAsync(row => (int?)row.Number, CancellationToken.None) ?? 0);
        ImmutableArray<BornWheel> numbered = [.. wheels.Select((wheel, index) => wheel with { Number = first + index, Name = wheel.Name.Trim(), Differs = wheel.Differs.Trim() })];
        var now = Now;
        var outcome = make.Bear(now, numbered);
        if (!outcome.TryGet(out var events)) return Outcome.Fault<Make>(outcome.Problems);
        var after = Make.Read(id, [.. make.Log, .. Number(events, make.Log.Length)]);
        Append(writing, id, events, make.Log.Length, send);
        var shelf = await ThingStore.AllAsync(writing, CancellationToken.None);
        for (var i = 0; i < numbered.Length; i++)
        {
            var wheel = numbered[i];
            writing.WheelNumbers.Add(new WheelNumberRow { Number = wheel.Number, Wheel = wheel.Wheel, Make = id });
            writing.WheelRevisions.Add(new WheelRevisionRow { Wheel = wheel.Wheel, Revision = 1, At = now.UtcTicks + i, Json = RecordJson.Write(new Wheel(wheel.Wheel, wheel.Name, WheelFactsOf.Of(after, wheel, shelf))) });
        }

        await writing.SaveChangesAsync(CancellationToken.None);
        return Outcome.Of(after);
    }

    /// <summary>The make a numbered wheel came from, or null.</summary>
    /// <param name="number">The number on its label.</param>
    /// <param name="cancellation">Stops the wait.</param>
    public async Task<Make?> OfWheelAsync(int number, CancellationToken cancellation = default)
    {
        await using var db = await databases.CreateDbContextAsync(cancellation);
        var make = await db.WheelNumbers.AsNoTracking().Where(row => row.Number == number).Select(row => (MakeId?)row.Make).FirstOrDefaultAsync(cancellation);
        return make is { } id ? await ReadAsync(db, id, cancellation) : null;
    }

    // Brine, drying and corrections come after the wheels have their numbers: their facts go on. What was written of a wheel by hand stays.
    private async Task FollowAsync(TrierDb db, Make before, Make after)
    {
        if (before.Wheels.IsEmpty) return;
        var shelf = await ThingStore.AllAsync(db, CancellationToken.None);
        foreach (var born in before.Wheels)
        {
            var (old, now) = (WheelFactsOf.Of(before, born, shelf), WheelFactsOf.Of(after, after.Wheels.First(wheel => wheel.Wheel == born.Wheel), shelf));
            if (old.Equals(now)) continue;
            var rows = await db.WheelRevisions.AsNoTracking().Where(row => row.Wheel == born.Wheel).OrderBy(row => row.Revision).ToListAsync(CancellationToken.None);
            if (rows.Count == 0) continue;
            var stands = RecordJson.Read<Wheel>(rows[^1].Json);
            db.WheelRevisions.Add(new WheelRevisionRow { Wheel = born.Wheel, Revision = rows[^1].Revision + 1, At = Now.UtcTicks, Json = RecordJson.Write(stands with { Facts = stands.Facts.Following(old, now) }) });
        }
    }

    private static Outcome<Make> Elsewhere => Outcome.Fault<Make>("make", "This send belongs to another make: load the page again.");

    /// <summary>The make that has a send already, or null.</summary>
    private static async Task<MakeId?> WhereAsync(TrierDb db, Guid? send) =>
        send is { } known ? await db.MakeEvents.AsNoTracking().Where(row => row.Send == known).Select(row => (MakeId?)row.Make).FirstOrDefaultAsync(CancellationToken.None) : null;

    private static async Task<Make?> ReadAsync(TrierDb db, MakeId id, CancellationToken cancellation)
    {
        var rows = await db.MakeEvents.AsNoTracking().Where(row => row.Make == id).OrderBy(row => row.Sequence).ToListAsync(cancellation);
        return rows.Count == 0 ? null : Make.Read(id, rows.ConvertAll(Logged));
    }

    private static LoggedMake Logged(MakeEventRow row) => new(row.Sequence, RecordJson.Read<MakeEvent>(row.Json));

    private static void Append(TrierDb db, MakeId id, ImmutableArray<MakeEvent> events, int after, Guid? send)
    {
        foreach (var logged in Number(events, after))
        {
            // Only the first event bears the sender's id: one touch is one send, whatever it yields.
            db.MakeEvents.Add(new MakeEventRow { Make = id, Sequence = logged.Sequence, At = logged.Event.At.UtcTicks, Send = logged.Sequence == after + 1 ? send : null, Json = RecordJson.Write(logged.Event) });
        }
    }

    private static IEnumerable<LoggedMake> Number(ImmutableArray<MakeEvent> events, int after) => events.Select((happened, index) => new LoggedMake(after + index + 1, happened));
}
