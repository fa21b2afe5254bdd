using System.Collections.Immutable;

namespace Trier.Trials.Makes.Recipes;

/// <summary>A recipe as a form or a file holds it: nothing is checked yet. <see cref="Recipe.Read"/> makes a recipe of it.</summary>
public sealed record RecipeDraft
{
    /// <summary>Name.</summary>
    public string Name { get; init; } = "";

    /// <summary>Style, as a word of <see cref="Trier.Dairy.Tables.Style"/>.</summary>
    public string Style { get; init; } = "";

    /// <summary>Animal, as a word of <see cref="Trier.Dairy.Milk.Species"/>.</summary>
    public string Milk { get; init; } = "";

    /// <summary>What kind of cheese it gives, in a sentence or two.</summary>
    public string About { get; init; } = "";

    /// <summary>Whose recipe it is.</summary>
    public string Credit { get; init; } = "";

    /// <summary>Aims of the finished cheese and the vat milk.</summary>
    public ImmutableArray<AimDraft> Cheese { get; init; } = [];

    /// <summary>The steps in order.</summary>
    public ImmutableArray<StepDraft> Steps { get; init; } = [];
}

/// <summary>A step as a form or a file holds it.</summary>
public sealed record StepDraft
{
    /// <summary>Kind, as a word of <see cref="StepKind"/>.</summary>
    public string Kind { get; init; } = "";

    /// <summary>Heading; may be empty.</summary>
    public string Title { get; init; } = "";

    /// <summary>How it is done; may be empty.</summary>
    public string Note { get; init; } = "";

    /// <summary>What is added, as a word; only in an adding step.</summary>
    public string What { get; init; } = "";

    /// <summary>What the maker calls it.</summary>
    public string Called { get; init; } = "";

    /// <summary>What the dose is counted in.</summary>
    public string Per { get; init; } = "";

    /// <summary>The aims.</summary>
    public ImmutableArray<AimDraft> Aims { get; init; } = [];
}

/// <summary>An aim as a form or a file holds it.</summary>
/// <param name="Key">The target's key.</param>
/// <param name="Value">The value.</param>
/// <param name="Tolerance">The tolerance, or null.</param>
public sealed record AimDraft(string Key, double Value, double? Tolerance = null);
