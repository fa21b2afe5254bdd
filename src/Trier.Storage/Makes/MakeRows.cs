using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;
using Trier.Trials.Common;

namespace Trier.Storage.Makes;

/// <summary>A recipe as it was written down at some moment. The last revision of a version stands.</summary>
internal sealed class RecipeRevisionRow
{
    public required RecipeId Recipe { get; init; }

    public required int Revision { get; init; }

    public required int Version { get; init; }

    public required long At { get; init; }

    public required string Json { get; init; }
}

/// <summary>A make, and which version of which recipe it froze.</summary>
internal sealed class MakeRow
{
    public required MakeId Id { get; init; }

    public required RecipeId Recipe { get; init; }

    public required int Version { get; init; }

    public required long BegunAt { get; init; }
}

/// <summary>One event of a make. Appended, never changed. The sender's id is unique: the same send twice cannot be stored twice.</summary>
internal sealed class MakeEventRow
{
    public required MakeId Make { get; init; }

    public required int Sequence { get; init; }

    public required long At { get; init; }

    public required Guid? Send { get; init; }

    public required string Json { get; init; }
}

/// <summary>A number on a wheel's label; given once.</summary>
internal sealed class WheelNumberRow
{
    public required int Number { get; init; }

    public required WheelId Wheel { get; init; }

    public required MakeId Make { get; init; }
}

internal sealed class RecipeRevisionRowConfiguration : IEntityTypeConfiguration<RecipeRevisionRow>
{
    public void Configure(EntityTypeBuilder<RecipeRevisionRow> builder)
    {
        builder.ToTable("recipe_revisions");
        builder.HasKey(row => new { row.Recipe, row.Revision });
    }
}

internal sealed class MakeRowConfiguration : IEntityTypeConfiguration<MakeRow>
{
    public void Configure(EntityTypeBuilder<MakeRow> builder)
    {
        builder.ToTable("makes");
        builder.HasKey(row => row.Id);
        builder.HasIndex(row => new { row.Recipe, row.Version });
    }
}

internal sealed class MakeEventRowConfiguration : IEntityTypeConfiguration<MakeEventRow>
{
    public void Configure(EntityTypeBuilder<MakeEventRow> builder)
    {
        builder.ToTable("make_events");
        builder.HasKey(row => new { row.Make, row.Sequence });
        builder.HasIndex(row => row.Send).IsUnique();
        builder.HasOne<MakeRow>().WithMany().HasForeignKey(row => row.Make).OnDelete(DeleteBehavior.Restrict);
    }
}

internal sealed class WheelNumberRowConfiguration : IEntityTypeConfiguration<WheelNumberRow>
{
    public void Configure(EntityTypeBuilder<WheelNumberRow> builder)
    {
        builder.ToTable("wheel_numbers");
        builder.HasKey(row => row.Number);
        builder.Property(row => row.Number).ValueGeneratedNever();
        builder.HasIndex(row => row.Wheel).IsUnique();
        builder.HasOne<MakeRow>().WithMany().HasForeignKey(row => row.Make).OnDelete(DeleteBehavior.Restrict);
    }
}
