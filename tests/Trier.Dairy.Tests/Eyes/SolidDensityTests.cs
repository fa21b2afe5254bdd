using Trier.Dairy.Eyes;
using Trier.Dairy.Quantities;

namespace Trier.Dairy.Tests.Eyes;

public sealed class SolidDensityTests
{
    [Fact]
    public void Parts_that_are_rounded_to_99_or_101_per_cent_give_the_density_of_the_whole()
    {
        double Of(double scale) => SolidDensity.Of(
            new(Share.FromPercent(38 * scale), Share.FromPercent(27 * scale), Share.FromPercent(30 * scale), Share.FromPercent(1 * scale), Share.FromPercent(4 * scale)),
            Temperature.FromCelsius(12)).OrThrow().Value.Likely.KilogramsPerCubicMetre;
        Assert.Equal(Of(1), Of(0.985), 1e-6);
        Assert.Equal(Of(1), Of(1.015), 1e-6);
    }
}
