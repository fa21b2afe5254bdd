using Trier.Dairy.Tables;
using Trier.Dairy.Workings;

namespace Trier.Dairy.Milk;

/// <summary>The rows of the milk density table and the interpolation between them.</summary>
internal static class MilkDensityTable
{
    private static readonly double[] Celsius = [4.4, 10, 20, 38.9];

    private static readonly Listed<(double Fat, double[] Density)> Rows = EmbeddedTable.Read(
        "milk_density",
        row => (row.Number("fat_pct"), new[] { row.Number("t4_4"), row.Number("t10"), row.Number("t20"), row.Number("t38_9") }));

    public static double RichestFat => Rows[^1].Fat;

    public static double At(double fat, double celsius)
    {
        var upper = Rows.Count - 1;
        while (upper > 1 && Rows[upper - 1].Fat >= fat) upper--;
        var (lean, rich) = (Rows[upper - 1], Rows[upper]);
        var share = Math.Clamp((fat - lean.Fat) / (rich.Fat - lean.Fat), 0, 1);
        return ((1 - share) * Across(lean.Density, celsius)) + (share * Across(rich.Density, celsius));
    }

    private static double Across(double[] densities, double celsius)
    {
        var right = 1;
        while (right < Celsius.Length - 1 && celsius > Celsius[right]) right++;
        var share = (celsius - Celsius[right - 1]) / (Celsius[right] - Celsius[right - 1]);
        return densities[right - 1] + (share * (densities[right] - densities[right - 1]));
    }
}
