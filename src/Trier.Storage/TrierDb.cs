using Microsoft.EntityFrameworkCore;
using Trier.Storage.Access;
using Trier.Storage.Makes;
using Trier.Storage.Tastings;
using Trier.Storage.Verdicts;
using Trier.Trials.Common;

namespace Trier.Storage;

/// <summary>The database. Rows only; what they mean is read by the domain.</summary>
/// <param name="options">Provider and connection.</param>
public sealed class TrierDb(DbContextOptions<TrierDb> options) : DbContext(options)
{
    internal DbSet<TrialRow> Trials => Set<TrialRow>();

    internal DbSet<DayEventRow> DayEvents => Set<DayEventRow>();

    internal DbSet<BallotRevisionRow> BallotRevisions => Set<BallotRevisionRow>();

    internal DbSet<WheelRevisionRow> WheelRevisions => Set<WheelRevisionRow>();

    internal DbSet<RecipeRevisionRow> RecipeRevisions => Set<RecipeRevisionRow>();

    internal DbSet<MakeRow> Makes => Set<MakeRow>();

    internal DbSet<MakeEventRow> MakeEvents => Set<MakeEventRow>();

    internal DbSet<WheelNumberRow> WheelNumbers => Set<WheelNumberRow>();

    internal DbSet<ThingRow> Things => Set<ThingRow>();

    internal DbSet<ThingEventRow> ThingEvents => Set<ThingEventRow>();

    internal DbSet<SignInLinkRow> SignInLinks => Set<SignInLinkRow>();

    internal DbSet<WalkInRow> WalkIns => Set<WalkInRow>();

    internal DbSet<KeptFindingsRow> KeptFindings => Set<KeptFindingsRow>();

    /// <inheritdoc/>
    protected override void OnModelCreating(ModelBuilder modelBuilder) => modelBuilder.ApplyConfigurationsFromAssembly(typeof(TrierDb).Assembly);

    /// <inheritdoc/>
    protected override void ConfigureConventions(ModelConfigurationBuilder configurationBuilder)
    {
        configurationBuilder.Properties<TrialId>().HaveConversion<TrialIdConverter>();
        configurationBuilder.Properties<TasterId>().HaveConversion<TasterIdConverter>();
        configurationBuilder.Properties<WheelId>().HaveConversion<WheelIdConverter>();
        configurationBuilder.Properties<RevisionId>().HaveConversion<RevisionIdConverter>();
        configurationBuilder.Properties<RecipeId>().HaveConversion<RecipeIdConverter>();
        configurationBuilder.Properties<MakeId>().HaveConversion<MakeIdConverter>();
        configurationBuilder.Properties<ThingId>().HaveConversion<ThingIdConverter>();
    }
}
