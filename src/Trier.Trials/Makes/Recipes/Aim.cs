namespace Trier.Trials.Makes.Recipes;

/// <summary>What a step aims at, and how far off still counts as met.</summary>
/// <param name="Target">What it is.</param>
/// <param name="Value">The value in the target's unit.</param>
/// <param name="Tolerance">The recipe's own tolerance, or null for the usual one.</param>
public sealed record Aim(Target Target, double Value, double? Tolerance = null)
{
    /// <summary>The tolerance that holds: the recipe's own, or the usual one.</summary>
    public double Slack => Tolerance ?? Math.Max(Target.Slack, Target.SlackShare * Math.Abs(Value));

    /// <summary>Whether a value meets the aim.</summary>
    /// <param name="value">A value in the target's unit.</param>
    public bool Meets(double value) => Math.Abs(value - Value) <= Slack + 1e-9;

    /// <summary>The aim in words, with its unit: "52 C", "90 min (give or take 10)".</summary>
    public string InWords() => Tolerance is { } off
        ? $"{Write.Quantity(Value, Target)} (give or take {Write.Number(off)})"
        : Write.Quantity(Value, Target);
}
