using Trier.Dairy.Tables;
using Trier.Dairy.Workings;

namespace Trier.Dairy.Rennet;

/// <summary>A clotting activity met in texts, IMCU a kilogram of milk.</summary>
/// <param name="Basis">Where it comes from, in words.</param>
/// <param name="ImcuPerKilogram">The level.</param>
/// <param name="Status">How it is known.</param>
/// <param name="Source">The source named in the table.</param>
public sealed record RennetLevelGuide(string Basis, double ImcuPerKilogram, Status Status, string Source)
{
    /// <summary>The table; card: Tables/rennet_levels.md.</summary>
    public static readonly Listed<RennetLevelGuide> All = EmbeddedTable.Read("rennet_levels", row => new RennetLevelGuide(
        row.Text("basis"), row.Number("imcu_per_kg"), row.Word<Status>("status"), row.Text("source")));
}
