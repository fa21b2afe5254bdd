using Trier.Dairy.Brine;
using Trier.Dairy.Quantities;
using Trier.Dairy.Workings;

namespace Trier.Dairy.Eyes;

/// <summary>Void from mass and size, and what swelling does to a wheel. All derived.</summary>
public static class Swelling
{
    /// <summary>Below this a void fraction is not told from none.</summary>
    public const double Smallest = 0.03;

    /// <summary>f = 1 - m/(V rho). With 1 mm in height and in diameter and 1 % in density the error is about 0.017.</summary>
    /// <param name="mass">Mass of the wheel.</param>
    /// <param name="size">Its size.</param>
    /// <param name="solid">Density without holes.</param>
    /// <param name="domes">Volume of domes on top of the cylinder, if any.</param>
    public static Outcome<Estimate<double>> VoidFraction(Mass mass, WheelSize size, Density solid, Volume domes = default)
    {
        var gate = new Gate()
            .Check(Composition.CompositionFields.CheeseMass, mass.Kilograms)
            .Check(EyeFields.SolidDensity, solid.KilogramsPerCubicMetre);
        if (gate.Shut) return gate.Refusal<Estimate<double>>();
        var voids = 1 - (mass.Kilograms / ((size.Volume + domes).Litres * solid.KilogramsPerLitre));
        var error = Uncertainty(voids, size, Length.FromMillimetres(1), Length.FromMillimetres(1), 0.01);
        if (voids + (3 * error) < 0)
            gate.Ask(EyeFields.Void, "The wheel is heavier than solid cheese of its size: check mass, diameter and height.");
        else if (voids < Smallest)
            gate.Ask(EyeFields.Void, "Below 3 % a void cannot be told from none by mass and size.");
        return gate.Answer(Estimate.Between(voids - error, voids, voids + error), new Working(
            "Void fraction",
            "f = 1 - m / (V rho)",
            [new("Mass m", mass.Kilograms, "kg"), new("Volume V", (size.Volume + domes).CubicCentimetres, "cm3"), new("Density rho", solid.KilogramsPerCubicMetre, "kg/m3")],
            [new("Void f", voids), new("Bulk density", mass.Kilograms / (size.Volume + domes).CubicMetres, "kg/m3")],
            Sources.Arithmetic)
        {
            LikelyError = "1 mm in height, 1 mm in diameter and 1 % in density together: about 0.017.",
        });
    }

    /// <summary>Standard error of a void fraction: (1 - f) sqrt((dH/H)^2 + (2 dd/d)^2 + (drho/rho)^2).</summary>
    /// <param name="voids">f.</param>
    /// <param name="size">The wheel.</param>
    /// <param name="heightError">Error of the height.</param>
    /// <param name="diameterError">Error of the diameter.</param>
    /// <param name="densityError">Relative error of the density.</param>
    public static double Uncertainty(double voids, WheelSize size, Length heightError, Length diameterError, double densityError)
    {
        var height = heightError / size.Height;
        var width = 2 * (diameterError / size.Diameter);
        return (1 - voids) * Math.Sqrt((height * height) + (width * width) + (densityError * densityError));
    }

    /// <summary>Volume of two domes: 2 x pi h (3 a^2 + h^2)/6.</summary>
    /// <param name="size">The wheel, for its radius a.</param>
    /// <param name="rise">Rise h of each face.</param>
    public static Outcome<Volume> Domes(WheelSize size, Length rise)
    {
        var gate = new Gate().Check(EyeFields.Dome, rise.Millimetres);
        if (gate.Shut) return gate.Refusal<Volume>();
        var (a, h) = (size.Diameter.Metres / 2, rise.Metres);
        var volume = Volume.FromCubicMetres(Math.PI * h * ((3 * a * a) + (h * h)) / 3);
        return gate.Answer(volume, new Working("Volume of both domes", "V = 2 pi h (3 a^2 + h^2) / 6", [new("Rise h", rise.Millimetres, "mm"), new("Radius a", 100 * a, "cm")], [new("Volume", volume.CubicCentimetres, "cm3")], Sources.Arithmetic));
    }

    /// <summary>Height of a wheel of fixed diameter once it holds a void: H/(1 - f).</summary>
    /// <param name="solidHeight">Height without holes.</param>
    /// <param name="voids">Void fraction.</param>
    public static Outcome<Length> HeightFor(Length solidHeight, double voids)
    {
        var gate = new Gate().Check(BrineFields.Height, solidHeight.Centimetres).Check(EyeFields.Void, voids);
        if (gate.Shut) return gate.Refusal<Length>();
        var height = solidHeight * (1 / (1 - voids));
        return gate.Answer(height, new Working("Height with a void", "H' = H / (1 - f)", [new("Height H", solidHeight.Centimetres, "cm"), new("Void f", voids)], [new("Height", height.Centimetres, "cm")], Sources.Arithmetic));
    }
}
