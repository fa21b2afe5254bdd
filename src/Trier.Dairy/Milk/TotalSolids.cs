using Trier.Dairy.Quantities;
using Trier.Dairy.Workings;

namespace Trier.Dairy.Milk;

/// <summary>Total solids of milk from a lactometer and the fat. The scales differ: never read one hydrometer by another's formula.</summary>
public static class TotalSolids
{
    /// <summary>T = G/4 + 6F/5 + 0.14 with G = 1000 (SG - 1) at 60 F. Source [Richmond], read.</summary>
    /// <param name="lactometer">G, 0 to 60 degrees on a 60 F lactometer.</param>
    /// <param name="fat">Fat F.</param>
    public static Outcome<Share> ByRichmond(double lactometer, Share fat) => Answer(
        lactometer, fat, (lactometer / 4) + (6 * fat.Percent / 5) + 0.14, "T = G/4 + 6F/5 + 0.14", Sources.Richmond);

    /// <summary>T = 0.2625 G/D + 1.2 F with D = 1 + G/1000 at 60 F. Source [Richmond], read.</summary>
    /// <param name="lactometer">G, 0 to 60 degrees on a 60 F lactometer.</param>
    /// <param name="fat">Fat F.</param>
    public static Outcome<Share> ByHehnerRichmond(double lactometer, Share fat) => Answer(
        lactometer, fat, (0.2625 * lactometer / (1 + (lactometer / 1000))) + (1.2 * fat.Percent), "T = 0.2625 G/D + 1.2 F, D = 1 + G/1000", Sources.Richmond);

    /// <summary>T = 0.25 D + 1.22 F + 0.72 with D degrees of a 20 C density hydrometer. Source [BS734], read.</summary>
    /// <param name="lactometer">D, 0 to 60 degrees on a 20 C hydrometer.</param>
    /// <param name="fat">Fat F.</param>
    public static Outcome<Share> ByBritishStandard(double lactometer, Share fat) => Answer(
        lactometer, fat, (0.25 * lactometer) + (1.22 * fat.Percent) + 0.72, "T = 0.25 D + 1.22 F + 0.72", Sources.Bs734);

    private static Outcome<Share> Answer(double lactometer, Share fat, double percent, string formula, Source source)
    {
        var gate = new Gate().Check(MilkFields.Lactometer, lactometer).Check(MilkFields.MilkFat, fat.Percent);
        if (gate.Shut) return gate.Refusal<Share>();
        return gate.Answer(Share.FromPercent(percent), new Working(
            "Total solids from the lactometer",
            formula,
            [new("Lactometer", lactometer, "degrees"), new("Fat F", fat.Percent, "%")],
            [new("Total solids T", percent, "%")],
            source)
        {
            Domain = "Unspoilt cow's milk at the hydrometer's own temperature",
            LikelyError = "About 0.2 % of solids; half a degree misread is 0.13 %.",
        });
    }
}
