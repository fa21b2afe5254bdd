using System.Buffers;
using System.Collections.Immutable;
using System.Globalization;
using System.Text.Encodings.Web;
using System.Text.Json;
using Trier.Trials.Common;
using Trier.Trials.Makes.Recipes;

namespace Trier.Publishing.Recipes;

/// <summary>
/// schema.org Recipe as JSON-LD. What we write carries our own format beside the plain words, under a name of its own, so that it comes
/// back whole; of a file by others, steps and numbers are guessed from the words and every guess is told.
/// </summary>
public static class SchemaOrgRecipe
{
    private const string Own = "trier:recipe";
    private static readonly JsonWriterOptions Readable = new() { Indented = true, Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping };

    /// <summary>Writes a recipe.</summary>
    /// <param name="recipe">The recipe.</param>
    public static string Write(Recipe recipe)
    {
        var buffer = new ArrayBufferWriter<byte>();
        using (var writer = new Utf8JsonWriter(buffer, Readable))
        {
            writer.WriteStartObject();
            writer.WriteStartArray("@context");
            writer.WriteStringValue("https://schema.org");
            writer.WriteStartObject();
            writer.WriteString("trier", "urn:trier:");
            writer.WriteEndObject();
            writer.WriteEndArray();
            writer.WriteString("@type", "Recipe");
            writer.WriteString("name", recipe.Name);
            writer.WriteString("recipeCategory", "Cheese");
            if (recipe.About.Length > 0) writer.WriteString("description", recipe.About);
            if (recipe.Credit.Length > 0) writer.WriteString("creditText", recipe.Credit);
            if (recipe.Steps.Aggregate(TimeSpan.Zero, (sum, step) => sum + (step.Takes ?? TimeSpan.Zero)) is { Ticks: > 0 } total) writer.WriteString("totalTime", Iso(total));
            writer.WriteStartArray("recipeIngredient");
            writer.WriteStringValue($"{recipe.Milk.ToString().ToLowerInvariant()}'s milk");
            foreach (var step in recipe.Steps)
            {
                if (step.Addition is { } added) writer.WriteStringValue($"{added.Called}, {step.InWords(step[Target.Dose]!)}");
                if (step[Target.ImcuPerLitre] is { } rennet) writer.WriteStringValue($"rennet, {step.InWords(rennet)}");
            }

            writer.WriteEndArray();
            writer.WriteStartArray("recipeInstructions");
            foreach (var step in recipe.Steps)
            {
                writer.WriteStartObject();
                writer.WriteString("@type", "HowToStep");
                writer.WriteString("name", step.Heading);
                writer.WriteString("text", Words(step));
                writer.WriteEndObject();
            }

            writer.WriteEndArray();
            writer.WritePropertyName(Own);
            RecipeJson.Write(writer, recipe.ToDraft());
            writer.WriteEndObject();
        }

        return System.Text.Encoding.UTF8.GetString(buffer.WrittenSpan) + "\n";
    }

    /// <summary>The recipe in a JSON-LD document: itself, in a list, or in an "@graph".</summary>
    internal static JsonElement? Find(JsonElement element)
    {
        if (element.ValueKind == JsonValueKind.Array) return element.EnumerateArray().Select(Find).FirstOrDefault(found => found is not null);
        if (element.ValueKind != JsonValueKind.Object) return null;
        if (element.TryGetProperty("@type", out var type) && IsRecipe(type)) return element;
        return element.TryGetProperty("@graph", out var graph) ? Find(graph) : null;
    }

    internal static Outcome<RecipeImport> Read(JsonElement recipe)
    {
        if (recipe.TryGetProperty(Own, out var own) && own.ValueKind == JsonValueKind.Object && own.TryGetProperty(RecipeJson.Mark, out _)) return RecipeJson.Read(own);
        var texts = Instructions(recipe).Where(text => text.Length > 0).Take(RecipeGuess.MostSteps).ToList();
        if (texts.Count == 0) return Outcome.Fault<RecipeImport>("recipeInstructions", "This schema.org recipe has no “recipeInstructions”; without steps there is nothing to take in.");
        var notes = new List<Problem> { new("file", "This recipe came from another program: steps and numbers were guessed from its words. Look at every one.") };
        var steps = texts.Select((text, index) => RecipeGuess.Step(text, index + 1, notes)).ToImmutableArray();
        if (recipe.TryGetProperty("recipeIngredient", out var ingredients) && ingredients.ValueKind == JsonValueKind.Array)
            notes.AddRange(ingredients.EnumerateArray().Where(line => line.ValueKind == JsonValueKind.String).Select(line => new Problem("recipeIngredient", $"Ingredient “{line.GetString()}”: give its dose per litre in a step that adds it.")));
        return Outcome.Of(new RecipeImport(new RecipeDraft { Name = Text(recipe, "name"), About = Text(recipe, "description"), Credit = Credit(recipe), Steps = steps }, [.. notes]));
    }

    private static IEnumerable<string> Instructions(JsonElement recipe)
    {
        if (!recipe.TryGetProperty("recipeInstructions", out var instructions)) return [];
        return Flatten(instructions);

        static IEnumerable<string> Flatten(JsonElement element) => element.ValueKind switch
        {
            JsonValueKind.String => (element.GetString() ?? "").Split('\n', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries),
            JsonValueKind.Array => element.EnumerateArray().SelectMany(Flatten),
            JsonValueKind.Object when element.TryGetProperty("itemListElement", out var items) => Flatten(items),
            JsonValueKind.Object => [Text(element, "text") is { Length: > 0 } text ? text : Text(element, "name")],
            _ => [],
        };
    }

    private static string Credit(JsonElement recipe)
    {
        if (Text(recipe, "creditText") is { Length: > 0 } credit) return credit;
        if (!recipe.TryGetProperty("author", out var author)) return "";
        if (author.ValueKind == JsonValueKind.Array) author = author.EnumerateArray().FirstOrDefault();
        return author.ValueKind == JsonValueKind.String ? author.GetString() ?? "" : author.ValueKind == JsonValueKind.Object ? Text(author, "name") : "";
    }

    private static string Text(JsonElement holder, string name) =>
        holder.TryGetProperty(name, out var value) && value.ValueKind == JsonValueKind.String ? (value.GetString() ?? "").Trim() : "";

    private static bool IsRecipe(JsonElement type) => type.ValueKind switch
    {
        JsonValueKind.String => type.GetString() is "Recipe" or "https://schema.org/Recipe" or "http://schema.org/Recipe",
        JsonValueKind.Array => type.EnumerateArray().Any(IsRecipe),
        _ => false,
    };

    private static string Words(Step step)
    {
        var aims = string.Join("; ", step.Aims.Select(aim => aim.Target == Target.Dose ? $"{step.Addition!.Called} {step.InWords(aim)}" : $"{aim.Target.Field.Name} {step.InWords(aim)}"));
        return step.Note.Length == 0 ? $"{aims}." : $"{aims}. {step.Note}";
    }

    private static string Iso(TimeSpan time) => string.Create(CultureInfo.InvariantCulture, $"PT{(long)time.TotalHours}H{time.Minutes}M");
}
