using System.Security.Cryptography;
using System.Text.Json;
using Microsoft.EntityFrameworkCore;
using Trier.Storage.Verdicts;
using Trier.Trials.Plans;
using Trier.Trials.Plans.Panels;

namespace Trier.Storage.Plans;

/// <summary>Keeps what simulated panels could show, under the hash of all that it depends on, beside what was worked out of tastings.</summary>
/// <param name="databases">Opens the database.</param>
/// <param name="writer">The one writer of this database.</param>
public sealed class PanelStore(IDbContextFactory<TrierDb> databases, WriterGate writer)
{
    /// <summary>The name of what was asked: the same question has the same name in every trial.</summary>
    /// <param name="outline">The outline.</param>
    public static string Key(TrialOutline outline)
    {
        ArgumentNullException.ThrowIfNull(outline);
        var asked = new
        {
            Of = "panels",
            PanelPlanning.MethodsVersion,
            Seed = PanelPlanning.Seed.Value,
            Panels = PanelPlanning.UsualPanels,
            outline.Rule,
            outline.Tasters,
            outline.Preference,
            outline.Recipes,
            outline.WheelsPerRecipe,
            Made = outline.Wheels.Select(wheel => (wheel.Recipe, wheel.Facts.MadeOn is not null).ToString()),
        };
        return Convert.ToHexStringLower(SHA256.HashData(JsonSerializer.SerializeToUtf8Bytes(asked, RecordJson.Options)));
    }

    /// <summary>The findings, or null where they were never worked out.</summary>
    /// <param name="key">From <see cref="Key"/>.</param>
    /// <param name="cancellation">Stops the wait.</param>
    public async Task<PanelFindings?> FindAsync(string key, CancellationToken cancellation = default)
    {
        await using var db = await databases.CreateDbContextAsync(cancellation);
        var json = await db.KeptFindings.AsNoTracking().Where(row => row.Hash == key).Select(row => row.Json).FirstOrDefaultAsync(cancellation);
        return json is null ? null : JsonSerializer.Deserialize<PanelFindings>(json, FindingsStore.Options);
    }

    /// <summary>Keeps findings; those that are here already stay.</summary>
    /// <param name="key">From <see cref="Key"/>.</param>
    /// <param name="findings">What was worked out.</param>
    /// <param name="cancellation">Stops the wait.</param>
    public async Task KeepAsync(string key, PanelFindings findings, CancellationToken cancellation = default)
    {
        using var turn = await writer.EnterAsync(cancellation);
        await using var db = await databases.CreateDbContextAsync(cancellation);
        if (await db.KeptFindings.AnyAsync(row => row.Hash == key, cancellation)) return;
        db.KeptFindings.Add(new KeptFindingsRow { Hash = key, Json = JsonSerializer.Serialize(findings, FindingsStore.Options) });
        await db.SaveChangesAsync(cancellation);
    }
}
