using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;
using Trier.Trials.Common;

namespace Trier.Storage.Tastings;

internal sealed class TrialRow
{
    public required TrialId Id { get; init; }

    /// <summary>UTC ticks: SQLite cannot compare offsets.</summary>
    public required long BegunAt { get; init; }

    /// <summary>32 bytes from which taster links and typed codes are derived, so that cards can be printed again.</summary>
    public required byte[] LinkSecret { get; init; }
}

internal sealed class TrialRowConfiguration : IEntityTypeConfiguration<TrialRow>
{
    public void Configure(EntityTypeBuilder<TrialRow> builder)
    {
        builder.ToTable("trials");
        builder.HasKey(row => row.Id);
        builder.Property(row => row.LinkSecret).HasMaxLength(32);
    }
}
