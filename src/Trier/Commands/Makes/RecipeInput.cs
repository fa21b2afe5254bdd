using Trier.Publishing.Recipes;
using Trier.Trials.Common;
using Trier.Trials.Makes.Recipes;

namespace Trier.Commands.Makes;

/// <summary>Reads a recipe named on the command line: a file, standard input, or one that ships.</summary>
internal static class RecipeInput
{
    public static async Task<Outcome<ReadRecipe>> ReadAsync(string name, CancellationToken cancellation)
    {
        if (name != "-" && !File.Exists(name) && ShippedRecipes.Named(name) is { } shipped) return Outcome.Of(new ReadRecipe(shipped, []));
        try
        {
            await using var input = name == "-" ? Console.OpenStandardInput() : File.OpenRead(name);
            using var kept = new MemoryStream();
            var buffer = new byte[81920];
            int read;
            while (kept.Length <= RecipeFile.LargestBytes && (read = await input.ReadAsync(buffer, cancellation)) > 0) kept.Write(buffer, 0, read);
            return RecipeFile.Read(kept.ToArray()).Then(import => Recipe.Read(import.Draft));
        }
        catch (Exception failure) when (failure is FileNotFoundException or DirectoryNotFoundException)
        {
            return Outcome.Fault<ReadRecipe>("file", $"There is no file {name}, and no recipe of that name ships; those are {string.Join(", ", ShippedRecipes.All.Select(known => known.Key))}.");
        }
        catch (Exception failure) when (failure is UnauthorizedAccessException or IOException or ArgumentException or NotSupportedException)
        {
            return Outcome.Fault<ReadRecipe>("file", Directory.Exists(name) ? $"{name} is a folder; name the recipe file in it." : $"{name} cannot be read; look whether it is a file and you may open it.");
        }
    }
}
