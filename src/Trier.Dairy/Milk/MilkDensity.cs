using Trier.Dairy.Quantities;
using Trier.Dairy.Workings;

namespace Trier.Dairy.Milk;

/// <summary>Density of milk and cream: formula at 0 to 20 C, table above.</summary>
/// <remarks>
/// At 38.9 C the formula gives 1.0281 and the table 1.023, so the formula is refused above 20 C. At 20 C the two differ by
/// up to 0.002 kg/L. Measure volume cold, or weigh: 20 L at 32 C hold 0.9 % less milk than 20 L at 4 C.
/// </remarks>
public static class MilkDensity
{
    private const double FormulaUpTo = 20;
    private const double HighestInTable = 38.9;

    /// <summary>
    /// rho = 1.003073 - 0.000179 t - 0.000368 F + 0.00374 N, kg/L; t in C, F % fat, N % solids-not-fat.
    /// Source [Illinois], read; the page gives no range, the coefficients look like those of 1 to 10 C data, so 0 to 20 C only. Error about 0.001 kg/L.
    /// </summary>
    /// <param name="fat">Fat.</param>
    /// <param name="solidsNotFat">Solids-not-fat.</param>
    /// <param name="at">Temperature, 0 to 20 C.</param>
    public static Outcome<Density> ByFormula(Share fat, Share solidsNotFat, Temperature at)
    {
        var gate = new Gate()
            .Check(MilkFields.StreamFat, fat.Percent)
            .Check(MilkFields.SolidsNotFat, solidsNotFat.Percent)
            .Check(MilkFields.MilkTemperature, at.Celsius);
        if (!gate.Shut && at.Celsius is < 0 or > FormulaUpTo)
        {
            gate.Refuse(
                ProblemKind.OutsideTheDomain,
                MilkFields.MilkTemperature,
                $"Temperature of the milk is {MilkFields.MilkTemperature.Show(at.Celsius)}; the density formula holds from 0 to 20 °C, above that the table is used.");
        }

        if (gate.Shut) return gate.Refusal<Density>();
        var density = Density.FromKilogramsPerLitre(
            1.003073 - (0.000179 * at.Celsius) - (0.000368 * fat.Percent) + (0.00374 * solidsNotFat.Percent));
        return gate.Answer(density, new Working(
            "Density of the milk",
            "rho = 1.003073 - 0.000179 t - 0.000368 F + 0.00374 N",
            [new("Temperature t", at.Celsius, "°C"), new("Fat F", fat.Percent, "%"), new("Solids-not-fat N", solidsNotFat.Percent, "%")],
            [new("Density", density.KilogramsPerLitre, "kg/L")],
            Sources.Illinois)
        {
            Domain = "0 to 20 °C",
            LikelyError = "About 0.001 kg/L (0.1 %).",
        });
    }

    /// <summary>
    /// Density by linear interpolation in temperature and in fat between the rows of the table, 4.4 to 38.9 C, fat 0.02 to 36.6 %.
    /// Source [Goff], secondary; card: Tables/milk_density.md. Error about 0.002 kg/L.
    /// </summary>
    /// <param name="fat">Fat.</param>
    /// <param name="at">Temperature.</param>
    public static Outcome<Density> ByTable(Share fat, Temperature at)
    {
        var gate = new Gate().Check(MilkFields.StreamFat, fat.Percent).Check(MilkFields.MilkTemperature, at.Celsius);
        if (!gate.Shut && at.Celsius is < 4.4 or > HighestInTable)
        {
            gate.Refuse(
                ProblemKind.OutsideTheDomain,
                MilkFields.MilkTemperature,
                $"Temperature of the milk is {MilkFields.MilkTemperature.Show(at.Celsius)}; the density table runs from 4.4 to 38.9 °C.");
        }

        if (!gate.Shut && fat.Percent > MilkDensityTable.RichestFat)
        {
            gate.Refuse(
                ProblemKind.OutsideTheDomain,
                MilkFields.StreamFat,
                $"Fat is {MilkFields.StreamFat.Show(fat.Percent)}; the density table runs to 36.6 %.");
        }

        if (gate.Shut) return gate.Refusal<Density>();
        var density = Density.FromKilogramsPerLitre(MilkDensityTable.At(fat.Percent, at.Celsius));
        return gate.Answer(density, new Working(
            "Density of the milk",
            "linear between the table's rows (fat) and columns (temperature)",
            [new("Temperature", at.Celsius, "°C"), new("Fat", fat.Percent, "%")],
            [new("Density", density.KilogramsPerLitre, "kg/L")],
            Sources.Goff)
        {
            Domain = "4.4 to 38.9 °C, fat to 36.6 %",
            LikelyError = "About 0.002 kg/L (0.2 %).",
        });
    }

    /// <summary>The density of a milk by whichever of the two holds at this temperature.</summary>
    /// <param name="milk">The milk.</param>
    /// <param name="at">Temperature, 0 to 38.9 C.</param>
    public static Outcome<Density> Of(MilkComposition milk, Temperature at) =>
        at.Celsius <= FormulaUpTo ? ByFormula(milk.Fat, milk.SolidsNotFat, at) : ByTable(milk.Fat, at);
}
