using System.Collections.Immutable;
using System.Reflection;
using Trier.Trials.Makes.Recipes;

namespace Trier.Publishing.Recipes;

/// <summary>A recipe that comes with the program.</summary>
/// <param name="Key">Its file's name without the ending.</param>
/// <param name="Recipe">The recipe.</param>
public sealed record ShippedRecipe(string Key, Recipe Recipe);

/// <summary>Recipes of our own writing after general trade practice: a start to work from, no one's secret.</summary>
public static class ShippedRecipes
{
    private const string Prefix = "Trier.Recipes.";

    /// <summary>All of them, by name.</summary>
    public static ImmutableArray<ShippedRecipe> All { get; } = Load();

    /// <summary>One of them, or null.</summary>
    /// <param name="key">Its key.</param>
    public static Recipe? Named(string key) => All.FirstOrDefault(shipped => shipped.Key == key)?.Recipe;

    private static ImmutableArray<ShippedRecipe> Load()
    {
        var assembly = Assembly.GetExecutingAssembly();
        return
        [
            .. assembly.GetManifestResourceNames().Where(name => name.StartsWith(Prefix, StringComparison.Ordinal)).Order(StringComparer.Ordinal)
                .Select(name => new ShippedRecipe(name[Prefix.Length..], Read(assembly, name))),
        ];
    }

    private static Recipe Read(Assembly assembly, string name)
    {
        using var stream = assembly.GetManifestResourceStream(name)!;
        var bytes = new byte[stream.Length];
        stream.ReadExactly(bytes);
        return RecipeFile.Read(bytes).Then(import => Recipe.Read(import.Draft)).Value.Recipe;
    }
}
