using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;
using Trier.Trials.Common;

namespace Trier.Storage.Tastings;

/// <summary>One event. Appended, never changed; the key (trial, sequence) makes two writers collide instead of overwrite.</summary>
internal sealed class DayEventRow
{
    public required TrialId Trial { get; init; }

    public required int Sequence { get; init; }

    public required long At { get; init; }

    public required string Json { get; init; }
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
