using System.Collections.Immutable;

namespace Trier.Trials.Plans.Factors;

/// <summary>
/// What may differ between wheels, in the order in which it is told where nothing else ranks it: what changes a cheese most comes first. The order is our judgement (common practice, no source).
/// </summary>
public enum FactorKind
{
    /// <summary>The recipe.</summary>
    Recipe,

    /// <summary>Age on the day.</summary>
    Age,

    /// <summary>What heat the milk went through.</summary>
    HeatTreatment,

    /// <summary>What set the milk.</summary>
    Coagulant,

    /// <summary>The rind.</summary>
    Rind,

    /// <summary>With lysozyme or without.</summary>
    Lysozyme,

    /// <summary>Other additives.</summary>
    Additives,

    /// <summary>Where it aged.</summary>
    Cave,

    /// <summary>Weight.</summary>
    Size,

    /// <summary>Milk: animal, amount, lot.</summary>
    Milk,

    /// <summary>The year of the milk.</summary>
    MilkYear,

    /// <summary>A step of the vat day that went otherwise, such as a late cut.</summary>
    VatDay,

    /// <summary>Anything else that was named.</summary>
    Other,
}

/// <summary>One thing that may differ, wheel by wheel.</summary>
/// <param name="Kind">What kind of thing.</param>
/// <param name="Name">What it is called: "age", "milk year".</param>
/// <param name="Values">Per wheel its value in words; null where nothing is recorded.</param>
/// <param name="Levels">Per wheel its level: wheels of one level count as alike. Null where nothing is recorded.</param>
/// <param name="Numbers">Per wheel its number (age in days, weight in kilograms); empty where the thing is no number.</param>
public sealed record WheelFactor(FactorKind Kind, string Name, ImmutableArray<string?> Values, ImmutableArray<string?> Levels, ImmutableArray<double?> Numbers)
{
    /// <summary>Whether two wheels differ in it as far as is recorded: ages by 14 days or more, weights by more than a fifth, all else by its words.</summary>
    /// <param name="one">A wheel's number, from 0.</param>
    /// <param name="other">Another's.</param>
    public bool Differ(int one, int other)
    {
        if (Levels[one] is not { } left || Levels[other] is not { } right) return false;
        if (Numbers.IsEmpty || Numbers[one] is not { } a || Numbers[other] is not { } b) return left != right;
        return Kind == FactorKind.Age ? Math.Abs(a - b) >= WheelFactors.AgeBandDays : Math.Max(a, b) > WheelFactors.SizeBand * Math.Min(a, b);
    }

    /// <summary>Whether anything differs at all.</summary>
    public bool Varies => Levels.OfType<string>().Distinct(StringComparer.Ordinal).Count() > 1;

    /// <summary>Wheels of which nothing is recorded.</summary>
    public ImmutableArray<int> Unknown => [.. Enumerable.Range(0, Levels.Length).Where(i => Levels[i] is null)];
}
