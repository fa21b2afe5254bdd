using Trier.Dairy.Workings;

namespace Trier.Dairy.Rennet;

/// <summary>The inputs about coagulation, with their possible and usual ranges (ranges: common practice).</summary>
public static class RennetFields
{
    /// <summary>Strength of the rennet.</summary>
    public static readonly Field Strength = new("rennet-strength", "Strength of the rennet", "IMCU/mL", 0, 10_000, 100, 2500, LowestExcluded: true);

    /// <summary>Clotting activity given to the milk.</summary>
    public static readonly Field Level = new("rennet-level", "Rennet level", "IMCU/L", 0, 500, 25, 70, LowestExcluded: true);

    /// <summary>Volume of rennet.</summary>
    public static readonly Field RennetVolume = new("rennet-volume", "Volume of rennet", "mL", 0, 10_000, 0.2, 200, LowestExcluded: true);

    /// <summary>Soxhlet strength, the N of 1:N.</summary>
    public static readonly Field Soxhlet = new("soxhlet", "Soxhlet strength 1:N", "", 100, 1_000_000, 5000, 150_000);

    /// <summary>Wanted clotting or setting time.</summary>
    public static readonly Field SettingTime = new("setting-time", "Setting time", "min", 0, 600, 15, 90, LowestExcluded: true);

    /// <summary>Flocculation time.</summary>
    public static readonly Field Flocculation = new("flocculation", "Flocculation time", "min", 0, 300, 8, 25, LowestExcluded: true);

    /// <summary>Multiplier of the flocculation time.</summary>
    public static readonly Field Multiplier = new("multiplier", "Flocculation multiplier", "", 1, 10, 2, 6, LowestExcluded: true);

    /// <summary>Renneting temperature.</summary>
    public static readonly Field Temperature = new("renneting-temperature", "Renneting temperature", "°C", 4, 45, 28, 37);

    /// <summary>Age of an opened bottle.</summary>
    public static readonly Field Age = new("rennet-age", "Age of the rennet", "months", 0, 120, 0, 12);

    /// <summary>Calcium chloride on the milk.</summary>
    public static readonly Field Calcium = new("calcium-chloride", "Calcium chloride", "g/L", 0, 2, 0.05, 0.2, LowestExcluded: true);

    /// <summary>Strength of a calcium chloride solution.</summary>
    public static readonly Field CalciumSolution = new("calcium-solution", "Strength of the calcium chloride solution", "% w/v", 0, 75, 25, 50, LowestExcluded: true);

    /// <summary>Lipase dose.</summary>
    public static readonly Field Lipase = new("lipase", "Lipase", "g/L", 0, 5, 0.01, 0.15, LowestExcluded: true);
}
