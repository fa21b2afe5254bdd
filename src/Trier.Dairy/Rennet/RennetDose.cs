using Trier.Dairy.Milk;
using Trier.Dairy.Quantities;
using Trier.Dairy.Workings;

namespace Trier.Dairy.Rennet;

/// <summary>How much rennet, from its strength and the activity the milk is to get.</summary>
/// <remarks>
/// Unit: [ISO11815], read. Single strength is 200 mL to 1000 kg in 30 to 40 min at 30 to 32 C [GuelphCheese], read; with 200 IMCU/mL that is 40 IMCU/kg.
/// Bottles of 175 to 250 IMCU/mL are all sold as single, so a fold strength is an estimate. Dilute 10 to 20 times in cold water without chlorine:
/// 2 ppm destroyed 40 % in 3 min [GuelphCheese], read.
/// </remarks>
public static class RennetDose
{
    /// <summary>mL = V U / s. Source [ISO11815], arithmetic on the label.</summary>
    /// <param name="milk">Volume V.</param>
    /// <param name="level">U, activity per litre.</param>
    /// <param name="strength">s, of the rennet.</param>
    public static Outcome<Volume> ByActivity(Volume milk, RennetLevel level, RennetStrength strength)
    {
        var gate = new Gate()
            .Check(MilkFields.MilkVolume, milk.Litres)
            .Check(RennetFields.Level, level.ImcuPerLitre)
            .Check(RennetFields.Strength, strength.ImcuPerMillilitre);
        if (gate.Shut) return gate.Refusal<Volume>();
        var dose = Volume.FromMillilitres(milk.Litres * level.ImcuPerLitre / strength.ImcuPerMillilitre);
        return gate.Answer(dose, new Working(
            "Rennet",
            "mL = V U / s",
            [new("Milk V", milk.Litres, "L"), new("Level U", level.ImcuPerLitre, "IMCU/L"), new("Strength s", strength.ImcuPerMillilitre, "IMCU/mL")],
            [new("Rennet", dose.Millilitres, "mL")],
            Sources.Iso11815)
        {
            LikelyError = "Strength falls with age; the flocculation time of the vat is the check.",
        });
    }

    /// <summary>IMCU per kg of milk that a recipe's volume gives. Derived.</summary>
    /// <param name="rennet">The volume of rennet.</param>
    /// <param name="milk">The mass of milk.</param>
    /// <param name="strength">The strength.</param>
    public static Outcome<double> ImcuPerKilogram(Volume rennet, Mass milk, RennetStrength strength)
    {
        var gate = new Gate()
            .Check(RennetFields.RennetVolume, rennet.Millilitres)
            .Check(MilkFields.MilkMass, milk.Kilograms)
            .Check(RennetFields.Strength, strength.ImcuPerMillilitre);
        if (gate.Shut) return gate.Refusal<double>();
        var level = rennet.Millilitres * strength.ImcuPerMillilitre / milk.Kilograms;
        return gate.Answer(level, new Working(
            "Rennet level of a recipe",
            "IMCU/kg = mL s / m",
            [new("Rennet", rennet.Millilitres, "mL"), new("Strength s", strength.ImcuPerMillilitre, "IMCU/mL"), new("Milk m", milk.Kilograms, "kg")],
            [new("Level", level, "IMCU/kg")],
            Sources.GuelphCheese));
    }

    /// <summary>The strength of single, double or triple rennet: 200 IMCU/mL a fold, 175 to 250 met in shops. Source [GuelphCheese], read.</summary>
    /// <param name="fold">1, 2 or 3.</param>
    /// <exception cref="ArgumentOutOfRangeException">Another fold.</exception>
    public static Estimate<RennetStrength> OfFold(int fold) =>
        fold is >= 1 and <= 3
            ? Estimate.Between(
                RennetStrength.FromImcuPerMillilitre(175 * fold),
                RennetStrength.FromImcuPerMillilitre(200 * fold),
                RennetStrength.FromImcuPerMillilitre(250 * fold))
            : throw new ArgumentOutOfRangeException(nameof(fold), fold, "Rennet is sold as single (1), double (2) or triple (3).");

