using System.Collections.Immutable;
using Trier.Trials.Makes;
using Trier.Trials.Plans;

namespace Trier.Trials.Tests.Plans;

/// <summary>Outlines for tests; all invented.</summary>
internal static class Outlines
{
    public static readonly DateOnly Day = new(2025, 8, 30);

    /// <summary>The demo's six wheels, as its description has them.</summary>
    public static TrialOutline Demo { get; } = Of(
        Wheel("House", "House", "2025-03-15", "sheep’s, 10 L", "1,94 to 1,57 kg"),
        Wheel("Thistle", "Thistle", "2025-03-22", "sheep’s, 10 L", "1,90 to 1,52 kg"),
        Wheel("Hot", "Hot", "2025-03-29", "sheep’s, 10 L", "1,78 to 1,41 kg"),
        Wheel("Short brine", "Short brine", "2025-04-05", "sheep’s, 10 L", "1,97 to 1,60 kg"),
        Wheel("House 2", "House", "2025-04-12", "sheep’s, 10 L", "1,99 to 1,66 kg"),
        Wheel("Old Hot", "Hot", "2024-02-24", "sheep’s, 9 L", "1,66 to 1,18 kg", (WheelFacts.AdditivesFact, "lysozyme (from egg)")));

    public static TrialOutline Of(params (string Name, WheelFacts Facts)[] wheels) =>
        new("Test", "Which?", CountingRule.Default, JuniorsCount: true, Day, 14, 2, null, null, [.. wheels.Select((wheel, i) => new PlannedWheel($"W{i + 1}", wheel.Name, wheel.Facts, null))]);

    public static (string Name, WheelFacts Facts) Wheel(string name, string recipe, string? made = null, string? milk = null, string? size = null, params (string Name, string Value)[] more) =>
        (name, WheelFacts.Of([new(WheelFacts.RecipeFact, recipe), new(WheelFacts.MadeFact, made), new(WheelFacts.MilkFact, milk), new(WheelFacts.SizeFact, size), new(WheelFacts.HeatTreatmentFact, "pasteurised"), .. more.Select(fact => new KeyValuePair<string, string?>(fact.Name, fact.Value))]));
}
