using Trier.Dairy.Workings;

namespace Trier.Dairy.Composition;

/// <summary>The inputs about cheese, with their possible and usual ranges (ranges: common practice).</summary>
public static class CompositionFields
{
    /// <summary>Moisture of cheese.</summary>
    public static readonly Field Moisture = new("moisture", "Moisture of the cheese", "%", 0, 100, 28, 60, LowestExcluded: true);

    /// <summary>Fat of cheese.</summary>
    public static readonly Field Fat = new("cheese-fat", "Fat of the cheese", "%", 0, 100, 15, 40);

    /// <summary>Salt of cheese.</summary>
    public static readonly Field Salt = new("salt", "Salt of the cheese", "%", 0, 20, 0.4, 6);

    /// <summary>Mass of cheese.</summary>
    public static readonly Field CheeseMass = new("cheese-mass", "Mass of the cheese", "kg", 0, 10_000, 0.2, 100, LowestExcluded: true);

    /// <summary>A yield.</summary>
    public static readonly Field Yield = new("yield", "Yield", "kg/100 kg", 0, 60, 7, 22, LowestExcluded: true);

    /// <summary>Fat recovery.</summary>
    public static readonly Field FatRecovery = new("fat-recovery", "Fat recovery RF", "", 0, 1, 0.75, 0.95, LowestExcluded: true);

    /// <summary>Casein recovery.</summary>
    public static readonly Field CaseinRecovery = new("casein-recovery", "Casein recovery RC", "", 0, 1, 0.9, 0.99, LowestExcluded: true);

    /// <summary>Factor for other solids.</summary>
    public static readonly Field SolidsFactor = new("solids-factor", "Solids factor RS", "", 1, 1.5, 1.05, 1.15);

    /// <summary>Fat in dry matter.</summary>
    public static readonly Field FatInDryMatter = new("fat-in-dry-matter", "Fat in dry matter", "%", 0, 100, 30, 65, LowestExcluded: true);

    /// <summary>Age in days.</summary>
    public static readonly Field Days = new("days", "Days", "d", 0, 10_000, 1, 1500, LowestExcluded: true);

    /// <summary>A cost.</summary>
    public static readonly Field Cost = new("cost", "Cost", "", 0, 1e9, 0, 1e5);
}
