using System.Collections.Immutable;
using System.Text;
using Trier.Publishing.Recipes;
using Trier.Storage.Makes;
using Trier.Trials.Common;
using Trier.Trials.Makes.Recipes;
using Trier.Web.Hosting;

namespace Trier.Web.Makes.Recipes;

/// <summary>The maker's recipes: list, form, import and export, comparison.</summary>
internal static class RecipeRoutes
{
    public static void MapRecipes(this IEndpointRouteBuilder maker)
    {
        maker.MapGet("/recipes", async (RecipeStore recipes) => Page.Of<RecipesPage>(("Recipes", await RecipeRef.AllAsync(recipes))));
        maker.MapGet("/recipes/new", () => Page.Of<EditRecipePage>(("TypedForm", TypedRecipe.Empty)));
        maker.MapGet("/recipes/import", () => Page.Of<ImportPage>());
        maker.MapPost("/recipes/import", ImportAsync);
        maker.MapGet("/recipes/compare", CompareAsync);
        maker.MapGet("/recipes/{key}", async (string key, HttpContext context, RecipeStore recipes) => await RecipeRef.FindAsync(key, recipes) is { } found ? Page.Of<RecipePage>(("Known", found), ("Chosen", MakerUnits.Of(context))) : Results.NotFound());
        maker.MapGet("/recipes/{key}/edit", EditAsync);
        maker.MapPost("/recipes/{key}", SaveAsync);
        maker.MapGet("/recipes/{key}/trier.json", (string key, RecipeStore recipes) => FileAsync(key, recipes, RecipeJson.Write, "application/json", "json"));
        maker.MapGet("/recipes/{key}/schema-org.json", (string key, RecipeStore recipes) => FileAsync(key, recipes, SchemaOrgRecipe.Write, "application/ld+json", "jsonld"));
    }

    private static async Task<IResult> EditAsync(string key, RecipeStore recipes) =>
        await RecipeRef.FindAsync(key, recipes) is { } found
            ? Page.Of<EditRecipePage>(("TypedForm", TypedRecipe.Of(found.Line is null ? found.Recipe.ToDraft() with { Name = $"{found.Recipe.Name}, mine", Credit = $"After “{found.Recipe.Name}” of Trier’s general trade practice." } : found.Recipe.ToDraft())), ("Key", found.Line is null ? "new" : key))
            : Results.NotFound();

    private static async Task<IResult> SaveAsync(string key, IFormCollection form, RecipeStore recipes)
    {
        var posted = new Posted(form);
        var (typed, deed) = (TypedRecipe.Read(posted), posted.Text("do"));
        if (deed is not ("" or "save")) return Page.Of<EditRecipePage>(("TypedForm", typed.Do(deed, posted.Text("newkind"))), ("Key", key));
        var read = typed.ToRecipe();
        if (!read.TryGet(out var recipe)) return Page.Again<EditRecipePage>(("TypedForm", typed), ("Key", key), ("Faults", RecipeFaults.Of(read.Problems)));
        if (!recipe.Questions.IsEmpty && posted.Text("asked") != "yes")
            return Page.Of<EditRecipePage>(("TypedForm", typed), ("Key", key), ("Questions", recipe.Questions));
        if (key != "new" && (!Guid.TryParse(key, out var known) || await recipes.FindAsync(new(known)) is null)) return Results.NotFound();
        var id = new RecipeId(key == "new" ? Guid.CreateVersion7() : Guid.Parse(key));
        await recipes.SaveAsync(id, recipe.Recipe);
        return Page.GoTo($"/recipes/{id.Value}");
    }

    private static async Task<IResult> ImportAsync(HttpContext context, RecipeStore recipes)
    {
        var form = await context.Request.ReadFormAsync();
        var bytes = Encoding.UTF8.GetBytes(form["text"].ToString());
        if (form.Files["file"] is { Length: > 0 } file)
        {
            if (file.Length > RecipeFile.LargestBytes) return Page.Again<ImportPage>(("Faults", Page.Faults([new Problem("file", "The file is larger than 1 MB, too large for a recipe.")])));
            using var kept = new MemoryStream();
            await file.CopyToAsync(kept);
            bytes = kept.ToArray();
        }

        if (bytes.Length == 0) return Page.Again<ImportPage>(("Faults", Page.Faults([new Problem("file", "Choose a file, or put its text into the box.")])));
        var import = RecipeFile.Read(bytes);
        if (!import.TryGet(out var taken)) return Page.Again<ImportPage>(("Text", form["text"].ToString()), ("Faults", Page.Faults(import.Problems.Select(problem => problem with { Field = "file" }))));
        var typed = TypedRecipe.Of(taken.Draft);
        var read = typed.ToRecipe();
        if (!read.TryGet(out var recipe) || !taken.Notes.IsEmpty || !recipe.Questions.IsEmpty)
            return Page.Of<EditRecipePage>(("TypedForm", typed), ("Key", "new"), ("Faults", RecipeFaults.Of(read.Problems)), ("Notes", taken.Notes), ("Questions", read.Ok ? read.Value.Questions : []));
        var id = new RecipeId(Guid.CreateVersion7());
        await recipes.SaveAsync(id, recipe.Recipe);
        return Page.GoTo($"/recipes/{id.Value}");
    }

    private static async Task<IResult> CompareAsync(HttpContext context, RecipeStore recipes)
    {
        var chosen = new List<RecipeRef>();
        foreach (var key in context.Request.Query["r"].OfType<string>().Distinct().Take(6))
        {
            if (await RecipeRef.FindAsync(key, recipes) is { } found) chosen.Add(found);
        }

        return Page.Of<ComparePage>(("Recipes", await RecipeRef.AllAsync(recipes)), ("Chosen", chosen), ("Reader", MakerUnits.Of(context)));
    }

    private static async Task<IResult> FileAsync(string key, RecipeStore recipes, Func<Recipe, string> write, string type, string ending) =>
        await RecipeRef.FindAsync(key, recipes) is { } found ? Results.File(Encoding.UTF8.GetBytes(write(found.Recipe)), type, $"{FileName(found.Recipe.Name)}.{ending}") : Results.NotFound();

    private static string FileName(string name)
    {
        var plain = new string([.. name.ToLowerInvariant().Select(letter => char.IsAsciiLetterOrDigit(letter) ? letter : '-')]);
        return string.Join('-', plain.Split('-', StringSplitOptions.RemoveEmptyEntries)) is { Length: > 0 } some ? some : "recipe";
    }
}
