namespace Trier.Publishing.Charts;

/// <summary>
/// How a wheel is drawn: shape tells the recipe, fill tells which wheel of it, tone helps the eye in a rack.
/// Shape and fill alone part any two wheels of a trial, up to eight recipes of three wheels.
/// </summary>
public sealed record WheelLook
{
    /// <summary>The number of shapes and of tones.</summary>
    public const int Count = 8;

    /// <summary>Makes a look.</summary>
    /// <param name="shape">1 disc, 2 lozenge, 3 block, 4 wedge, 5 drum, 6 log, 7 hex, 8 cross.</param>
    /// <param name="fill">Which wheel of the recipe.</param>
    /// <param name="tone">1 butter, 2 river, 3 crust, 4 ash, 5 plum, 6 bark, 7 curd, 8 soot; the shape's own where null.</param>
    /// <exception cref="ArgumentOutOfRangeException">Shape or tone is not from 1 to 8.</exception>
    public WheelLook(int shape, WheelFill fill = WheelFill.Solid, int? tone = null)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(shape, 1);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(shape, Count);
        Shape = shape;
        Fill = fill;
        Tone = tone ?? shape;
        ArgumentOutOfRangeException.ThrowIfLessThan(Tone, 1, nameof(tone));
        ArgumentOutOfRangeException.ThrowIfGreaterThan(Tone, Count, nameof(tone));
    }

    /// <summary>The shape, 1 to 8.</summary>
    public int Shape { get; }

    /// <summary>The fill.</summary>
    public WheelFill Fill { get; }

    /// <summary>The tone, 1 to 8.</summary>
    public int Tone { get; }

    /// <summary>The same wheel under its second code.</summary>
    public WheelLook Again => new(Shape, WheelFill.Dot, Tone);
}
