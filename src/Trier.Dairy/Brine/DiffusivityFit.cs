using Trier.Dairy.Quantities;
using Trier.Dairy.Workings;

namespace Trier.Dairy.Brine;

/// <summary>A wheel that was brined and whose mean salt is known.</summary>
/// <param name="Size">The wheel.</param>
/// <param name="Moisture">Its moisture.</param>
/// <param name="Brine">Strength of the brine, up to 22 %.</param>
/// <param name="Time">Time in brine, up to 48 h.</param>
/// <param name="Salt">Mean salt found, with its band.</param>
public sealed record SaltedWheel(WheelSize Size, Share Moisture, Share Brine, TimeSpan Time, Estimate<Share> Salt);

/// <summary>The maker's own D: the value at which the model gives each wheel its measured salt; the geometric mean over wheels.</summary>
/// <remarks>Derived, on <see cref="FiniteCylinder"/>. The band is the wider of the measurements' own band and the spread between wheels.</remarks>
public static class DiffusivityFit
{
    /// <summary>Fits D to one or more salted wheels.</summary>
    /// <param name="wheels">At least one.</param>
    public static Outcome<Estimate<Diffusivity>> Of(Listed<SaltedWheel> wheels)
    {
        var gate = new Gate();
        if (wheels.Count == 0) gate.Refuse(ProblemKind.NotEnough, BrineFields.SaltWanted, "No salted wheel is given; one with its salt measured is enough to start.");
        foreach (var wheel in wheels)
        {
            gate.Check(Composition.CompositionFields.Moisture, wheel.Moisture.Percent)
                .Check(BrineFields.Strength, wheel.Brine.Percent)
                .Check(BrineFields.Hours, wheel.Time.TotalHours)
                .Check(BrineFields.SaltWanted, wheel.Salt.Low.Percent);
            if (!gate.Shut && wheel.Salt.High.Fraction >= BriningTime.Full(wheel.Moisture, wheel.Brine))
                gate.Refuse(ProblemKind.Contradiction, BrineFields.SaltWanted, $"Salt found is up to {Field.Number(wheel.Salt.High.Percent)} %, more than this brine can bring into this cheese.");
            if (!gate.Shut && (BriningTime.IsTooStrong(wheel.Brine) || wheel.Time.TotalHours > 48))
                gate.Refuse(ProblemKind.OutsideTheDomain, BrineFields.Strength, $"A wheel was salted at {Field.Number(wheel.Brine.Percent)} % for {Field.Number(wheel.Time.TotalHours)} h; the model is fitted to at most 22 % and 48 h.");
        }

        if (gate.Shut) return gate.Refusal<Estimate<Diffusivity>>();
        var fitted = wheels.Select(wheel => Math.Log(Solve(wheel, wheel.Salt.Likely))).ToArray();
        var middle = fitted.Average();
        var low = wheels.Average(wheel => Math.Log(Solve(wheel, wheel.Salt.Low)));
        var high = wheels.Average(wheel => Math.Log(Solve(wheel, wheel.Salt.High)));
        var spread = fitted.Length < 2 ? 0 : Math.Sqrt(fitted.Sum(value => (value - middle) * (value - middle)) / (fitted.Length - 1));
        var band = Estimate.Between(
            Make(Math.Min(low, middle - spread)),
            Make(middle),
            Make(Math.Max(high, middle + spread)));
        gate.Check(BrineFields.Diffusivity, band.Likely.SquareMetresPerSecond * 1e10);
        if (gate.Shut) return gate.Refusal<Estimate<Diffusivity>>();
        return gate.Answer(band, new Working(
            "Your own diffusivity of salt",
            "D where E(D, t) s/(1 - s) x moisture = salt found; geometric mean over wheels",
            [new("Wheels", wheels.Count)],
            [new("D", band.Likely.SquareMetresPerSecond * 1e10, "1e-10 m2/s"), new("from", band.Low.SquareMetresPerSecond * 1e10, "1e-10 m2/s"), new("to", band.High.SquareMetresPerSecond * 1e10, "1e-10 m2/s")],
            Sources.Crank)
        {
            Domain = "Same cheese, same temperature, brine to 22 %, to 48 h",
            LikelyError = "D goes with the square of the salt: 10 % off in salt is 20 % off in D.",
        });
    }

    /// <summary>
    /// Salt taken, from what a wheel lost in brine: it gains a and loses w = r a, so a = loss/(r - 1). With r = 2, 1.5 to 2.4 (near the surface 2.4
    /// falling to 0.5 inside after days [GuineeFox1983], read): a rough estimate, for want of an analysis.
    /// </summary>
    /// <param name="before">Mass before brining.</param>
    /// <param name="after">Mass after, dripped dry; below the mass before.</param>
    public static Outcome<Estimate<Mass>> SaltFromLoss(Mass before, Mass after)
    {
        var gate = new Gate()
            .Check(Composition.CompositionFields.CheeseMass, before.Kilograms)
            .Check(Composition.CompositionFields.CheeseMass, after.Kilograms);
        var loss = before - after;
        if (!gate.Shut && loss.Kilograms <= 0)
            gate.Refuse(ProblemKind.Contradiction, Composition.CompositionFields.CheeseMass, $"The wheel went from {Field.Number(before.Kilograms)} to {Field.Number(after.Kilograms)} kg; in brine a wheel gets lighter, so this says nothing about salt.");
        if (gate.Shut) return gate.Refusal<Estimate<Mass>>();
        var salt = Estimate.Between(loss * (1 / 1.4), loss, loss * 2);
        return gate.Answer(salt, new Working(
            "Salt taken, from the loss of mass in brine",
            "a = (m1 - m2) / (r - 1), r = 2 (1.5 to 2.4)",
            [new("Before m1", before.Kilograms, "kg"), new("After m2", after.Kilograms, "kg")],
            [new("Salt taken", salt.Likely.Grams, "g"), new("from", salt.Low.Grams, "g"), new("to", salt.High.Grams, "g")],
            Sources.GuineeFox)
        {
            LikelyError = "A factor of 2; an analysis of the salt is far better.",
        });
    }

    private static Diffusivity Make(double logarithm) => Diffusivity.FromSquareMetresPerSecond(Math.Exp(logarithm));

    // D and t enter only as their product, so the time for D = 1e-10 gives D at once.
    private static double Solve(SaltedWheel wheel, Share salt)
    {
        const double unit = 1e-10;
        var time = FiniteCylinder.TimeFor(wheel.Size, Diffusivity.FromSquareMetresPerSecond(unit), salt.Fraction / BriningTime.Full(wheel.Moisture, wheel.Brine));
        return unit * (time / wheel.Time);
    }
}
