using System.Globalization;
using Trier.Dairy.Quantities;
using Trier.TestKit;
using Trier.Trials.Tastings.Serving;

namespace Trier.Trials.Tests.Tastings.Serving;

/// <summary>
/// The worked examples of serving, from the same table as those of the dairy room: small pieces that warm from 4 to 18 °C in air of 21 °C (Newton's law, heat capacity
/// of the composition read in code listings, still air from memory), and the mass of cubes (arithmetic on 1.08 g/cm3).
/// </summary>
public sealed class WorkedServingTests
{
    private static readonly Dictionary<string, string[]> Rows = File.ReadAllLines(Path.Combine(Checkout.Root, "tests", "Trier.Dairy.Tests", "Checks", "worked_examples.csv"))
        .Where(line => line.StartsWith('T') && !line.Contains('"', StringComparison.Ordinal)).Select(line => line.Split(',')).ToDictionary(cells => cells[0], StringComparer.Ordinal);

    public static TheoryData<string> Pieces => ["T1", "T1b", "T1c", "T1d"];

    public static TheoryData<string> Cubes => ["T5", "T5b", "T5c"];

    [Theory]
    [MemberData(nameof(Pieces))]
    public void A_small_piece_warms_in_the_worked_time(string id)
    {
        var volumeOverSurface = id switch
        {
            "T1" => Tempering.OfCube(Length.FromMillimetres(15)),
            "T1b" => Tempering.OfCube(Length.FromMillimetres(20)),
            // A slice of 5 mm, both faces free, and one that lies on a plate.
            "T1c" => Length.FromMillimetres(2.5),
            _ => Length.FromMillimetres(5),
        };
        Met(id, Tempering.Minutes(volumeOverSurface, Temperature.FromCelsius(4), Temperature.FromCelsius(21), Temperature.FromCelsius(18))!.Value);
    }

    [Theory]
    [MemberData(nameof(Cubes))]
    public void A_cube_weighs_what_was_worked_out(string id)
    {
        var grams = SampleSize.Create(id == "T5b" ? 20 : 15, 1, 0, 0).Value.Weight.Grams;
        Met(id, id == "T5c" ? 1500 / grams : grams);
    }

    private static void Met(string id, double found)
    {
        var row = Rows[id];
        Assert.InRange(found, Number(row[2]) - Number(row[4]), Number(row[2]) + Number(row[4]));
    }

    private static double Number(string text) => double.Parse(text, CultureInfo.InvariantCulture);
}
