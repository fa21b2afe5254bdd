using Trier.Dairy.Quantities;
using Trier.Dairy.Workings;

namespace Trier.Dairy.Milk;

/// <summary>Litres of milk to kilograms and back, at the temperature at which the volume was read. m = V rho; derived.</summary>
public static class MilkAmount
{
    /// <summary>The mass of a measured volume.</summary>
    /// <param name="milk">The milk.</param>
    /// <param name="volume">The volume as read.</param>
    /// <param name="at">The temperature at which it was read, 0 to 38.9 C.</param>
    public static Outcome<Mass> MassOf(MilkComposition milk, Volume volume, Temperature at)
    {
        var gate = new Gate().Check(MilkFields.MilkVolume, volume.Litres);
        var density = gate.Take(MilkDensity.Of(milk, at));
        if (gate.Shut) return gate.Refusal<Mass>();
        var mass = Mass.FromKilograms(volume.Litres * density.KilogramsPerLitre);
        return gate.Answer(mass, new Working(
            "Mass of the milk",
            "m = V rho",
            [new("Volume V", volume.Litres, "L"), new("Density rho", density.KilogramsPerLitre, "kg/L")],
            [new("Mass", mass.Kilograms, "kg")],
            Sources.Arithmetic)
        {
            LikelyError = "The reading of the volume is the larger error: a mark on a pot is rarely better than 2 %.",
        });
    }

    /// <summary>The volume a weighed milk fills.</summary>
    /// <param name="milk">The milk.</param>
    /// <param name="mass">The mass.</param>
    /// <param name="at">The temperature, 0 to 38.9 C.</param>
    public static Outcome<Volume> VolumeOf(MilkComposition milk, Mass mass, Temperature at)
    {
        var gate = new Gate().Check(MilkFields.MilkMass, mass.Kilograms);
        var density = gate.Take(MilkDensity.Of(milk, at));
        if (gate.Shut) return gate.Refusal<Volume>();
        var volume = Volume.FromLitres(mass.Kilograms / density.KilogramsPerLitre);
        return gate.Answer(volume, new Working(
            "Volume of the milk",
            "V = m / rho",
            [new("Mass m", mass.Kilograms, "kg"), new("Density rho", density.KilogramsPerLitre, "kg/L")],
            [new("Volume", volume.Litres, "L")],
            Sources.Arithmetic));
    }
}
