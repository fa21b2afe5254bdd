using Trier.Dairy.Quantities;
using Trier.Dairy.Workings;

namespace Trier.Dairy.Brine;

/// <summary>A wheel as a flat cylinder.</summary>
public sealed record WheelSize
{
    private WheelSize(Length diameter, Length height)
    {
        Diameter = diameter;
        Height = height;
    }

    /// <summary>Diameter.</summary>
    public Length Diameter { get; }

    /// <summary>Height.</summary>
    public Length Height { get; }

    /// <summary>V = pi d^2 H/4.</summary>
    public Volume Volume => Volume.FromCubicMetres(Math.PI * Diameter.Metres * Diameter.Metres * Height.Metres / 4);

    /// <summary>V/A, volume over whole surface: what brining time goes with, squared.</summary>
    public Length VolumeOverSurface => Length.FromMetres(Diameter.Metres * Height.Metres / ((2 * Diameter.Metres) + (4 * Height.Metres)));

    /// <summary>A wheel by its size.</summary>
    /// <param name="diameter">Diameter, above 0 to 200 cm.</param>
    /// <param name="height">Height, above 0 to 100 cm.</param>
    public static Outcome<WheelSize> Create(Length diameter, Length height)
    {
        var gate = new Gate().Check(BrineFields.Diameter, diameter.Centimetres).Check(BrineFields.Height, height.Centimetres);
        if (gate.Shut) return gate.Refusal<WheelSize>();
        if (height > diameter) gate.Ask(BrineFields.Height, $"Height of the wheel is {BrineFields.Height.Show(height.Centimetres)}, more than its diameter: are the two swapped?");
        var size = new WheelSize(diameter, height);
        return gate.Answer(size, new Working(
            "Size of the wheel",
            "V = pi d^2 H / 4",
            [new("Diameter d", diameter.Centimetres, "cm"), new("Height H", height.Centimetres, "cm")],
            [new("Volume", size.Volume.CubicCentimetres, "cm3"), new("Volume over surface", size.VolumeOverSurface.Millimetres, "mm")],
            Sources.Arithmetic));
    }
}
