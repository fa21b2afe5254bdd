using System.Collections.Immutable;
using Trier.Trials.Common;

namespace Trier.Trials.Makes.Recipes;

/// <summary>One version of a recipe as it was written down.</summary>
/// <param name="Number">1, 2, 3 ...</param>
/// <param name="Recipe">The recipe.</param>
/// <param name="At">When it was written.</param>
/// <param name="Used">Whether a make was begun by it; such a version never changes.</param>
public sealed record RecipeVersion(int Number, Recipe Recipe, DateTimeOffset At, bool Used);

/// <summary>A recipe with its versions. A used version is frozen; writing then begins the next one.</summary>
/// <param name="Id">Names the recipe.</param>
/// <param name="Versions">All versions, first to last; at least one.</param>
public sealed record RecipeLine(RecipeId Id, ImmutableArray<RecipeVersion> Versions)
{
    /// <summary>The version that stands.</summary>
    public RecipeVersion Current => Versions[^1];

    /// <summary>The number the next writing gets: the current one while no make uses it, else one more.</summary>
    /// <param name="recipe">What is written.</param>
    /// <returns>The number, or null where it says the same as the current version.</returns>
    public int? NumberFor(Recipe recipe) => recipe.Equals(Current.Recipe) ? null : Current.Used ? Current.Number + 1 : Current.Number;
}
