using Trier.Dairy.Quantities;
using Trier.Dairy.Tables;
using Trier.Dairy.Workings;

namespace Trier.Dairy.Heating;

/// <summary>A cooking ramp as printed. Two guides of one style may contradict each other: show both.</summary>
/// <param name="Style">The style.</param>
/// <param name="From">Start.</param>
/// <param name="To">End.</param>
/// <param name="Fastest">Shortest time.</param>
/// <param name="Slowest">Longest time.</param>
/// <param name="Status">How it is known.</param>
/// <param name="Source">The source named in the table.</param>
public sealed record CookingGuide(Style Style, Temperature From, Temperature To, TimeSpan Fastest, TimeSpan Slowest, Status Status, string Source)
{
    /// <summary>The table; card: Tables/cooking_guides.md.</summary>
    public static readonly Listed<CookingGuide> All = EmbeddedTable.Read("cooking_guides", row => new CookingGuide(
        row.Word<Style>("style"),
        Temperature.FromCelsius(row.Number("from_c")),
        Temperature.FromCelsius(row.Number("to_c")),
        TimeSpan.FromMinutes(row.Number("minutes_low")),
        TimeSpan.FromMinutes(row.Number("minutes_high")),
        row.Word<Status>("status"),
        row.Text("source")));
}
