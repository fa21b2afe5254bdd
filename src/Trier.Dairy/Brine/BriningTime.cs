using Trier.Dairy.Quantities;
using Trier.Dairy.Workings;

namespace Trier.Dairy.Brine;

/// <summary>How long in brine: two answers side by side.</summary>
/// <param name="ByDiffusion">By diffusion for the band of D; null outside the model's domain (the questions say why).</param>
/// <param name="ByRule">By the rule of one hour a pound an inch.</param>
/// <param name="TheyPart">Whether the rule lies outside the band of the model.</param>
public sealed record BriningPlan(Estimate<TimeSpan>? ByDiffusion, TimeSpan ByRule, bool TheyPart);

/// <summary>Brining time and salt uptake by diffusion in the moisture of a finite cylinder, and by the rule of thumb.</summary>
/// <remarks>
/// Mean S/M = E s/(1 - s), salt = S/M x moisture. Model: surface at once at brine strength, moisture constant, no rind barrier. Domain: up to about 22 %
/// and 48 h, as saturated brine closes the rind and salts less [Melilli], read. Take the answer as a lower bound in time, within a factor of 2; too
/// little salt is the unsafe side, so show the band. Fit the cheese's own D: <see cref="DiffusivityFit"/>.
/// </remarks>
public static class BriningTime
{
    /// <summary>Above this strength the model is not used.</summary>
    public const double StrongestPercent = 22;

    private const double LongestHours = 48;

    /// <summary>Mean salt of the cheese after a time in brine.</summary>
    /// <param name="size">The wheel.</param>
    /// <param name="moisture">Moisture of the cheese.</param>
    /// <param name="brine">Strength of the brine, up to 22 %.</param>
    /// <param name="time">Time in brine, up to 48 h.</param>
    /// <param name="diffusivity">D with its band.</param>
    public static Outcome<Estimate<Share>> SaltAfter(WheelSize size, Share moisture, Share brine, TimeSpan time, Estimate<Diffusivity> diffusivity)
    {
        var gate = Inputs(moisture, brine, diffusivity).Check(BrineFields.Hours, time.TotalHours);
        if (!gate.Shut && IsTooStrong(brine)) gate.Refuse(ProblemKind.OutsideTheDomain, BrineFields.Strength, TooStrong(brine));
        if (!gate.Shut && time.TotalHours > LongestHours) gate.Refuse(ProblemKind.OutsideTheDomain, BrineFields.Hours, TooLong(time));
        if (gate.Shut) return gate.Refusal<Estimate<Share>>();
        var salt = Estimate.Between(At(diffusivity.Low), At(diffusivity.Likely), At(diffusivity.High));
        return gate.Answer(salt, new Working(
            "Salt taken up in brine",
            "salt = E(t) s/(1 - s) x moisture",
            [.. Given(size, moisture, brine, diffusivity), new("Time", time.TotalHours, "h")],
            [new("Salt", salt.Likely.Percent, "%"), new("from", salt.Low.Percent, "%"), new("to", salt.High.Percent, "%")],
            Sources.Crank)
        {
            Domain = "Brine to 22 %, to 48 h",
            LikelyError = "The band is that of D; the model tends to say too much salt.",
            AlsoFrom = [Sources.Floury, Sources.Melilli],
        });
        Share At(Diffusivity d) => Share.FromFraction(FiniteCylinder.Uptake(size, d, time) * Full(moisture, brine));
    }

