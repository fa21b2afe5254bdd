using CsCheck;
using Trier.Trials.Makes.Sheets;

namespace Trier.Trials.Tests.Makes.Sheets;

public sealed class FigureTextTests
{
    [Theory]
    [InlineData(Measure.Mass, 0.000002, "2 mg", "2 mg")]
    [InlineData(Measure.Mass, 0.0206, "20.6 g", "0.727 oz (20.6 g)")]
    [InlineData(Measure.Mass, 1.859, "1.86 kg", "4.1 lb")]
    [InlineData(Measure.Volume, 0.004, "4 mL", "0.812 tsp (4 mL)")]
    [InlineData(Measure.Volume, 0.473176473, "473 mL", "16 fl oz")]
    [InlineData(Measure.Volume, 20, "20 L", "5.28 gal")]
    [InlineData(Measure.Temperature, 52, "52 °C", "125.6 °F")]
    [InlineData(Measure.Pressure, 23.76, "23.8 kPa", "3.45 psi")]
    [InlineData(Measure.Time, 32.5, "32 min", "32 min")]
    [InlineData(Measure.Time, 840, "14 h", "14 h")]
    [InlineData(Measure.Length, 8.04, "8 cm", "3.17 in")]
    public void A_quantity_is_written_in_the_maker_s_units(Measure measure, double value, string metric, string customary)
    {
        Assert.Equal(metric, FigureText.Write(measure, value, UnitSystem.Metric));
        Assert.Equal(customary, FigureText.Write(measure, value, UnitSystem.UsCustomary));
        Assert.Equal(metric.Replace('.', ','), FigureText.Write(measure, value, UnitSystem.Metric, ','));
    }

    [Theory]
    [InlineData(0.004, "3/4 tsp, 8 % too little")]
    [InlineData(0.00493, "1 tsp")]
    [InlineData(0.0066, "1 3/8 tsp, 3 % too much")]
    public void A_spoon_tells_its_rounding(double litres, string words) => Assert.Equal(words, Spoonful.Nearest(litres)!.InWords());

    [Fact]
    public void A_spoon_is_never_further_off_than_half_an_eighth()
    {
        Assert.Null(Spoonful.Nearest(0.0002));
        Assert.Null(Spoonful.Nearest(0.05));
        Gen.Double[0.00031, 0.0295].Sample(litres => Math.Abs(Spoonful.Nearest(litres)!.Off) * litres <= 0.00492892159375 / 16 + 1e-12);
    }
}