    /// <summary>mL = 1000 V/N x d/t, d the definition's minutes. Source [Soxhlet], memory of high confidence (40 min at 35 C); a glossary says 45 min.</summary>
    /// <remarks>At 35 C and fresh strength; that glossary adds that real strength in use is about half.</remarks>
    /// <param name="milk">Volume V.</param>
    /// <param name="soxhlet">N of 1:N.</param>
    /// <param name="settingTime">Wanted time t.</param>
    /// <param name="definitionMinutes">40 by the textbook, 45 by the glossary.</param>
    public static Outcome<Volume> BySoxhlet(Volume milk, double soxhlet, TimeSpan settingTime, double definitionMinutes = 40)
    {
        var gate = new Gate()
            .Check(MilkFields.MilkVolume, milk.Litres)
            .Check(RennetFields.Soxhlet, soxhlet)
            .Check(RennetFields.SettingTime, settingTime.TotalMinutes)
            .Check(RennetFields.SettingTime, definitionMinutes);
        if (gate.Shut) return gate.Refusal<Volume>();
        var dose = Volume.FromMillilitres(1000 * milk.Litres / soxhlet * definitionMinutes / settingTime.TotalMinutes);
        return gate.Answer(dose, new Working(
            "Rennet by Soxhlet strength",
            "mL = 1000 V / N x d / t",
            [new("Milk V", milk.Litres, "L"), new("Strength 1:N", soxhlet), new("Setting time t", settingTime.TotalMinutes, "min"), new("Definition d", definitionMinutes, "min")],
            [new("Rennet", dose.Millilitres, "mL")],
            Sources.Soxhlet)
        {
            Domain = "35 °C, fresh rennet",
            LikelyError = "The two definitions differ by 12 %; strength in use may be half the label's.",
        });
    }

    /// <summary>
    /// The dose that keeps the clotting time at another temperature and after storage: dose x 1.05^(31 - T) / (1 - 0.01)^months.
    /// Memory, low confidence: 4 to 6 % a degree near 31 C, 0 to 3 % a month kept cold. Direction only was read [Clerici], over 28 to 34 C.
    /// </summary>
    /// <param name="dose">Dose for 31 C and fresh rennet.</param>
    /// <param name="at">Renneting temperature, 28 to 34 C.</param>
    /// <param name="months">Months since the bottle was made.</param>
    public static Outcome<Estimate<Volume>> Adjusted(Volume dose, Temperature at, double months)
    {
        var gate = new Gate()
            .Check(RennetFields.RennetVolume, dose.Millilitres)
            .Check(RennetFields.Temperature, at.Celsius)
            .Check(RennetFields.Age, months);
        if (!gate.Shut && at.Celsius is < 28 or > 34)
            gate.Refuse(ProblemKind.OutsideTheDomain, RennetFields.Temperature, $"Renneting temperature is {RennetFields.Temperature.Show(at.Celsius)}; the rule of so much a degree is stated for 28 to 34 °C only.");
        if (gate.Shut) return gate.Refusal<Estimate<Volume>>();
        double[] all = [Factor(1.04, 0), Factor(1.06, 0), Factor(1.04, 0.03), Factor(1.06, 0.03)];
        var band = Estimate.Between(dose * all.Min(), dose * Factor(1.05, 0.01), dose * all.Max());
        return gate.Answer(band, new Working(
            "Rennet adjusted for temperature and age",
            "dose x 1.05^(31 - T) / 0.99^months",
            [new("Dose at 31 °C, fresh", dose.Millilitres, "mL"), new("Temperature T", at.Celsius, "°C"), new("Age", months, "months")],
            [new("Dose", band.Likely.Millilitres, "mL"), new("from", band.Low.Millilitres, "mL"), new("to", band.High.Millilitres, "mL")],
            Sources.MemoryLow)
        {
            Domain = "28 to 34 °C at unchanged pH",
            LikelyError = "The band takes 4 to 6 % a degree and 0 to 3 % a month.",
        });
        double Factor(double perDegree, double perMonth) => Math.Pow(perDegree, 31 - at.Celsius) / Math.Pow(1 - perMonth, months);
    }
}
