using System.Collections.Immutable;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;
using Trier.Trials.Common;
using Trier.Trials.Makes.Shelf;

namespace Trier.Storage.Makes;

/// <summary>Brines, lots and instruments with their histories.</summary>
/// <param name="databases">Opens the database.</param>
/// <param name="writer">The one writer of this database.</param>
public sealed class ThingStore(IDbContextFactory<TrierDb> databases, WriterGate writer)
{
    /// <summary>Puts a thing on the shelf.</summary>
    /// <param name="thing">The thing, as <see cref="Thing.Begin"/> yields it.</param>
    /// <param name="cancellation">Stops the wait.</param>
    public async Task BeginAsync(Thing thing, CancellationToken cancellation = default)
    {
        using var turn = await writer.EnterAsync(cancellation);
        await using var db = await databases.CreateDbContextAsync(CancellationToken.None);
        db.Things.Add(new ThingRow { Id = thing.Id, Kind = thing.Kind, Name = thing.Name, ExpiresOn = thing.ExpiresOn });
        for (var i = 0; i < thing.Log.Length; i++) db.ThingEvents.Add(Row(thing.Id, i + 1, thing.Log[i]));
        await db.SaveChangesAsync(CancellationToken.None);
    }

    /// <summary>Everything on the shelf, what is gone at the end.</summary>
    /// <param name="cancellation">Stops the wait.</param>
    public async Task<ImmutableArray<Thing>> AllAsync(CancellationToken cancellation = default)
    {
        await using var db = await databases.CreateDbContextAsync(cancellation);
        return await AllAsync(db, cancellation);
    }

    internal static async Task<ImmutableArray<Thing>> AllAsync(TrierDb db, CancellationToken cancellation)
    {
        var rows = await db.Things.AsNoTracking().ToListAsync(cancellation);
        var lines = (await db.ThingEvents.AsNoTracking().OrderBy(row => row.Sequence).ToListAsync(cancellation)).ToLookup(row => row.Thing);
        return [.. rows.Select(row => Read(row, lines[row.Id])).OrderBy(thing => thing.Gone).ThenBy(thing => thing.Kind).ThenByDescending(thing => thing.Log[0].At)];
    }

    /// <summary>One thing, or null.</summary>
    /// <param name="id">Which thing.</param>
    /// <param name="cancellation">Stops the wait.</param>
    public async Task<Thing?> FindAsync(ThingId id, CancellationToken cancellation = default)
    {
        await using var db = await databases.CreateDbContextAsync(cancellation);
        return await ReadAsync(db, id, cancellation);
    }

    /// <summary>Writes a line of a thing's history.</summary>
    /// <param name="id">Which thing.</param>
    /// <param name="line">The line.</param>
    /// <param name="cancellation">Stops the wait.</param>
    public async Task<Outcome<Thing>> WriteAsync(ThingId id, ThingEvent line, CancellationToken cancellation = default)
    {
        using var turn = await writer.EnterAsync(cancellation);
        await using var db = await databases.CreateDbContextAsync(CancellationToken.None);
        if (await ReadAsync(db, id, CancellationToken.None) is not { } thing) return Outcome.Fault<Thing>("thing", "There is no such thing on the shelf.");
        var written = thing.Do(line);
        if (!written.TryGet(out var kept)) return Outcome.Fault<Thing>(written.Problems);
        db.ThingEvents.Add(Row(id, thing.Log.Length + 1, kept));
        await db.SaveChangesAsync(CancellationToken.None);
        return Outcome.Of(thing with { Log = thing.Log.Add(kept) });
    }

    private static async Task<Thing?> ReadAsync(TrierDb db, ThingId id, CancellationToken cancellation)
    {
        if (await db.Things.AsNoTracking().FirstOrDefaultAsync(row => row.Id == id, cancellation) is not { } row) return null;
        return Read(row, await db.ThingEvents.AsNoTracking().Where(line => line.Thing == id).OrderBy(line => line.Sequence).ToListAsync(cancellation));
    }

    private static Thing Read(ThingRow row, IEnumerable<ThingEventRow> lines) => new(row.Id, row.Kind, row.Name, row.ExpiresOn, [.. lines.Select(line => RecordJson.Read<ThingEvent>(line.Json))]);

    private static ThingEventRow Row(ThingId id, int sequence, ThingEvent line) => new() { Thing = id, Sequence = sequence, At = line.At.UtcTicks, Json = RecordJson.Write(line) };
}

internal sealed class ThingRow
{
    public required ThingId Id { get; init; }

    public required ThingKind Kind { get; init; }

    public required string Name { get; init; }

    public required DateOnly? ExpiresOn { get; init; }
}

/// <summary>One line of a thing's history. Appended, never changed.</summary>
internal sealed class ThingEventRow
{
    public required ThingId Thing { get; init; }

    public required int Sequence { get; init; }

    public required long At { get; init; }

    public required string Json { get; init; }
}

internal sealed class ThingRowConfiguration : IEntityTypeConfiguration<ThingRow>
{
    public void Configure(EntityTypeBuilder<ThingRow> builder)
    {
        builder.ToTable("things");
        builder.HasKey(row => row.Id);
        builder.Property(row => row.Kind).HasConversion<string>().HasMaxLength(16);
        builder.Property(row => row.Name).HasMaxLength(60);
    }
}

internal sealed class ThingEventRowConfiguration : IEntityTypeConfiguration<ThingEventRow>
{
    public void Configure(EntityTypeBuilder<ThingEventRow> builder)
    {
        builder.ToTable("thing_events");
        builder.HasKey(row => new { row.Thing, row.Sequence });
        builder.HasOne<ThingRow>().WithMany().HasForeignKey(row => row.Thing).OnDelete(DeleteBehavior.Restrict);
    }
}
