using Trier.Dairy.Quantities;
using Trier.Dairy.Tables;
using Trier.Dairy.Workings;

namespace Trier.Dairy.Brine;

/// <summary>Density of salt brine, and the strength a hydrometer shows.</summary>
/// <remarks>rho(s, t) = rho20(s) + A(s) (20 - t), linear in s between the rows. Source [Wnt1974], read; good to 0.5 kg/m3; 0 to 26.4 %, 5 to 25 C.</remarks>
public static class BrineDensity
{
    private static readonly Listed<(double Percent, double At20, double PerDegree)> Rows = EmbeddedTable.Read(
        "brine_density", row => (row.Number("nacl_pct_w_w"), row.Number("density_20C_kg_m3"), row.Number("temp_coeff_kg_m3_per_C")));

    /// <summary>Density of a clean brine.</summary>
    /// <param name="strength">Salt by mass.</param>
    /// <param name="at">Temperature, 5 to 25 C.</param>
    public static Outcome<Density> Of(Share strength, Temperature at)
    {
        var gate = new Gate().Check(BrineFields.Strength, strength.Percent).Check(BrineFields.Temperature, at.Celsius);
        if (!gate.Shut && at.Celsius is < 5 or > 25)
            gate.Refuse(ProblemKind.OutsideTheDomain, BrineFields.Temperature, $"Temperature of the brine is {BrineFields.Temperature.Show(at.Celsius)}; the density table is used from 5 to 25 °C.");
        if (gate.Shut) return gate.Refusal<Density>();
        var density = Density.FromKilogramsPerCubicMetre(At(strength.Percent, at.Celsius));
        return gate.Answer(density, new Working(
            "Density of the brine",
            "rho = rho20(s) + A(s) (20 - t)",
            [new("Strength s", strength.Percent, "%"), new("Temperature t", at.Celsius, "°C")],
            [new("Density", density.KilogramsPerCubicMetre, "kg/m3")],
            Sources.BrineHandbook)
        {
            Domain = "Clean salt and water, 5 to 25 °C",
            LikelyError = "0.5 kg/m3; used brine reads 1 to 2 Be high from whey solids.",
        });
    }

    /// <summary>Be = 145 - 145/SG with SG = rho(15 C)/rho of water(15 C). Source [Baume], read (US; Europe 144.3).</summary>
    /// <param name="strength">Salt by mass.</param>
    public static Outcome<double> Baume(Share strength)
    {
        var gate = new Gate().Check(BrineFields.Strength, strength.Percent);
        if (gate.Shut) return gate.Refusal<double>();
        var baume = 145 - (145 * WaterAt15 / At(strength.Percent, 15));
        return gate.Answer(baume, new Working(
            "Baume reading to expect",
            "Be = 145 - 145 / SG(15 °C)",
            [new("Strength", strength.Percent, "%")],
            [new("Baume", baume, "Be")],
            Sources.Baume)
        {
            LikelyError = "0.1 Be for a clean brine; used brine reads 1 to 2 high.",
            AlsoFrom = [Sources.BrineHandbook],
        });
    }

    /// <summary>The strength of a clean brine that shows this specific gravity at 15 C.</summary>
    /// <param name="specificGravity">SG 15/15.</param>
    public static Outcome<Share> StrengthOf(double specificGravity)
    {
        var gate = new Gate().Check(BrineFields.SpecificGravity, specificGravity);
        if (gate.Shut) return gate.Refusal<Share>();
        var (low, high) = (0.0, 26.5);
        while (high - low > 1e-9)
        {
            var middle = (low + high) / 2;
            if (At(middle, 15) / WaterAt15 < specificGravity) low = middle;
            else high = middle;
        }

        return gate.Answer(Share.FromPercent(low), new Working(
            "Strength of the brine from its density",
            "s where SG(s, 15 °C) is the reading",
            [new("Specific gravity", specificGravity)],
            [new("Strength", low, "%")],
            Sources.BrineHandbook)
        {
            LikelyError = "0.1 % for a clean brine; used brine is 1 to 2 % weaker than it reads.",
        });
    }

    /// <summary>The strength of a clean brine that shows this Baume reading.</summary>
    /// <param name="baume">Reading, 0 to 26 Be.</param>
    public static Outcome<Share> StrengthOfBaume(double baume)
    {
        var gate = new Gate().Check(BrineFields.Baume, baume);
        if (gate.Shut) return gate.Refusal<Share>();
        return StrengthOf(145 / (145 - baume));
    }

    private static double WaterAt15 => 999.1;

    private static double At(double percent, double celsius)
    {
        var right = 0;
        while (right < Rows.Count - 1 && percent > Rows[right].Percent) right++;
        var upper = Value(Rows[right]);
        if (right == 0)
        {
            var water = 998.2 + ((WaterAt15 - 998.2) / 5 * (20 - celsius));
            return water + (percent / Rows[0].Percent * (upper - water));
        }

        var lower = Value(Rows[right - 1]);
        return lower + ((percent - Rows[right - 1].Percent) / (Rows[right].Percent - Rows[right - 1].Percent) * (upper - lower));
        double Value((double Percent, double At20, double PerDegree) row) => row.At20 + (row.PerDegree * (20 - celsius));
    }
}
