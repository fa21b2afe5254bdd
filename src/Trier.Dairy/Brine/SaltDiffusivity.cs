using Trier.Dairy.Quantities;
using Trier.Dairy.Tables;
using Trier.Dairy.Workings;

namespace Trier.Dairy.Brine;

/// <summary>How fast salt spreads in the moisture of a style of cheese.</summary>
/// <param name="Style">The style.</param>
/// <param name="Value">The value with its band.</param>
/// <param name="Status">How it is known; the choice for a style is practice, from ranges that were read.</param>
/// <param name="Source">The source named in the table.</param>
public sealed record SaltDiffusivity(Style Style, Estimate<Diffusivity> Value, Status Status, string Source)
{
    /// <summary>The table; card: Tables/salt_diffusivity.md.</summary>
    public static readonly Listed<SaltDiffusivity> All = EmbeddedTable.Read("salt_diffusivity", row => new SaltDiffusivity(
        row.Word<Style>("style"),
        Estimate.Between(Ten("low_1e10_m2_s", row), Ten("likely_1e10_m2_s", row), Ten("high_1e10_m2_s", row)),
        row.Word<Status>("status"),
        row.Text("source")));

    /// <summary>The diffusivity of a style; where the table has none, that of other pressed cheese with its wide band.</summary>
    /// <param name="style">The style.</param>
    public static SaltDiffusivity Of(Style style) =>
        All.FirstOrDefault(row => row.Style == style) ?? All.First(row => row.Style == Style.OtherPressed);

    private static Diffusivity Ten(string column, EmbeddedTable.Row row) => Diffusivity.FromSquareMetresPerSecond(row.Number(column) * 1e-10);
}
