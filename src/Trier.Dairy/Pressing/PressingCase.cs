using Trier.Dairy.Quantities;
using Trier.Dairy.Tables;
using Trier.Dairy.Workings;

namespace Trier.Dairy.Pressing;

/// <summary>A pressing pressure met in a text. The cases of one style may disagree by a factor of 10 to 100: show them all.</summary>
/// <param name="Style">The style.</param>
/// <param name="Case">The case in words.</param>
/// <param name="From">Low end.</param>
/// <param name="To">High end.</param>
/// <param name="Status">How it is known.</param>
/// <param name="Source">The source named in the table.</param>
public sealed record PressingCase(Style Style, string Case, Pressure From, Pressure To, Status Status, string Source)
{
    /// <summary>The table; card: Tables/pressing_cases.md.</summary>
    public static readonly Listed<PressingCase> All = EmbeddedTable.Read("pressing_cases", row => new PressingCase(
        row.Word<Style>("style"), row.Text("case"), Pressure.FromKilopascals(row.Number("kilopascals_low")), Pressure.FromKilopascals(row.Number("kilopascals_high")), row.Word<Status>("status"), row.Text("source")));
}
