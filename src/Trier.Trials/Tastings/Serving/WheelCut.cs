using System.Collections.Immutable;
using Trier.Dairy.Quantities;
using Trier.Trials.Common;

namespace Trier.Trials.Tastings.Serving;

/// <summary>Where in a wheel a cube comes from, by the distance of its middle from the wheel's: brined paste is not alike from rind to heart.</summary>
public enum Zone
{
    /// <summary>The inner third of the way out.</summary>
    Heart,

    /// <summary>The middle third.</summary>
    Between,

    /// <summary>The outer third.</summary>
    Rim,
}

/// <summary>One cube seen from above, in a quarter whose corner is the middle of the wheel.</summary>
/// <param name="Column">Cubes to the right of the corner, from 0.</param>
/// <param name="Row">Cubes away from the corner the other way, from 0.</param>
/// <param name="Zone">Its zone.</param>
public readonly record struct CubePlace(int Column, int Row, Zone Zone);

/// <summary>
/// How a cylinder is cut into whole cubes: a quarter is trimmed of its rind, laid on its face, cut into layers, and each layer along a square grid from the corner.
/// Counted, not estimated: a cube counts only where all of it lies in trimmed paste. What the grid leaves over is crumbs for the kitchen.
/// </summary>
public sealed record WheelCut
{
    private WheelCut(Length across, Length tall, SampleSize size)
    {
        (Across, Tall, Size) = (across, tall, size);
        var cube = size.Cube.Millimetres;
        PasteRadius = Length.FromMillimetres((across.Millimetres / 2) - size.Trim.Millimetres);
        // A layer exactly as tall as the cube must not fall to rounding.
        Layers = (int)Math.Floor(((tall.Millimetres - (2 * size.Trim.Millimetres)) / cube) + 1e-9);
        QuarterLayer = Grid(PasteRadius.Millimetres / cube);
    }

    /// <summary>The wheel's diameter.</summary>
    public Length Across { get; }

    /// <summary>The wheel's height.</summary>
    public Length Tall { get; }

    /// <summary>How samples are cut.</summary>
    public SampleSize Size { get; }

    /// <summary>Radius of the paste, rind off.</summary>
    public Length PasteRadius { get; }

    /// <summary>Whole layers of cubes, one above the other.</summary>
    public int Layers { get; }

    /// <summary>The cubes of one layer of a quarter.</summary>
    public ImmutableArray<CubePlace> QuarterLayer { get; }

    /// <summary>Cubes a quarter of the wheel gives.</summary>
    public int CubesOfAQuarter => Layers * QuarterLayer.Length;

    /// <summary>Quarters to cut for some cubes, 0 to 4; null where the whole wheel does not give as many.</summary>
    /// <param name="cubes">0 or more.</param>
    public int? QuartersFor(int cubes) => cubes <= 0 ? 0 : CubesOfAQuarter == 0 || cubes > 4 * CubesOfAQuarter ? null : (cubes + CubesOfAQuarter - 1) / CubesOfAQuarter;

    /// <summary>A wheel by its measures.</summary>
    /// <param name="acrossCentimetres">4 to 80.</param>
    /// <param name="tallCentimetres">2 to 40.</param>
    /// <param name="size">How samples are cut.</param>
    public static Outcome<WheelCut> Create(double acrossCentimetres, double tallCentimetres, SampleSize size)
    {
        var problems = new List<Problem>();
        if (acrossCentimetres is not (>= 4 and <= 80)) problems.Add(new("across", "A wheel is between 4 and 80 cm across."));
        if (tallCentimetres is not (>= 2 and <= 40)) problems.Add(new("tall", "A wheel is between 2 and 40 cm tall."));
        if (problems.Count > 0) return Outcome.Fault<WheelCut>(problems);
        var cut = new WheelCut(Length.FromCentimetres(acrossCentimetres), Length.FromCentimetres(tallCentimetres), size);
        return cut.CubesOfAQuarter == 0 ? Outcome.Fault<WheelCut>("cube", "Once the rind is off, not one whole cube of this size is left: cut smaller cubes or less rind.") : Outcome.Of(cut);
    }

    private static ImmutableArray<CubePlace> Grid(double radius)
    {
        var cubes = ImmutableArray.CreateBuilder<CubePlace>();
        for (var row = 0; row < radius; row++)
        {
            for (var column = 0; column < radius; column++)
            {
                double farColumn = column + 1, farRow = row + 1;
                if ((farColumn * farColumn) + (farRow * farRow) > (radius * radius) + 1e-9) break;
                var away = Math.Sqrt(((column + .5) * (column + .5)) + ((row + .5) * (row + .5))) / radius;
                cubes.Add(new(column, row, away < 1.0 / 3 ? Zone.Heart : away < 2.0 / 3 ? Zone.Between : Zone.Rim));
            }
        }

        return cubes.ToImmutable();
    }
}
