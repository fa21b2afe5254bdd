using Trier.Dairy.Tables;
using Trier.Dairy.Workings;

namespace Trier.Dairy.Composition;

/// <summary>Recoveries of the general yield form.</summary>
/// <param name="Fat">RF, fat kept.</param>
/// <param name="Casein">RC, casein kept.</param>
/// <param name="Solids">RS, factor for other solids.</param>
/// <param name="Status">How they are known.</param>
public sealed record YieldFactors(Estimate<double> Fat, Estimate<double> Casein, Estimate<double> Solids, Status Status)
{
    private static readonly Listed<(Style Style, YieldFactors Factors)> Table = EmbeddedTable.Read("yield_factors", row => (
        row.Word<Style>("style"),
        new YieldFactors(
            Estimate.Between(row.Number("fat_low"), row.Number("fat_recovery"), row.Number("fat_high")),
            Estimate.Between(row.Number("casein_low"), row.Number("casein_recovery"), row.Number("casein_high")),
            Estimate.Between(row.Number("solids_low"), row.Number("solids_factor"), row.Number("solids_high")),
            row.Word<Status>("status"))));

    /// <summary>The factors of a style, or null; card: Tables/yield_factors.md.</summary>
    /// <param name="style">The style.</param>
    public static YieldFactors? Of(Style style) => Table.FirstOrDefault(row => row.Style == style).Factors;

    /// <summary>Factors without a band, for a maker who knows them.</summary>
    /// <param name="fat">RF.</param>
    /// <param name="casein">RC.</param>
    /// <param name="solids">RS.</param>
    public static YieldFactors Exactly(double fat, double casein, double solids) =>
        new(Estimate.Exactly(fat), Estimate.Exactly(casein), Estimate.Exactly(solids), Status.Derived);
}
