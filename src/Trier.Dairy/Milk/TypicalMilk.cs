using Trier.Dairy.Quantities;
using Trier.Dairy.Tables;
using Trier.Dairy.Workings;

namespace Trier.Dairy.Milk;

/// <summary>The average milk of a species with the range of fat and protein.</summary>
/// <param name="Species">The animal.</param>
/// <param name="Milk">The average.</param>
/// <param name="Fat">Average fat with its range.</param>
/// <param name="Protein">Average protein with its range.</param>
/// <param name="CaseinNumberStatus">How the casein number is known; for all but the cow it is a memory of low confidence.</param>
public sealed record TypicalMilk(
    Species Species,
    MilkComposition Milk,
    Estimate<Share> Fat,
    Estimate<Share> Protein,
    Status CaseinNumberStatus)
{
    /// <summary>The table, one entry a species. Source [FAO2013], secondary; card: Tables/milk_composition.md.</summary>
    public static readonly Listed<TypicalMilk> All = EmbeddedTable.Read("milk_composition", row => new TypicalMilk(
        row.Word<Species>("species"),
        MilkComposition.Create(
            Share.FromPercent(row.Number("fat_pct")),
            Share.FromPercent(row.Number("protein_pct")),
            row.Number("casein_number"),
            Share.FromPercent(row.Number("lactose_pct")),
            Share.FromPercent(row.Number("ash_pct"))).OrThrow().Value,
        Band(row.Number("fat_low"), row.Number("fat_pct"), row.Number("fat_high")),
        Band(row.Number("protein_low"), row.Number("protein_pct"), row.Number("protein_high")),
        row.Word<Status>("casein_number_status")));

    /// <summary>Where the averages come from.</summary>
    public static Source Source => Sources.Fao2013;

    /// <summary>The average milk of a species; use the maker's own label or analysis where there is one.</summary>
    /// <param name="species">The animal.</param>
    public static TypicalMilk Of(Species species) => All.First(milk => milk.Species == species);

    private static Estimate<Share> Band(double low, double likely, double high) =>
        Estimate.Between(Share.FromPercent(low), Share.FromPercent(likely), Share.FromPercent(high));
}