    /// <summary>The time to a salt content, beside the rule of thumb.</summary>
    /// <param name="size">The wheel.</param>
    /// <param name="mass">Its mass, for the rule.</param>
    /// <param name="moisture">Moisture of the cheese.</param>
    /// <param name="brine">Strength of the brine.</param>
    /// <param name="salt">Salt wanted, per cent of the cheese.</param>
    /// <param name="diffusivity">D with its band.</param>
    public static Outcome<BriningPlan> Plan(WheelSize size, Mass mass, Share moisture, Share brine, Share salt, Estimate<Diffusivity> diffusivity)
    {
        var gate = Inputs(moisture, brine, diffusivity)
            .Check(BrineFields.SaltWanted, salt.Percent)
            .Check(Composition.CompositionFields.CheeseMass, mass.Kilograms);
        var uptake = salt.Fraction / Full(moisture, brine);
        if (!gate.Shut && uptake >= 1)
            gate.Refuse(ProblemKind.Contradiction, BrineFields.SaltWanted, $"Salt wanted is {BrineFields.SaltWanted.Show(salt.Percent)}; this brine could bring this cheese to {Field.Number(100 * Full(moisture, brine))} % at most, after a very long time.");
        if (gate.Shut) return gate.Refusal<BriningPlan>();
        var rule = RuleOfThumb(mass, size.Height);
        Estimate<TimeSpan>? byDiffusion = Estimate.Between(Time(diffusivity.High), Time(diffusivity.Likely), Time(diffusivity.Low));
        if (IsTooStrong(brine))
        {
            gate.Ask(BrineFields.Strength, TooStrong(brine));
            byDiffusion = null;
        }
        else if (byDiffusion.Value.Likely.TotalHours > LongestHours)
        {
            gate.Ask(BrineFields.Hours, TooLong(byDiffusion.Value.Likely));
            byDiffusion = null;
        }

        var part = byDiffusion is { } band && (rule < band.Low || rule > band.High);
        if (part)
            gate.Ask(BrineFields.Hours, $"The rule of thumb says {Hours(rule)} h, the diffusion model {Hours(byDiffusion!.Value.Low)} to {Hours(byDiffusion.Value.High)} h: the rule goes with mass times height, diffusion with (V/A) squared, and they part for wheels of this size.");
        return gate.Answer(new BriningPlan(byDiffusion, rule, part), new Working(
            "Time in brine",
            "t where E(t) s/(1 - s) x moisture = salt; rule: hours = lb x in",
            [.. Given(size, moisture, brine, diffusivity), new("Salt wanted", salt.Percent, "%"), new("Mass", mass.Kilograms, "kg")],
            byDiffusion is { } shown
                ? [new("By diffusion", shown.Likely.TotalHours, "h"), new("from", shown.Low.TotalHours, "h"), new("to", shown.High.TotalHours, "h"), new("By the rule of thumb", rule.TotalHours, "h")]
                : [new("By the rule of thumb", rule.TotalHours, "h")],
            Sources.Crank)
        {
            Domain = "Diffusion: brine to 22 %, to 48 h",
            LikelyError = "Within a factor of 2, mostly too short: lean to the long end of the band, since too little salt is the greater risk.",
            AlsoFrom = [Sources.Floury, Sources.Melilli, Sources.RulePound],
        });
        TimeSpan Time(Diffusivity d) => FiniteCylinder.TimeFor(size, d, uptake);
    }

    /// <summary>One hour a pound an inch of height. Source [RulePound], read on two pages; wrong in principle, as time goes with (V/A) squared.</summary>
    /// <param name="mass">Mass of the wheel.</param>
    /// <param name="height">Its height.</param>
    public static TimeSpan RuleOfThumb(Mass mass, Length height) => TimeSpan.FromHours(mass.Pounds * height.Inches);

    /// <summary>Salt of a cheese in full equilibrium with the brine's strength: s/(1 - s) x moisture, a fraction of the cheese.</summary>
    internal static double Full(Share moisture, Share brine) => brine.Fraction / (1 - brine.Fraction) * moisture.Fraction;

    private static Gate Inputs(Share moisture, Share brine, Estimate<Diffusivity> diffusivity) => new Gate()
        .Check(Composition.CompositionFields.Moisture, moisture.Percent)
        .Check(BrineFields.Strength, brine.Percent)
        .Check(BrineFields.Diffusivity, diffusivity.Low.SquareMetresPerSecond * 1e10)
        .Check(BrineFields.Diffusivity, diffusivity.High.SquareMetresPerSecond * 1e10);

    private static Given[] Given(WheelSize size, Share moisture, Share brine, Estimate<Diffusivity> diffusivity) =>
    [
        new("Diameter", size.Diameter.Centimetres, "cm"),
        new("Height", size.Height.Centimetres, "cm"),
        new("Moisture", moisture.Percent, "%"),
        new("Brine s", brine.Percent, "%"),
        new("Diffusivity D", diffusivity.Likely.SquareMetresPerSecond * 1e10, "1e-10 m2/s"),
    ];

    // A brine made at 22 % by mass comes back as 22.000000000000004 %.
    internal static bool IsTooStrong(Share brine) => brine.Percent > StrongestPercent + 1e-9;

    private static string TooStrong(Share brine) =>
        $"Strength of the brine is {BrineFields.Strength.Show(brine.Percent)}; above about 22 % the rind closes and takes less salt than the diffusion model says, so it gives no time.";

    private static string Hours(TimeSpan time) => Field.Number(Math.Round(time.TotalHours, 1));

    private static string TooLong(TimeSpan time) =>
        $"Time in brine is {Hours(time)} h; the diffusion model is used for at most 48 h.";
}
