using Trier.Dairy.Quantities;
using Trier.Dairy.Workings;

namespace Trier.Dairy.Safety;

/// <summary>aw = exp(-0.93 x 2 m x 0.018015), m = 10 (S/M)/58.44 mol/kg: water activity from salt alone. Osmotic coefficient 0.93: memory, high confidence.</summary>
/// <remarks>Salt alone in alpine cheese never stops Listeria; nor does cold. Ripening lowers the true value further.</remarks>
public static class WaterActivityOfSalt
{
    /// <summary>Water activity from salt in moisture.</summary>
    /// <param name="salt">S/M, 0 to 36 g per 100 g.</param>
    public static Outcome<WaterActivity> Of(SaltInMoisture salt)
    {
        var gate = new Gate().Check(SafetyFields.SaltInMoisture, salt.GramsPer100Grams);
        if (gate.Shut) return gate.Refusal<WaterActivity>();
        var molality = 10 * salt.GramsPer100Grams / 58.44;
        var activity = WaterActivity.FromValue(Math.Exp(-0.93 * 2 * molality * 0.018015));
        return gate.Answer(activity, new Working(
            "Water activity from salt alone",
            "aw = exp(-0.93 x 2 m x 0.018015), m = 10 (S/M) / 58.44",
            [new("Salt in moisture", salt.GramsPer100Grams, "g/100 g")],
            [new("Water activity", activity.Value)],
            Sources.OsmoticCoefficient)
        {
            Domain = "Young cheese; salt alone",
            LikelyError = "0.002 for the salt; ripening lowers the real value by up to several hundredths.",
        });
    }
}
