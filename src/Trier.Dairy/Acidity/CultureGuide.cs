using Trier.Dairy.Quantities;
using Trier.Dairy.Tables;
using Trier.Dairy.Workings;

namespace Trier.Dairy.Acidity;

/// <summary>A bulk culture dose met in texts.</summary>
/// <param name="Style">The style.</param>
/// <param name="Culture">The culture in words.</param>
/// <param name="OfMilk">The dose as a part of the milk.</param>
/// <param name="Status">How it is known.</param>
/// <param name="Source">The source named in the table.</param>
public sealed record CultureGuide(Style Style, string Culture, Share OfMilk, Status Status, string Source)
{
    /// <summary>The table; card: Tables/culture_doses.md.</summary>
    public static readonly Listed<CultureGuide> All = EmbeddedTable.Read("culture_doses", row => new CultureGuide(
        row.Word<Style>("style"), row.Text("culture"), Share.FromPercent(row.Number("percent_of_milk")), row.Word<Status>("status"), row.Text("source")));
}
