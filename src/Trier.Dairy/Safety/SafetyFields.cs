using Trier.Dairy.Workings;

namespace Trier.Dairy.Safety;

/// <summary>The inputs about heat treatment, with their possible and usual ranges.</summary>
public static class SafetyFields
{
    /// <summary>Milk temperature during a treatment.</summary>
    public static readonly Field Temperature = new("treatment-temperature", "Temperature of the milk", "°C", -1, 150, 4, 100);

    /// <summary>Number of readings.</summary>
    public static readonly Field Readings = new("treatment-readings", "Readings of the treatment", "", 2, 1e7, 4, 1e6);

    /// <summary>The hold.</summary>
    public static readonly Field Hold = new("hold", "Hold", "min", 0, 1e5, 0, 60);

    /// <summary>Headspace above the milk.</summary>
    public static readonly Field Headspace = new("headspace", "Temperature of the air above the milk", "°C", -1, 150, 60, 100);

    /// <summary>z value.</summary>
    public static readonly Field Z = new("z", "z value", "°C", 0, 100, 4, 15, LowestExcluded: true);

    /// <summary>D value.</summary>
    public static readonly Field D = new("d-value", "D value", "s", 0, 1e6, 0.1, 1000, LowestExcluded: true);

    /// <summary>Salt in moisture.</summary>
    public static readonly Field SaltInMoisture = new("salt-in-moisture", "Salt in moisture", "g/100 g", 0, 36, 1, 8);
}
