using Trier.Dairy.Workings;

namespace Trier.Dairy.CaveAir;

/// <summary>The inputs about cave air, with their possible and usual ranges (ranges: common practice).</summary>
public static class CaveFields
{
    /// <summary>Dry bulb.</summary>
    public static readonly Field DryBulb = new("dry-bulb", "Temperature of the cave", "°C", 0, 60, 4, 25);

    /// <summary>Wet bulb.</summary>
    public static readonly Field WetBulb = new("wet-bulb", "Wet bulb", "°C", 0, 60, 2, 25);

    /// <summary>Air pressure.</summary>
    public static readonly Field AirPressure = new("air-pressure", "Air pressure", "hPa", 500, 1100, 700, 1050);

    /// <summary>Relative humidity.</summary>
    public static readonly Field Humidity = new("humidity", "Relative humidity", "%", 0, 100, 70, 98, LowestExcluded: true);

    /// <summary>Water activity.</summary>
    public static readonly Field WaterActivity = new("water-activity", "Water activity of the surface", "", 0, 1, 0.9, 0.99, LowestExcluded: true);
}
