using Trier.Dairy.Milk;
using Trier.Dairy.Quantities;
using Trier.Dairy.Workings;

namespace Trier.Dairy.Heating;

/// <summary>Energy and time to heat a vat.</summary>
/// <param name="Energy">Heat the milk takes up.</param>
/// <param name="Time">Time with this heater, a band from its efficiency.</param>
public sealed record HeatNeed(Energy Energy, Estimate<TimeSpan> Time);

/// <summary>E = m cp (T2 - T1), t = E/(P e). cp by mass from water, protein, fat, lactose and ash [ChoiOkos1986], read in code listings.</summary>
public static class MilkHeat
{
    /// <summary>Specific heat of a milk at a temperature, J/(kg K).</summary>
    /// <param name="milk">The milk.</param>
    /// <param name="at">Temperature, 0 to 100 C.</param>
    public static double SpecificHeat(MilkComposition milk, Temperature at)
    {
        var t = at.Celsius;
        var water = 1 - milk.TotalSolids.Fraction;
        return 1000 * (
            (water * (4.1289 - (9.0864e-5 * t) + (5.4731e-6 * t * t)))
            + (milk.Protein.Fraction * (2.0082 + (0.0012089 * t) - (1.3129e-6 * t * t)))
            + (milk.Fat.Fraction * (1.9842 + (0.0014733 * t) - (4.8008e-6 * t * t)))
            + (milk.Lactose.Fraction * (1.5488 + (0.0019625 * t) - (5.9399e-6 * t * t)))
            + (milk.Ash.Fraction * (1.0926 + (0.0018896 * t) - (3.6817e-6 * t * t))));
    }

    /// <summary>What it takes to heat this milk. The pot and the room are in the efficiency: give the band seen on this stove; 0.4 to 0.8 is common (practice).</summary>
    /// <param name="milk">The milk.</param>
    /// <param name="mass">Its mass.</param>
    /// <param name="from">Start.</param>
    /// <param name="to">End, above the start.</param>
    /// <param name="heater">Power of the heater.</param>
    /// <param name="efficiency">Part of the power that reaches the milk, with its band.</param>
    public static Outcome<HeatNeed> Need(MilkComposition milk, Mass mass, Temperature from, Temperature to, Power heater, Estimate<double> efficiency)
    {
        var gate = new Gate()
            .Check(MilkFields.MilkMass, mass.Kilograms)
            .Check(HeatFields.Temperature, from.Celsius)
            .Check(HeatFields.Temperature, to.Celsius)
            .Check(HeatFields.Power, heater.Watts)
            .Check(HeatFields.Efficiency, efficiency.Low)
            .Check(HeatFields.Efficiency, efficiency.High);
        if (!gate.Shut && to <= from)
            gate.Refuse(ProblemKind.Contradiction, HeatFields.Temperature, $"Temperature goes from {Field.Number(from.Celsius)} to {Field.Number(to.Celsius)} °C; heating rises.");
        if (gate.Shut) return gate.Refusal<HeatNeed>();
        var heat = SpecificHeat(milk, Temperature.FromCelsius((from.Celsius + to.Celsius) / 2));
        var energy = Energy.FromJoules(mass.Kilograms * heat * (to - from));
        var need = new HeatNeed(energy, Estimate.Between(Seconds(efficiency.High), Seconds(efficiency.Likely), Seconds(efficiency.Low)));
        return gate.Answer(need, new Working(
            "Heat for the vat",
            "E = m cp (T2 - T1); t = E / (P e)",
            [
                new("Milk m", mass.Kilograms, "kg"),
                new("Specific heat cp", heat, "J/(kg K)"),
                new("From T1", from.Celsius, "°C"),
                new("To T2", to.Celsius, "°C"),
                new("Power P", heater.Watts, "W"),
                new("Efficiency e", efficiency.Likely),
            ],
            [new("Energy", energy.Kilojoules, "kJ"), new("Time", need.Time.Likely.TotalMinutes, "min")],
            Sources.ChoiOkos)
        {
            LikelyError = "Energy about 2 %; the time follows the efficiency.",
        });
        TimeSpan Seconds(double part) => TimeSpan.FromSeconds(energy.Joules / (heater.Watts * part));
    }
}
