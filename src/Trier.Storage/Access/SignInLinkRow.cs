using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace Trier.Storage.Access;

/// <summary>A one-time sign-in link of the maker. Only the hash of its secret is stored.</summary>
internal sealed class SignInLinkRow
{
    public required byte[] SecretHash { get; init; }

    public required long ExpiresAt { get; init; }

    public long? SpentAt { get; set; }
}

internal sealed class SignInLinkRowConfiguration : IEntityTypeConfiguration<SignInLinkRow>
{
    public void Configure(EntityTypeBuilder<SignInLinkRow> builder)
    {
        builder.ToTable("sign_in_links");
        builder.HasKey(row => row.SecretHash);
        builder.Property(row => row.SecretHash).HasMaxLength(32);
    }
}
