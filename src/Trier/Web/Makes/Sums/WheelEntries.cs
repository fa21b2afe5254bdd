using Trier.Dairy.Brine;
using Trier.Dairy.Quantities;
using Trier.Dairy.Tables;
using Trier.Trials.Makes.Recipes;

namespace Trier.Web.Makes.Sums;

/// <summary>A wheel's size and the style its salt spreads by.</summary>
internal static class WheelEntries
{
    public static readonly SumField Style = SumField.Choice("style", "Style", [.. SaltDiffusivity.All.Select(row => (StyleWords.Key(row.Style), StyleWords.Key(row.Style)))]);

    public static SaltDiffusivity Table(this SumWork work) => SaltDiffusivity.Of(StyleWords.Named(work.Chosen(Style.Key)) ?? Trier.Dairy.Tables.Style.OtherPressed);

    public static WheelSize? Size(this SumWork work, string diameter, string height) =>
        work.Take(WheelSize.Create(Length.FromCentimetres(work[diameter]), Length.FromCentimetres(work[height])), diameter)?.Value;
}
