using Trier.Dairy.Quantities;
using Trier.Dairy.Workings;

namespace Trier.Dairy.Pressing;

/// <summary>Pressure in the press from weight, lever and mould: p = (m L + m0) g/A. Derived.</summary>
/// <remarks>A recipe that names a weight without the mould cannot be compared; compare kPa. Cloth, wall friction and a tilted follower are ignored.</remarks>
public static class PressPressure
{
    private const double StandardGravity = 9.80665;

    /// <summary>The pressure on the cheese.</summary>
    /// <param name="weight">Weight m.</param>
    /// <param name="lever">L: fulcrum to weight over fulcrum to plunger; 1 without a lever.</param>
    /// <param name="follower">m0: follower and arm, at the plunger.</param>
    /// <param name="face">The face A.</param>
    public static Outcome<Pressure> Of(Mass weight, double lever, Mass follower, MouldFace face)
    {
        var gate = new Gate()
            .Check(PressFields.Weight, weight.Kilograms)
            .Check(PressFields.Lever, lever)
            .Check(PressFields.Follower, follower.Kilograms);
        if (gate.Shut) return gate.Refusal<Pressure>();
        var pressure = Pressure.FromPascals(((weight.Kilograms * lever) + follower.Kilograms) * StandardGravity / face.Area.SquareMetres);
        return gate.Answer(pressure, new Working(
            "Pressure in the press",
            "p = (m L + m0) g / A",
            [new("Weight m", weight.Kilograms, "kg"), new("Lever L", lever), new("Follower m0", follower.Kilograms, "kg"), new("Face A", face.Area.SquareCentimetres, "cm2")],
            [new("Pressure", pressure.Kilopascals, "kPa"), new("Pressure", pressure.PoundsPerSquareInch, "psi"), new("Pressure", pressure.KilogramsForcePerSquareCentimetre, "kgf/cm2")],
            Sources.Arithmetic)
        {
            LikelyError = "Friction of follower and lever takes some; 10 % less on the cheese is common (practice).",
        });
    }

    /// <summary>The weight that gives a pressure: m = (p A/g - m0)/L.</summary>
    /// <param name="pressure">Pressure p.</param>
    /// <param name="lever">Lever L.</param>
    /// <param name="follower">Follower m0.</param>
    /// <param name="face">Face A.</param>
    public static Outcome<Mass> WeightFor(Pressure pressure, double lever, Mass follower, MouldFace face)
    {
        var gate = new Gate().Check(PressFields.Lever, lever).Check(PressFields.Follower, follower.Kilograms);
        if (gate.Shut) return gate.Refusal<Mass>();
        var kilograms = ((pressure.Pascals * face.Area.SquareMetres / StandardGravity) - follower.Kilograms) / lever;
        gate.Check(PressFields.Weight, kilograms);
        if (gate.Shut) return gate.Refusal<Mass>();
        return gate.Answer(Mass.FromKilograms(kilograms), new Working(
            "Weight for a pressure",
            "m = (p A / g - m0) / L",
            [new("Pressure p", pressure.Kilopascals, "kPa"), new("Lever L", lever), new("Follower m0", follower.Kilograms, "kg"), new("Face A", face.Area.SquareCentimetres, "cm2")],
            [new("Weight m", kilograms, "kg")],
            Sources.Arithmetic));
    }

    /// <summary>The weight that gives the same pressure on another mould, without lever: m2 = m1 A2/A1.</summary>
    /// <param name="weight">Weight on the first mould.</param>
    /// <param name="from">The first face.</param>
    /// <param name="to">The second face.</param>
    public static Outcome<Mass> SameOnAnotherMould(Mass weight, MouldFace from, MouldFace to)
    {
        var gate = new Gate().Check(PressFields.Weight, weight.Kilograms);
        if (gate.Shut) return gate.Refusal<Mass>();
        var other = weight * (to.Area / from.Area);
        return gate.Answer(other, new Working(
            "Same pressure on another mould",
            "m2 = m1 A2 / A1",
            [new("Weight m1", weight.Kilograms, "kg"), new("Face A1", from.Area.SquareCentimetres, "cm2"), new("Face A2", to.Area.SquareCentimetres, "cm2")],
            [new("Weight m2", other.Kilograms, "kg")],
            Sources.Arithmetic));
    }
}
