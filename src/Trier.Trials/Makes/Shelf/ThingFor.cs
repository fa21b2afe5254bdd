using System.Collections.Immutable;
using Trier.Trials.Makes.Recipes;

namespace Trier.Trials.Makes.Shelf;

/// <summary>Which things of the shelf a step can name.</summary>
public static class ThingFor
{
    /// <summary>The kind of thing a step uses, or null where it uses none that is kept on the shelf.</summary>
    /// <param name="step">The step.</param>
    public static ThingKind? Kind(Step step) => (step.Kind, step.Addition?.Kind) switch
    {
        (StepKind.Add, AdditionKind.Culture or AdditionKind.PropionicCulture) => ThingKind.Culture,
        (StepKind.Renneting, _) => ThingKind.Rennet,
        (StepKind.Brine, _) => ThingKind.Brine,
        _ => null,
    };

    /// <summary>What is very likely meant at a step: the one thing that fits it and is not past its date; null where there is none, or a choice.</summary>
    /// <param name="step">The step.</param>
    /// <param name="shelf">Everything on the shelf.</param>
    /// <param name="now">Now.</param>
    public static Thing? Likely(Step step, ImmutableArray<Thing> shelf, DateTimeOffset now) =>
        Offered(step, shelf).Where(thing => Fits(step, thing)).ToList() is [{ } only] && !only.PastDate(now) ? only : null;

    // Cultures are many and the shelf knows them by their names alone: one fits where a word of the recipe's stands in its name.
    private static bool Fits(Step step, Thing thing) =>
        thing.Kind != ThingKind.Culture || Words(step.Addition!.Called).Intersect(Words(thing.Name), StringComparer.OrdinalIgnoreCase).Any();

    private static IEnumerable<string> Words(string name) =>
        name.Split([' ', ',', '.', '-', '(', ')'], StringSplitOptions.RemoveEmptyEntries).Where(word => word.Length > 3 && !Common.Contains(word));

    // Words that any culture may bear.
    private static readonly ImmutableHashSet<string> Common = ImmutableHashSet.Create(StringComparer.OrdinalIgnoreCase, "culture", "starter", "bulk", "with", "some", "from", "type");

    /// <summary>What a step can name: things of its kind that are not gone.</summary>
    /// <param name="step">The step.</param>
    /// <param name="shelf">Everything on the shelf.</param>
    public static ImmutableArray<Thing> Offered(Step step, ImmutableArray<Thing> shelf) =>
        Kind(step) is { } kind ? [.. shelf.Where(thing => thing.Kind == kind && !thing.Gone)] : [];
}
