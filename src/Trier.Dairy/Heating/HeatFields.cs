using Trier.Dairy.Workings;

namespace Trier.Dairy.Heating;

/// <summary>The inputs about heating, with their possible and usual ranges (ranges: common practice).</summary>
public static class HeatFields
{
    /// <summary>A temperature on the way.</summary>
    public static readonly Field Temperature = new("temperature", "Temperature", "°C", -1, 100, 2, 75);

    /// <summary>Time of a ramp.</summary>
    public static readonly Field RampTime = new("ramp-time", "Time of the ramp", "min", 0, 6000, 5, 120, LowestExcluded: true);

    /// <summary>Rate.</summary>
    public static readonly Field Rate = new("rate", "Heating rate", "°C/min", 0, 100, 0.05, 0.5, LowestExcluded: true);

    /// <summary>Power of the heater.</summary>
    public static readonly Field Power = new("power", "Power of the heater", "W", 0, 1e6, 500, 10_000, LowestExcluded: true);

    /// <summary>Part of the power that reaches the milk.</summary>
    public static readonly Field Efficiency = new("efficiency", "Part of the heat that reaches the milk", "", 0, 1, 0.35, 0.95, LowestExcluded: true);
}
