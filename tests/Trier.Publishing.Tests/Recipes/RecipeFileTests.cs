using System.Text;
using System.Text.Json;
using Trier.Publishing.Recipes;
using Trier.TestKit;
using Trier.Trials.Common;
using Trier.Trials.Makes.Recipes;

namespace Trier.Publishing.Tests.Recipes;

public sealed class RecipeFileTests
{
    public static TheoryData<string> Shipped => [.. ShippedRecipes.All.Select(shipped => shipped.Key)];

    [Fact]
    public void Six_recipes_ship_and_say_that_they_are_general_trade_practice()
    {
        Assert.Equal(["alpine", "alpine-with-propionic", "cheddared", "sheep-pressed", "tomme", "washed-curd"], ShippedRecipes.All.Select(shipped => shipped.Key));
        Assert.All(ShippedRecipes.All, shipped => Assert.StartsWith("General trade practice", shipped.Recipe.Credit, StringComparison.Ordinal));
        Assert.Single(ShippedRecipes.All, shipped => shipped.Recipe.Adds(AdditionKind.PropionicCulture));
    }

    [Theory]
    [MemberData(nameof(Shipped))]
    public void A_shipped_recipe_raises_no_question(string key) =>
        Assert.Empty(Recipe.Read(ShippedRecipes.Named(key)!.ToDraft()).Value.Questions);

    [Theory]
    [MemberData(nameof(Shipped))]
    public void Our_own_json_comes_back_as_it_went(string key)
    {
        var recipe = ShippedRecipes.Named(key)!;
        Assert.Equal(recipe, Read(RecipeJson.Write(recipe)).Recipe);
    }

    [Theory]
    [MemberData(nameof(Shipped))]
    public void Schema_org_json_comes_back_as_it_went(string key)
    {
        var recipe = ShippedRecipes.Named(key)!;
        var written = SchemaOrgRecipe.Write(recipe);
        Assert.Equal(recipe, Read(written).Recipe);
        using var document = JsonDocument.Parse(written);
        Assert.Equal("Recipe", document.RootElement.GetProperty("@type").GetString());
        Assert.Equal(recipe.Steps.Length, document.RootElement.GetProperty("recipeInstructions").GetArrayLength());
        Assert.All(document.RootElement.GetProperty("recipeInstructions").EnumerateArray(), step => Assert.Equal("HowToStep", step.GetProperty("@type").GetString()));
    }

    [Fact]
    public void A_schema_org_recipe_by_others_is_guessed_and_every_gap_is_told()
    {
        var import = File("""
            { "@context": "https://schema.org", "@graph": [ { "@type": "WebPage" }, { "@type": ["Recipe"], "name": "Farm cheese", "author": { "name": "A neighbour" },
              "recipeIngredient": ["10 L milk"],
              "recipeInstructions": [ { "@type": "HowToStep", "text": "Warm the milk to 90 °F over 30 minutes." }, "Cut into 10 mm cubes.", { "@type": "HowToSection", "itemListElement": [ { "text": "Press for 12 hours, until pH 5.3." } ] } ] } ] }
            """).Value;
        Assert.Equal(["heat", "cut", "press"], import.Draft.Steps.Select(step => step.Kind));
        Assert.Equal(("Farm cheese", "A neighbour"), (import.Draft.Name, import.Draft.Credit));
        Assert.Equal([new("celsius", 32.22), new("minutes", 30)], import.Draft.Steps[0].Aims);
        Assert.Equal([new("minutes", 720), new("pH", 5.3)], import.Draft.Steps[2].Aims);
        Assert.Equal(["file", "steps[2].millimetres", "steps[3].kilopascals", "recipeIngredient"], import.Notes.Select(note => note.Field));
    }

    [Theory]
    [InlineData("{ \"trierRecipe\": 1, \"name\": \"x\", ", "Line 1: this is not JSON")]
    [InlineData("[1, 2]", "This JSON is no recipe")]
    [InlineData("{ \"trierRecipe\": 7 }", "“trierRecipe” is 7; this program reads version 1.")]
    [InlineData("{ \"trierRecipe\": 1, \"steps\": [ { \"kind\": \"heat\", \"celcius\": 32 } ] }", "“celcius” is no member of a recipe here")]
    [InlineData("{ \"trierRecipe\": 1, \"steps\": [ { \"kind\": \"heat\", \"celsius\": \"32\" } ] }", "“steps[1].celsius” is \"32\"; it must be a number without quotes")]
    [InlineData("{ \"trierRecipe\": 1, \"steps\": {} }", "“steps” must be a list")]
    public void A_bad_file_is_refused_with_a_sentence(string text, string sentence) =>
        Assert.Contains(File(text).Problems, problem => problem.Sentence.StartsWith(sentence, StringComparison.Ordinal));

    [Fact]
    public void No_cut_of_a_file_and_no_changed_byte_throws()
    {
        var bytes = Encoding.UTF8.GetBytes(RecipeJson.Write(ShippedRecipes.Named("tomme")!));
        for (var i = 0; i < bytes.Length; i += 3)
        {
            Assert.False(RecipeFile.Read(bytes.AsMemory(0, i)).Ok);
            var changed = (byte[])bytes.Clone();
            changed[i] ^= 0x11;
            _ = RecipeFile.Read(changed).Then(import => Recipe.Read(import.Draft));
        }
    }

    [Fact]
    public void The_handbook_names_every_member_kind_and_word()
    {
        var page = System.IO.File.ReadAllText(Path.Combine(Checkout.Root, "docs", "handbook", "recipe-json.md"));
        var words = Target.All.Select(target => target.Key)
            .Concat(Enum.GetValues<StepKind>().Select(kind => kind.Key()))
            .Concat(Enum.GetValues<AdditionKind>().Select(Addition.Words))
            .Concat(Enum.GetValues<DoseUnit>().Select(Addition.Words))
            .Concat(Enum.GetValues<Trier.Dairy.Tables.Style>().Select(StyleWords.Key));
        Assert.All(words, word => Assert.Contains($"`{word}`", page, StringComparison.Ordinal));
        foreach (var kind in Enum.GetValues<StepKind>())
        {
            var row = page.Split('\n').Single(line => line.StartsWith($"| `{kind.Key()}` |", StringComparison.Ordinal));
            Assert.All(StepShape.Of(kind), wanted => Assert.Contains(wanted.Required ? $"**`{wanted.Target.Key}`**" : $"`{wanted.Target.Key}`", row, StringComparison.Ordinal));
        }
    }

    private static Outcome<RecipeImport> File(string text) => RecipeFile.Read(Encoding.UTF8.GetBytes(text));

    private static ReadRecipe Read(string text) => File(text).Then(import => Recipe.Read(import.Draft)).Value;
}
