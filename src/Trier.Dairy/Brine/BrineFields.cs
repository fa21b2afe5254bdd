using Trier.Dairy.Workings;

namespace Trier.Dairy.Brine;

/// <summary>The inputs about salting, with their possible and usual ranges (ranges: common practice; saturation 26.4 %: read).</summary>
public static class BrineFields
{
    /// <summary>Strength of brine.</summary>
    public static readonly Field Strength = new("brine-strength", "Strength of the brine", "%", 0, 26.5, 16, 23, LowestExcluded: true);

    /// <summary>Temperature of brine.</summary>
    public static readonly Field Temperature = new("brine-temperature", "Temperature of the brine", "°C", -20, 60, 8, 20);

    /// <summary>Volume of brine.</summary>
    public static readonly Field BrineVolume = new("brine-volume", "Volume of the brine", "L", 0, 100_000, 2, 500, LowestExcluded: true);

    /// <summary>Salt or water amounts.</summary>
    public static readonly Field Amount = new("brine-amount", "Mass in the brine", "kg", 0, 100_000, 0, 500);

    /// <summary>Baume reading.</summary>
    public static readonly Field Baume = new("baume", "Baume reading", "Be", 0, 26, 15, 22);

    /// <summary>Specific gravity.</summary>
    public static readonly Field SpecificGravity = new("specific-gravity", "Specific gravity", "", 1, 1.21, 1.1, 1.18);

    /// <summary>Diameter of a wheel.</summary>
    public static readonly Field Diameter = new("diameter", "Diameter of the wheel", "cm", 0, 200, 6, 70, LowestExcluded: true);

    /// <summary>Height of a wheel.</summary>
    public static readonly Field Height = new("height", "Height of the wheel", "cm", 0, 100, 3, 25, LowestExcluded: true);

    /// <summary>Time in brine.</summary>
    public static readonly Field Hours = new("brine-time", "Time in brine", "h", 0, 2000, 1, 96, LowestExcluded: true);

    /// <summary>Diffusivity.</summary>
    public static readonly Field Diffusivity = new("diffusivity", "Diffusivity of salt", "1e-10 m2/s", 0, 20, 0.5, 6, LowestExcluded: true);

    /// <summary>Salt wanted.</summary>
    public static readonly Field SaltWanted = new("salt-wanted", "Salt wanted", "%", 0, 15, 0.4, 3, LowestExcluded: true);

    /// <summary>Salt on milled curd.</summary>
    public static readonly Field DrySalt = new("dry-salt", "Salt on the curd", "% of curd", 0, 15, 1, 3.5, LowestExcluded: true);
}
