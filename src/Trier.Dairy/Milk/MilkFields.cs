using Trier.Dairy.Workings;

namespace Trier.Dairy.Milk;

/// <summary>The inputs about milk, with their possible and usual ranges (ranges: common practice).</summary>
public static class MilkFields
{
    /// <summary>Volume of milk.</summary>
    public static readonly Field MilkVolume = new("milk-volume", "Volume of milk", "L", 0, 100_000, 2, 500, LowestExcluded: true);

    /// <summary>Mass of milk.</summary>
    public static readonly Field MilkMass = new("milk-mass", "Mass of milk", "kg", 0, 100_000, 2, 500, LowestExcluded: true);

    /// <summary>Fat of whole milk.</summary>
    public static readonly Field MilkFat = new("milk-fat", "Fat of the milk", "%", 0, 20, 2.5, 9);

    /// <summary>Fat of any dairy stream, skim to butter.</summary>
    public static readonly Field StreamFat = new("stream-fat", "Fat of the milk, skim or cream", "%", 0, 85, 0, 50);

    /// <summary>Fat of skim.</summary>
    public static readonly Field SkimFat = new("skim-fat", "Fat of the skim", "%", 0, 5, 0, 0.5);

    /// <summary>Fat of cream.</summary>
    public static readonly Field CreamFat = new("cream-fat", "Fat of the cream", "%", 5, 85, 15, 50);

    /// <summary>Protein of milk.</summary>
    public static readonly Field MilkProtein = new("milk-protein", "Protein of the milk", "%", 0, 12, 2.7, 6.5, LowestExcluded: true);

    /// <summary>Casein of milk.</summary>
    public static readonly Field MilkCasein = new("milk-casein", "Casein of the milk", "%", 0, 10, 2.0, 5.2, LowestExcluded: true);

    /// <summary>Casein as a part of protein.</summary>
    public static readonly Field CaseinNumber = new("casein-number", "Casein number", "", 0.4, 0.95, 0.70, 0.85);

    /// <summary>Lactose of milk.</summary>
    public static readonly Field MilkLactose = new("milk-lactose", "Lactose of the milk", "%", 0, 8, 4.0, 5.5);

    /// <summary>Ash of milk.</summary>
    public static readonly Field MilkAsh = new("milk-ash", "Ash of the milk", "%", 0, 2, 0.6, 1.0);

    /// <summary>Solids other than fat.</summary>
    public static readonly Field SolidsNotFat = new("solids-not-fat", "Solids-not-fat of the milk", "%", 0, 20, 5, 12.5);

    /// <summary>Temperature of milk in the vat.</summary>
    public static readonly Field MilkTemperature = new("milk-temperature", "Temperature of the milk", "°C", -1, 100, 2, 40);

    /// <summary>Lactometer reading.</summary>
    public static readonly Field Lactometer = new("lactometer", "Lactometer reading", "degrees", 0, 60, 25, 38);

    /// <summary>Target content of a standardised stream.</summary>
    public static readonly Field TargetContent = new("target-content", "Target content", "%", 0, 85, 0.5, 50);

    /// <summary>Target protein to fat ratio.</summary>
    public static readonly Field ProteinToFat = new("protein-to-fat", "Target protein to fat", "", 0.1, 60, 0.7, 1.8);

    /// <summary>Target casein to fat ratio.</summary>
    public static readonly Field CaseinToFat = new("casein-to-fat", "Target casein to fat", "", 0.1, 50, 0.55, 1.4);
}
