using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;
using Trier.Trials.Common;

namespace Trier.Storage.Makes;

/// <summary>What was known of a wheel from some moment on. The last revision stands; the earlier ones are kept.</summary>
internal sealed class WheelRevisionRow
{
    public required WheelId Wheel { get; init; }

    public required int Revision { get; init; }

    public required long At { get; init; }

    public required string Json { get; init; }
}

internal sealed class WheelRevisionRowConfiguration : IEntityTypeConfiguration<WheelRevisionRow>
{
    public void Configure(EntityTypeBuilder<WheelRevisionRow> builder)
    {
        builder.ToTable("wheel_revisions");
        builder.HasKey(row => new { row.Wheel, row.Revision });
    }
}
