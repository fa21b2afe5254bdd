using Trier.Dairy.Workings;

namespace Trier.Dairy.Eyes;

/// <summary>The inputs about gas and eyes, with their possible and usual ranges (ranges: common practice).</summary>
public static class EyeFields
{
    /// <summary>Lactic acid in the cheese.</summary>
    public static readonly Field LacticAcid = new("lactic-acid", "Lactic acid in the cheese", "%", 0, 5, 1.0, 2.0, LowestExcluded: true);

    /// <summary>Part of it turned.</summary>
    public static readonly Field Turned = new("turned", "Part of the lactic acid turned", "", 0, 1, 0.3, 1);

    /// <summary>Days in the warm room.</summary>
    public static readonly Field WarmDays = new("warm-days", "Days in the warm room", "d", 0, 365, 10, 50, LowestExcluded: true);

    /// <summary>Temperature of the warm room.</summary>
    public static readonly Field WarmTemperature = new("warm-temperature", "Temperature of the warm room", "°C", 0, 40, 17, 25);

    /// <summary>Part of the loss that a coat lets through.</summary>
    public static readonly Field CoatPasses = new("coat", "Part of the gas loss a coat lets through", "", 0, 1, 0, 1);

    /// <summary>Density of the solid cheese.</summary>
    public static readonly Field SolidDensity = new("solid-density", "Density of the close cheese", "kg/m3", 900, 1400, 1050, 1120);

    /// <summary>A part of a composition.</summary>
    public static readonly Field Component = new("component", "Part of the composition", "%", 0, 100, 0, 100);

    /// <summary>Void fraction.</summary>
    public static readonly Field Void = new("void", "Void fraction", "", 0, 0.9, 0.03, 0.3);

    /// <summary>Rise of a dome.</summary>
    public static readonly Field Dome = new("dome", "Rise of the dome", "mm", 0, 300, 0, 30);
}
