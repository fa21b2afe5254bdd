using System.Collections.Immutable;
using Trier.Trials.Makes.Recipes;
using Trier.Trials.Makes.Sheets;

namespace Trier.Trials.Makes.Days;

/// <summary>
/// The way from the milk to a wheel. An undivided vat has one lane; a split vat has one a part, and the steps before the split belong to all of them.
/// </summary>
public sealed partial record Lane
{
    /// <summary>Number of the part, from 1; null in an undivided vat.</summary>
    public int? Part { get; init; }

    /// <summary>The part, or null in an undivided vat.</summary>
    public VatPart? Called { get; init; }

    /// <summary>The recipe with the part's own aims.</summary>
    public required Recipe Recipe { get; init; }

    /// <summary>When the first step begins.</summary>
    public required DateTimeOffset Begins { get; init; }

    /// <summary>The steps in order; what the part leaves out is missing, the others keep their numbers.</summary>
    public required ImmutableArray<DayStep> Steps { get; init; }

    /// <summary>The first step not done, or null when all are.</summary>
    public DayStep? Current => Steps.FirstOrDefault(step => step.Done is null);

    /// <summary>The step after the current one, or null.</summary>
    public DayStep? Next => Current is { } now ? Steps.FirstOrDefault(step => step.Number > now.Number && step.Done is null) : null;

    /// <summary>The step of this number, or null.</summary>
    /// <param name="number">The number.</param>
    public DayStep? Find(int number) => Steps.FirstOrDefault(step => step.Number == number);

    /// <summary>The milk and means this lane is worked out for: its share of the vat.</summary>
    /// <param name="whole">The vat.</param>
    /// <param name="wheels">How many wheels it gives, or null for what was planned.</param>
    public VatDraft Share(VatDraft whole, int? wheels = null) => Called is { } part
        ? whole with { Litres = whole.Litres * part.Percent / 100, Wheels = wheels ?? Math.Max(1, (int)Math.Round(whole.Wheels * part.Percent / 100)) }
        : whole with { Wheels = wheels ?? whole.Wheels };
}
