using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;
using Trier.Trials.Common;
using Trier.Trials.Tastings;

namespace Trier.Storage.Tastings;

/// <summary>One send of a ballot. The sender's id is the key: the same send twice cannot be stored twice.</summary>
internal sealed class BallotRevisionRow
{
    public required RevisionId Id { get; init; }

    public required TrialId Trial { get; init; }

    /// <summary>Order of arrival within the trial, from 1.</summary>
    public required int Arrival { get; init; }

    public required TasterId Taster { get; init; }

    public required RevisionId? Base { get; init; }

    public required string Device { get; init; }

    public required BallotSource Source { get; init; }

    public required BallotStage Stage { get; init; }

    public required BallotStanding Standing { get; init; }

    public required long ReceivedAt { get; init; }

    /// <summary>Minutes the host's clock stood off UTC, so that times are told as they were on the wall.</summary>
    public required int OffsetMinutes { get; init; }

    public required string Json { get; init; }

    public static BallotRevisionRow Of(TrialId trial, int arrival, BallotRevision revision) => new()
    {
        Id = revision.Id,
        Trial = trial,
        Arrival = arrival,
        Taster = revision.Taster,
        Base = revision.Base,
        Device = revision.Device,
        Source = revision.Source,
        Stage = revision.Stage,
        Standing = revision.Standing,
        ReceivedAt = revision.ReceivedAt.UtcTicks,
        OffsetMinutes = (int)revision.ReceivedAt.Offset.TotalMinutes,
        Json = RecordJson.Write(revision.Content),
    };

    public BallotRevision Revision() =>
        new(Id, Taster, Base, Device, Source, Stage, Standing, new DateTimeOffset(ReceivedAt, TimeSpan.Zero).ToOffset(TimeSpan.FromMinutes(OffsetMinutes)), RecordJson.Read<Ballot>(Json));
}

internal sealed class BallotRevisionRowConfiguration : IEntityTypeConfiguration<BallotRevisionRow>
{
    public void Configure(EntityTypeBuilder<BallotRevisionRow> builder)
    {
        builder.ToTable("ballot_revisions");
        builder.HasKey(row => row.Id);
        builder.HasIndex(row => new { row.Trial, row.Arrival }).IsUnique();
        builder.HasIndex(row => new { row.Trial, row.Taster });
        builder.Property(row => row.Device).HasMaxLength(64);
        builder.Property(row => row.Source).HasConversion<string>().HasMaxLength(16);
        builder.Property(row => row.Stage).HasConversion<string>().HasMaxLength(16);
        builder.Property(row => row.Standing).HasConversion<string>().HasMaxLength(16);
        builder.HasOne<TrialRow>().WithMany().HasForeignKey(row => row.Trial).OnDelete(DeleteBehavior.Restrict);
    }
}
