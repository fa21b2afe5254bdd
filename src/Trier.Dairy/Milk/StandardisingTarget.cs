using Trier.Dairy.Tables;
using Trier.Dairy.Workings;

namespace Trier.Dairy.Milk;

/// <summary>The protein to fat and casein to fat a style asks for.</summary>
/// <param name="Style">The style.</param>
/// <param name="ProteinToFatLow">Low end of protein to fat.</param>
/// <param name="ProteinToFatHigh">High end of protein to fat.</param>
/// <param name="CaseinToFatLow">Low end of casein to fat.</param>
/// <param name="CaseinToFatHigh">High end of casein to fat.</param>
/// <param name="Status">How it is known.</param>
/// <param name="Source">The source named in the table.</param>
public sealed record StandardisingTarget(
    Style Style,
    double ProteinToFatLow,
    double ProteinToFatHigh,
    double CaseinToFatLow,
    double CaseinToFatHigh,
    Status Status,
    string Source)
{
    /// <summary>The table; card: Tables/standardising_targets.md.</summary>
    public static readonly Listed<StandardisingTarget> All = EmbeddedTable.Read("standardising_targets", row => new StandardisingTarget(
        row.Word<Style>("style"),
        row.Number("protein_to_fat_low"),
        row.Number("protein_to_fat_high"),
        row.Number("casein_to_fat_low"),
        row.Number("casein_to_fat_high"),
        row.Word<Status>("status"),
        row.Text("source")));

    /// <summary>The target of a style, or null where no figure is at hand.</summary>
    /// <param name="style">The style.</param>
    public static StandardisingTarget? Of(Style style) => All.FirstOrDefault(target => target.Style == style);
}
