using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;
using Trier.Storage.Tastings;
using Trier.Trials.Common;

namespace Trier.Storage.Access;

/// <summary>Somebody at the door who is not on the list. Becomes a taster only when the maker accepts.</summary>
internal sealed class WalkInRow
{
    public required Guid Id { get; init; }

    public required TrialId Trial { get; init; }

    public required string Name { get; init; }

    public required long AskedAt { get; init; }

    /// <summary>The taster they became, or null while waiting or turned away.</summary>
    public TasterId? Taster { get; set; }

    public bool TurnedAway { get; set; }
}

internal sealed class WalkInRowConfiguration : IEntityTypeConfiguration<WalkInRow>
{
    public void Configure(EntityTypeBuilder<WalkInRow> builder)
    {
        builder.ToTable("walk_ins");
        builder.HasKey(row => row.Id);
        builder.HasIndex(row => row.Trial);
        builder.Property(row => row.Name).HasMaxLength(60);
        builder.HasOne<TrialRow>().WithMany().HasForeignKey(row => row.Trial).OnDelete(DeleteBehavior.Restrict);
    }
}
