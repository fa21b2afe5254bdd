using CsCheck;
using Trier.Dairy.Brine;
using Trier.Dairy.Quantities;
using Trier.Dairy.Tests.Reference;

namespace Trier.Dairy.Tests.Brine;

public sealed class FiniteCylinderTests
{
    private static readonly Gen<WheelSize> Wheels = Gen.Double[6, 60].Select(Gen.Double[3, 20], Size);

    private static readonly Gen<Diffusivity> Diffusivities = Gen.Double[0.5, 6].Select(d => Diffusivity.FromSquareMetresPerSecond(d * 1e-10));

    [Theory]
    [InlineData(16, 8, 2.3, 12, 0.25)]
    [InlineData(12, 6, 1.0, 24, 0.25)]
    [InlineData(12, 6, 2.3, 24 * 30, 0.5)]
    [InlineData(30, 4, 5.3, 24 * 10, 0.5)]
    public void The_series_agrees_with_a_finite_difference_solution(double diameter, double height, double d, double hours, double stepMillimetres)
    {
        var series = FiniteCylinder.Uptake(Size(diameter, height), Diffusivity.FromSquareMetresPerSecond(d * 1e-10), TimeSpan.FromHours(hours));
        var grid = CylinderByFiniteDifferences.Uptake(diameter / 200, height / 100, d * 1e-10, hours * 3600, stepMillimetres / 1000);
        Assert.InRange(series - grid, -0.001, 0.001);
    }

    [Fact]
    public void Uptake_grows_with_time_and_stays_between_nothing_and_all() =>
        Wheels.Select(Diffusivities, Gen.Double[0.01, 5000], Gen.Double[1.001, 3]).Sample((wheel, d, hours, longer) =>
        {
            var early = FiniteCylinder.Uptake(wheel, d, TimeSpan.FromHours(hours));
            var late = FiniteCylinder.Uptake(wheel, d, TimeSpan.FromHours(hours * longer));
            return early > 0 && early <= late && late <= 1;
        });

    [Fact]
    public void The_time_for_an_uptake_gives_that_uptake() =>
        Wheels.Select(Diffusivities, Gen.Double[0.01, 0.95]).Sample((wheel, d, uptake) =>
            Math.Abs(FiniteCylinder.Uptake(wheel, d, FiniteCylinder.TimeFor(wheel, d, uptake)) - uptake) < 1e-7);

    [Fact]
    public void Short_time_forms_meet_the_series_without_a_step()
    {
        Assert.InRange(FiniteCylinder.Slab(0.02 + 1e-9) - FiniteCylinder.Slab(0.02), 0, 1e-7);
        Assert.InRange(FiniteCylinder.Cylinder(1e-3 + 1e-9) - FiniteCylinder.Cylinder(1e-3), 0, 1e-7);
    }

    [Fact]
    public void A_wheel_and_one_twice_as_large_in_each_direction_differ_by_four_in_time() =>
        Wheels.Select(Diffusivities, Gen.Double[0.02, 0.9]).Sample((wheel, d, uptake) =>
        {
            var large = Size(wheel.Diameter.Centimetres * 2, wheel.Height.Centimetres * 2);
            return Math.Abs((FiniteCylinder.TimeFor(large, d, uptake) / FiniteCylinder.TimeFor(wheel, d, uptake)) - 4) < 1e-5;
        });

    private static WheelSize Size(double diameter, double height) =>
        WheelSize.Create(Length.FromCentimetres(diameter), Length.FromCentimetres(height)).OrThrow().Value;
}
