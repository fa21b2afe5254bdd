using System.Collections.Immutable;
using Microsoft.EntityFrameworkCore;
using Trier.Trials.Common;
using Trier.Trials.Makes.Recipes;

namespace Trier.Storage.Makes;

/// <summary>Recipes, each a row of revisions. A version that a make used is never written over.</summary>
/// <param name="databases">Opens the database.</param>
/// <param name="writer">The one writer of this database.</param>
/// <param name="clock">The host's clock.</param>
public sealed class RecipeStore(IDbContextFactory<TrierDb> databases, WriterGate writer, TimeProvider clock)
{
    /// <summary>Writes a recipe down: over the current version while no make used it, else as the next one.</summary>
    /// <param name="id">Which recipe, new or known.</param>
    /// <param name="recipe">What it says from now on.</param>
    /// <param name="cancellation">Stops the wait.</param>
    /// <returns>The recipe with its versions.</returns>
    public async Task<RecipeLine> SaveAsync(RecipeId id, Recipe recipe, CancellationToken cancellation = default)
    {
        using var turn = await writer.EnterAsync(cancellation);
        await using var db = await databases.CreateDbContextAsync(CancellationToken.None);
        var known = await ReadAsync(db, id, CancellationToken.None);
        if (known is not null && known.NumberFor(recipe) is null) return known;
        var version = known?.NumberFor(recipe) ?? 1;
        var last = await db.RecipeRevisions.Where(row => row.Recipe == id).MaxAsync(row => (int?)row.Revision, CancellationToken.None) ?? 0;
        db.RecipeRevisions.Add(new RecipeRevisionRow { Recipe = id, Revision = last + 1, Version = version, At = clock.GetUtcNow().UtcTicks, Json = RecordJson.Write(recipe.ToDraft()) });
        await db.SaveChangesAsync(CancellationToken.None);
        return (await ReadAsync(db, id, CancellationToken.None))!;
    }

    /// <summary>All recipes, the one written last first.</summary>
    /// <param name="cancellation">Stops the wait.</param>
    public async Task<ImmutableArray<RecipeLine>> AllAsync(CancellationToken cancellation = default)
    {
        await using var db = await databases.CreateDbContextAsync(cancellation);
        var rows = await db.RecipeRevisions.AsNoTracking().OrderBy(row => row.Revision).ToListAsync(cancellation);
        var used = await UsedAsync(db, null, cancellation);
        return [.. rows.GroupBy(row => row.Recipe).OrderByDescending(group => group.Max(row => row.At)).Select(group => Line(group.Key, [.. group], used))];
    }

    /// <summary>One recipe, or null.</summary>
    /// <param name="id">Which recipe.</param>
    /// <param name="cancellation">Stops the wait.</param>
    public async Task<RecipeLine?> FindAsync(RecipeId id, CancellationToken cancellation = default)
    {
        await using var db = await databases.CreateDbContextAsync(cancellation);
        return await ReadAsync(db, id, cancellation);
    }

    private static async Task<RecipeLine?> ReadAsync(TrierDb db, RecipeId id, CancellationToken cancellation)
    {
        var rows = await db.RecipeRevisions.AsNoTracking().Where(row => row.Recipe == id).OrderBy(row => row.Revision).ToListAsync(cancellation);
        return rows.Count == 0 ? null : Line(id, rows, await UsedAsync(db, id, cancellation));
    }

    private static async Task<HashSet<(RecipeId, int)>> UsedAsync(TrierDb db, RecipeId? id, CancellationToken cancellation)
    {
        var makes = id is { } one ? db.Makes.Where(row => row.Recipe == one) : db.Makes;
        var used = await makes.AsNoTracking().Select(row => new { row.Recipe, row.Version }).Distinct().ToListAsync(cancellation);
        return [.. used.Select(row => (row.Recipe, row.Version))];
    }

    private static RecipeLine Line(RecipeId id, List<RecipeRevisionRow> rows, HashSet<(RecipeId, int)> used) => new(
        id,
        [
            .. rows.GroupBy(row => row.Version).OrderBy(group => group.Key).Select(group => new RecipeVersion(
                group.Key, Recipe.Stored(RecordJson.Read<RecipeDraft>(group.Last().Json)), new DateTimeOffset(group.Last().At, TimeSpan.Zero), used.Contains((id, group.Key)))),
        ]);
}
