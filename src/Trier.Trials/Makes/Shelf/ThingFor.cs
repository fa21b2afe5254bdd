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

    /// <summary>What a step can name: things of its kind that are not gone.</summary>
    /// <param name="step">The step.</param>
    /// <param name="shelf">Everything on the shelf.</param>
    public static ImmutableArray<Thing> Offered(Step step, ImmutableArray<Thing> shelf) =>
        Kind(step) is { } kind ? [.. shelf.Where(thing => thing.Kind == kind && !thing.Gone)] : [];
}
