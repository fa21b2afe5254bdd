using CsCheck;
using Trier.Dairy.Quantities;
using Trier.Trials.Makes;
using Trier.Trials.Tastings.Serving;

namespace Trier.Trials.Tests.Tastings.Serving;

public sealed class ServingTests
{
    private static readonly SampleSize Fifteen = SampleSize.Create(15, 3, 10, 15).Value;

    /// <summary>Worked by hand: 3 x 1.5^3 cm3 x 1.08 g/cm3 = 10.935 g; 14 plates x 3 x 1.15 = 48.3 cubes.</summary>
    [Fact]
    public void A_sample_has_its_weight_and_its_spare()
    {
        Assert.Equal(10.935, Fifteen.Weight.Grams, 9);
        Assert.Equal(49, Fifteen.CubesFor(14));
        Assert.Equal(0, Fifteen.CubesFor(0));
    }

    /// <summary>Counted by hand on squared paper: a radius of five cubes holds 5 columns of 4, 4, 4, 3 and 0 in a quarter (3-4-5 triangle), 15.</summary>
    [Fact]
    public void Whole_cubes_are_counted_as_on_squared_paper()
    {
        var cut = WheelCut.Create(17, 6.5, Fifteen).Value;
        Assert.Equal(75, cut.PasteRadius.Millimetres, 9);
        Assert.Equal(15, cut.QuarterLayer.Length);
        Assert.Equal(3, cut.Layers);
        Assert.Equal(45, cut.CubesOfAQuarter);
        Assert.Equal([0, 1, 2, 4], new[] { 0, 45, 46, 180 }.Select(cubes => cut.QuartersFor(cubes)!.Value));
        Assert.Null(cut.QuartersFor(181));
    }

    [Fact]
    public void No_more_cubes_come_out_than_there_is_paste_and_every_cube_lies_in_it() =>
        Gen.Select(Gen.Double[6, 60], Gen.Double[4, 30], Gen.Double[8, 40], Gen.Double[0, 20]).Sample((across, tall, cube, trim) =>
        {
            if (!WheelCut.Create(across, tall, SampleSize.Create(cube, 1, trim, 0).Value).TryGet(out var cut)) return;
            var paste = Math.PI * Math.Pow(cut.PasteRadius.Centimetres, 2) * (tall - (trim / 5));
            Assert.True(4 * cut.CubesOfAQuarter * Math.Pow(cube / 10, 3) <= paste + 1e-6);
            Assert.All(cut.QuarterLayer, place => Assert.True(Math.Sqrt(Math.Pow(place.Column + 1, 2) + Math.Pow(place.Row + 1, 2)) * cube <= cut.PasteRadius.Millimetres + 1e-6));
            Assert.Equal(cut.QuarterLayer.Length, cut.QuarterLayer.Distinct().Count());
        }, iter: 500);

    [Fact]
    public void Every_fault_of_the_measures_is_told_at_once()
    {
        Assert.Equal(["cube", "cubes", "trim", "spare"], SampleSize.Create(double.NaN, 0, -1, 101).Problems.Select(problem => problem.Field));
        Assert.Equal(["across", "tall"], WheelCut.Create(3, double.NaN, Fifteen).Problems.Select(problem => problem.Field));
        Assert.Contains("not one whole cube", WheelCut.Create(5, 4, SampleSize.Create(20, 1, 10, 0).Value).Problems.Single().Sentence, StringComparison.Ordinal);
    }

    /// <summary>Worked by hand: tau = 1069 x 2756 x 0.0025 / 8 = 920.68 s; ln(8/3) = 0.98083; 903.0 s = 15.05 minutes.</summary>
    [Fact]
    public void A_cube_warms_by_the_law_of_cooling()
    {
        var (cave, room, goal) = (Temperature.FromCelsius(12), Temperature.FromCelsius(20), Temperature.FromCelsius(17));
        Assert.Equal(15.0504, Tempering.Minutes(Tempering.OfCube(Length.FromMillimetres(15)), cave, room, goal)!.Value, 3);
        Assert.Equal(0, Tempering.Minutes(Tempering.OfCube(Length.FromMillimetres(15)), goal, room, cave));
        Assert.Null(Tempering.Minutes(Tempering.OfCube(Length.FromMillimetres(15)), cave, room, room));
    }

    /// <summary>A whole wheel's V/A is dH/(2d + 4H); a cut face adds surface, so parts warm sooner.</summary>
    [Fact]
    public void A_smaller_part_of_a_wheel_warms_sooner()
    {
        var (across, tall) = (Length.FromCentimetres(15), Length.FromCentimetres(7));
        Assert.Equal(15 * 7 / ((2 * 15) + (4 * 7.0)), Tempering.OfQuarters(across, tall, 4).Centimetres, 9);
        var parts = new[] { 4, 3, 2, 1 }.Select(quarters => Tempering.OfQuarters(across, tall, quarters).Metres).ToList();
        Assert.Equal(parts.OrderDescending(), parts);
    }

    [Theory]
    [InlineData(0, 1)]
    [InlineData(6, 1)]
    [InlineData(7, 2)]
    [InlineData(13, 3)]
    public void A_palate_takes_six_samples_at_once(int samples, int sittings) => Assert.Equal(sittings, Sittings.For(samples));

    [Fact]
    public void Guests_are_told_of_all_wheels_together_and_of_none()
    {
        var lines = GuestLines.Of([Facts("sheep, 40 l, lot 7", "raw", "egg, mustard"), Facts("cow", "pasteurised", "Egg"), Facts("Sheep", null, null)]);
        Assert.Equal(["egg", "mustard"], lines.Allergens);
        Assert.Equal(["pasteurised", "raw"], lines.HeatTreatments);
        Assert.Equal(["cow", "sheep"], lines.Milks);
        Assert.True(lines.TreatmentUnknown);
        Assert.Empty(GuestLines.Of([Facts("10 L", "raw", null)]).Milks);
        Assert.False(GuestLines.Of([Facts("cow", "raw", null)]).TreatmentUnknown);
    }

    private static WheelFacts Facts(string milk, string? heat, string? allergens) => WheelFacts.Of(
    [
        new(WheelFacts.MilkFact, milk), new(WheelFacts.HeatTreatmentFact, heat), new(WheelFacts.AllergensFact, allergens),
    ]);
}
