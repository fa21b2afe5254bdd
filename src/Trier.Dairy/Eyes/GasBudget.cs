using Trier.Dairy.Brine;
using Trier.Dairy.Quantities;
using Trier.Dairy.Workings;

namespace Trier.Dairy.Eyes;

/// <summary>What the physics says about eyes in a wheel.</summary>
public enum EyesPossible
{
    /// <summary>Gas is left for eyes in all but the worst case.</summary>
    Likely,

    /// <summary>The error is larger than the difference: it may go either way.</summary>
    CannotTell,

    /// <summary>Even the good case leaves hardly any: blindness would be physics.</summary>
    Unlikely,
}

/// <summary>Where the gas of a wheel goes, mmol per kg of cheese, each with its band.</summary>
/// <param name="Verdict">Can it make eyes at all.</param>
/// <param name="Made">Gas made.</param>
/// <param name="Lost">Gas lost through the rind.</param>
/// <param name="Dissolved">Gas the paste can hold at 1 atm.</param>
/// <param name="LeftForEyes">What is left; zero if less than nothing.</param>
/// <param name="Void">Void fraction that makes.</param>
/// <param name="SizeDecides">Whether a wheel that lost no gas would have some left: only then is a blind wheel blind by its size.</param>
public sealed record GasBudget(
    EyesPossible Verdict,
    Estimate<GasContent> Made,
    Estimate<GasContent> Lost,
    Estimate<GasContent> Dissolved,
    Estimate<GasContent> LeftForEyes,
    Estimate<double> Void,
    bool SizeDecides)
{
    /// <summary>Lactic acid of such a cheese before the warm room: 1.4 %, 1.2 to 1.7 (practice).</summary>
    public static readonly Estimate<Share> UsualLacticAcid = Estimate.Between(Share.FromPercent(1.2), Share.FromPercent(1.4), Share.FromPercent(1.7));

    /// <summary>
    /// Part of it turned in the warm room: 0.9, 0.6 to 1. The high end is the balance of an 80 kg wheel, 120 L of gas or 62 mmol/kg, which asks for all of 1.7 %
    /// [McSweeneyFox2004]; 0.6 of 1.4 % makes 31 mmol/kg, no more than the paste dissolves, so no wheel of any size would have eyes. The middle is a choice.
    /// </summary>
    public static readonly Estimate<double> UsuallyTurned = Estimate.Between(0.6, 0.9, 1);

    /// <summary>Gas a kilogram of cheese dissolves at 1 atm near 20 C: 31 mmol (31 to 34 from two balances [McSweeneyFox2004, Agroscope], derived; papers 30 to 45, memory of low confidence).</summary>
    public static readonly Estimate<GasContent> Solubility = Estimate.Between(
        GasContent.FromMillimolesPerKilogram(30), GasContent.FromMillimolesPerKilogram(31), GasContent.FromMillimolesPerKilogram(40));

    /// <summary>Diffusivity of the gas, fitted to 40 of 120 L lost by an 80 kg wheel in 45 days: 6.6e-11 m2/s. Derived, low confidence; taken within a factor of 2.</summary>
    public static readonly Estimate<Diffusivity> GasDiffusivity = Estimate.Between(
        Diffusivity.FromSquareMetresPerSecond(3.3e-11), Diffusivity.FromSquareMetresPerSecond(6.6e-11), Diffusivity.FromSquareMetresPerSecond(1.32e-10));

    private const double SmallestVoid = 0.01;

    /// <summary>The part of the gas that leaves a bare wheel: uptake of a finite cylinder with the gas's D.</summary>
    /// <param name="size">The wheel.</param>
    /// <param name="warmRoom">Time in the warm room.</param>
    /// <param name="diffusivity">D of the gas.</param>
    public static double ShareLost(WheelSize size, TimeSpan warmRoom, Diffusivity diffusivity) => FiniteCylinder.Uptake(size, diffusivity, warmRoom);

    /// <summary>Can a wheel of this size make eyes at all?</summary>
    /// <remarks>
    /// made = lactic x turned/270.234; lost = made x share(size, days) x coat; eyes = made - lost - dissolved; void from eyes at 1 atm. The band takes each
    /// uncertain figure to its ends in turn and adds the effects in quadrature. A large error is the honest result: it tells physics from a mistake, not more.
    /// </remarks>
    /// <param name="size">The wheel.</param>
    /// <param name="lacticAcid">Lactic acid of the cheese, with its band (usual: <see cref="UsualLacticAcid"/>).</param>
    /// <param name="turned">Part turned in the warm room, with its band (usual: <see cref="UsuallyTurned"/>).</param>
    /// <param name="warmRoom">Time in the warm room.</param>
    /// <param name="at">Its temperature.</param>
    /// <param name="coatPasses">1 for a bare rind, near 0 for a vacuum bag, with its band.</param>
    /// <param name="solid">Density of the close cheese.</param>
    public static Outcome<GasBudget> For(
        WheelSize size,
        Estimate<Share> lacticAcid,
        Estimate<double> turned,
        TimeSpan warmRoom,
        Temperature at,
        Estimate<double> coatPasses,
        Density solid)
    {
        var gate = new Gate()
            .Check(EyeFields.LacticAcid, lacticAcid.Likely.Percent)
            .Check(EyeFields.Turned, turned.Likely)
            .Check(EyeFields.WarmDays, warmRoom.TotalDays)
            .Check(EyeFields.WarmTemperature, at.Celsius)
            .Check(EyeFields.CoatPasses, coatPasses.Likely)
            .Check(EyeFields.SolidDensity, solid.KilogramsPerCubicMetre);
        if (gate.Shut) return gate.Refusal<GasBudget>();
        double[] middle = [lacticAcid.Likely.Fraction, turned.Likely, GasDiffusivity.Likely.SquareMetresPerSecond, coatPasses.Likely, Solubility.Likely.MillimolesPerKilogram];
        double[] low = [lacticAcid.Low.Fraction, turned.Low, GasDiffusivity.Low.SquareMetresPerSecond, coatPasses.Low, Solubility.Low.MillimolesPerKilogram];
        double[] high = [lacticAcid.High.Fraction, turned.High, GasDiffusivity.High.SquareMetresPerSecond, coatPasses.High, Solubility.High.MillimolesPerKilogram];
        var made = Band(Made);
        var lost = Band(Lost);
        var balance = Band(values => Made(values) - Lost(values) - values[4]);
        var budget = new GasBudget(
            Void(balance.Low) >= SmallestVoid ? EyesPossible.Likely : Void(balance.High) < SmallestVoid ? EyesPossible.Unlikely : EyesPossible.CannotTell,
            Gas(made),
            Gas(lost),
            Solubility,
            Gas(balance),
            Estimate.Between(Void(balance.Low), Void(balance.Likely), Void(balance.High)),
            Void(Made(middle) - middle[4]) >= SmallestVoid);
        return gate.Answer(budget, new Working(
            "Gas of the wheel",
            "eyes = made - lost - dissolved (mmol/kg); made = lactic x turned / 270.234; lost = made x share(size, days) x coat",
            [
                new("Diameter", size.Diameter.Centimetres, "cm"),
                new("Height", size.Height.Centimetres, "cm"),
                new("Lactic acid", lacticAcid.Likely.Percent, "%"),
                new("Part turned", turned.Likely),
                new("Warm room", warmRoom.TotalDays, "d"),
                new("Coat lets through", coatPasses.Likely),
            ],
            [new("Made", made.Likely, "mmol/kg"), new("Lost", lost.Likely, "mmol/kg"), new("Dissolved at most", middle[4], "mmol/kg"), new("Left for eyes", Math.Max(0, balance.Likely), "mmol/kg"), new("Void", Void(balance.Likely))],
            Sources.Fitz)
        {
            Domain = "Pressed wheels with propionic culture, one warm room",
            LikelyError = "Large: the loss is known to a factor of 2 and the part turned to a third; the band adds them up.",
            AlsoFrom = [Sources.McSweeneyFox, Sources.Agroscope, Sources.Crank],
        });

        double Made(double[] values) => 1e6 * values[0] * values[1] / PropionicFermentation.LacticAcid;
        double Lost(double[] values) => Made(values) * ShareLost(size, warmRoom, Diffusivity.FromSquareMetresPerSecond(values[2])) * values[3];
        double Void(double millimoles)
        {
            var gas = Math.Max(0, millimoles) / 1000 * PropionicFermentation.LitresPerMole(at);
            return gas / (gas + (1 / solid.KilogramsPerLitre));
        }

        Estimate<double> Band(Func<double[], double> of)
        {
            var centre = of(middle);
            var (down, up) = (0.0, 0.0);
            for (var i = 0; i < middle.Length; i++)
            {
                var ends = new[] { of(With(i, low[i])) - centre, of(With(i, high[i])) - centre };
                var (worse, better) = (Math.Min(0, ends.Min()), Math.Max(0, ends.Max()));
                down += worse * worse;
                up += better * better;
            }

            return Estimate.Between(centre - Math.Sqrt(down), centre, centre + Math.Sqrt(up));
        }

        double[] With(int index, double value)
        {
            double[] changed = [.. middle];
            changed[index] = value;
            return changed;
        }
    }

    private static Estimate<GasContent> Gas(Estimate<double> band) => Estimate.Between(One(band.Low), One(band.Likely), One(band.High));

    private static GasContent One(double value) => GasContent.FromMillimolesPerKilogram(Math.Max(0, value));
}
