using Trier.Publishing.Recipes;
using Trier.Storage.Makes;
using Trier.Trials.Makes.Recipes;

namespace Trier.Web.Makes.Recipes;

/// <summary>A recipe by the last part of its address: one of the maker's own, or one that ships.</summary>
/// <param name="Key">The last part of its address.</param>
/// <param name="Recipe">The recipe.</param>
/// <param name="Line">Its versions; null for one that ships.</param>
public sealed record RecipeRef(string Key, Recipe Recipe, RecipeLine? Line)
{
    /// <summary>Its address.</summary>
    public string Path => $"/recipes/{Key}";

    /// <summary>Finds it, or null.</summary>
    public static async Task<RecipeRef?> FindAsync(string key, RecipeStore recipes)
    {
        if (ShippedRecipes.Named(key) is { } shipped) return new(key, shipped, null);
        return Guid.TryParse(key, out var id) && await recipes.FindAsync(new(id)) is { } line ? Of(line) : null;
    }

    /// <summary>Every recipe there is, the maker's own first.</summary>
    public static async Task<IReadOnlyList<RecipeRef>> AllAsync(RecipeStore recipes) =>
        [.. (await recipes.AllAsync()).Select(Of), .. ShippedRecipes.All.Select(shipped => new RecipeRef(shipped.Key, shipped.Recipe, null))];

    private static RecipeRef Of(RecipeLine line) => new(line.Id.Value.ToString(), line.Current.Recipe, line);
}
