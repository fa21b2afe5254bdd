using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace Trier.Storage.Verdicts;

/// <summary>What was worked out from a record once. Can be thrown away at any time: the same record gives the same findings again.</summary>
internal sealed class KeptFindingsRow
{
    /// <summary>Hash of the record, the seed and the methods' version.</summary>
    public required string Hash { get; init; }

    public required string Json { get; init; }
}

internal sealed class KeptFindingsRowConfiguration : IEntityTypeConfiguration<KeptFindingsRow>
{
    public void Configure(EntityTypeBuilder<KeptFindingsRow> builder)
    {
        builder.ToTable("kept_findings");
        builder.HasKey(row => row.Hash);
    }
}
