using System.Collections.Immutable;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;
using Trier.Trials.Common;
using Trier.Trials.Tastings.Events;

namespace Trier.Storage.Tastings;

/// <summary>One event. Appended, never changed; the key (trial, sequence) makes two writers collide instead of overwrite.</summary>
internal sealed class DayEventRow
{
    public required TrialId Trial { get; init; }

    public required int Sequence { get; init; }

    public required long At { get; init; }

    public required string Json { get; init; }

    /// <summary>Gives events their places after those there are.</summary>
    public static ImmutableArray<Logged> Number(ImmutableArray<DayEvent> events, int after) => [.. events.Select((happened, index) => new Logged(after + index + 1, happened))];

    public static IReadOnlyList<DayEventRow> Of(TrialId trial, ImmutableArray<Logged> events) =>
        [.. events.Select(logged => new DayEventRow { Trial = trial, Sequence = logged.Sequence, At = logged.Event.At.UtcTicks, Json = RecordJson.Write(logged.Event) })];
}

internal sealed class DayEventRowConfiguration : IEntityTypeConfiguration<DayEventRow>
{
    public void Configure(EntityTypeBuilder<DayEventRow> builder)
    {
        builder.ToTable("day_events");
        builder.HasKey(row => new { row.Trial, row.Sequence });
        builder.HasOne<TrialRow>().WithMany().HasForeignKey(row => row.Trial).OnDelete(DeleteBehavior.Restrict);
    }
}
