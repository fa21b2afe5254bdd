using System.Buffers;
using System.Collections.Immutable;
using System.Globalization;
using System.Text.Encodings.Web;
using System.Text.Json;
using Trier.Trials.Common;
using Trier.Trials.Makes.Recipes;

namespace Trier.Publishing.Recipes;

/// <summary>The program's own recipe format; its members stand in docs/handbook/recipe-json.md. Reading takes no member it does not know.</summary>
public static class RecipeJson
{
    internal const string Mark = "trierRecipe";
    private const int Version = 1;
    private const string ToleranceSuffix = "Tolerance";
    private static readonly JsonWriterOptions Readable = new() { Indented = true, Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping };

    /// <summary>Writes a recipe, indented, ending with a line feed.</summary>
    /// <param name="recipe">The recipe.</param>
    public static string Write(Recipe recipe)
    {
        var buffer = new ArrayBufferWriter<byte>();
        using (var writer = new Utf8JsonWriter(buffer, Readable)) Write(writer, recipe.ToDraft());
        return System.Text.Encoding.UTF8.GetString(buffer.WrittenSpan) + "\n";
    }

    internal static void Write(Utf8JsonWriter writer, RecipeDraft draft)
    {
        writer.WriteStartObject();
        writer.WriteNumber(Mark, Version);
        writer.WriteString("name", draft.Name);
        writer.WriteString("style", draft.Style);
        writer.WriteString("milk", draft.Milk);
        Text(writer, "about", draft.About);
        Text(writer, "credit", draft.Credit);
        writer.WriteStartObject("cheese");
        Aims(writer, draft.Cheese);
        writer.WriteEndObject();
        writer.WriteStartArray("steps");
        foreach (var step in draft.Steps)
        {
            writer.WriteStartObject();
            writer.WriteString("kind", step.Kind);
            Text(writer, "title", step.Title);
            Text(writer, "what", step.What);
            Text(writer, "called", step.Called);
            Text(writer, "per", step.Per);
            Aims(writer, step.Aims);
            Text(writer, "note", step.Note);
            writer.WriteEndObject();
        }

        writer.WriteEndArray();
        writer.WriteEndObject();
    }

    internal static Outcome<RecipeImport> Read(JsonElement root)
    {
        var faults = new List<Problem>();
        if (root.GetProperty(Mark) is not { ValueKind: JsonValueKind.Number } version || !version.TryGetInt32(out var number) || number != Version)
            return Outcome.Fault<RecipeImport>(Mark, $"“{Mark}” is {root.GetProperty(Mark)}; this program reads version 1.");
        var draft = new RecipeDraft
        {
            Name = Word(root, "name", "name", faults),
            Style = Word(root, "style", "style", faults),
            Milk = Word(root, "milk", "milk", faults),
            About = Word(root, "about", "about", faults),
            Credit = Word(root, "credit", "credit", faults),
            Cheese = root.TryGetProperty("cheese", out var cheese) ? Aims(cheese, "cheese", [], faults) : [],
            Steps = root.TryGetProperty("steps", out var steps) ? Steps(steps, faults) : [],
        };
        foreach (var stranger in root.EnumerateObject().Where(member => member.Name is not (Mark or "name" or "style" or "milk" or "about" or "credit" or "cheese" or "steps")))
            faults.Add(Unknown(stranger.Name, stranger.Name));
        return faults.Count > 0 ? Outcome.Fault<RecipeImport>(faults) : Outcome.Of(new RecipeImport(draft, []));
    }

    private static ImmutableArray<StepDraft> Steps(JsonElement steps, List<Problem> faults)
    {
        if (steps.ValueKind != JsonValueKind.Array)
        {
            faults.Add(new("steps", "“steps” must be a list in square brackets."));
            return [];
        }

        return [.. steps.EnumerateArray().Select((step, index) => Step(step, string.Create(CultureInfo.InvariantCulture, $"steps[{index + 1}]"), faults))];
    }

    private static StepDraft Step(JsonElement step, string path, List<Problem> faults)
    {
        if (step.ValueKind != JsonValueKind.Object)
        {
            faults.Add(new(path, $"{path} must be an object in curly brackets, with its “kind”."));
            return new StepDraft();
        }

        string[] words = ["kind", "title", "note", "what", "called", "per"];
        return new StepDraft
        {
            Kind = Word(step, "kind", $"{path}.kind", faults),
            Title = Word(step, "title", $"{path}.title", faults),
            Note = Word(step, "note", $"{path}.note", faults),
            What = Word(step, "what", $"{path}.what", faults),
            Called = Word(step, "called", $"{path}.called", faults),
            Per = Word(step, "per", $"{path}.per", faults),
            Aims = Aims(step, path, words, faults),
        };
    }

    private static ImmutableArray<AimDraft> Aims(JsonElement holder, string path, string[] words, List<Problem> faults)
    {
        if (holder.ValueKind != JsonValueKind.Object)
        {
            faults.Add(new(path, $"“{path}” must be an object in curly brackets."));
            return [];
        }

        var aims = new List<AimDraft>();
        foreach (var member in holder.EnumerateObject().Where(member => !words.Contains(member.Name)))
        {
            var place = $"{path}.{member.Name}";
            if (member.Name.EndsWith(ToleranceSuffix, StringComparison.Ordinal) && Target.Named(member.Name[..^ToleranceSuffix.Length]) is { } tolerated)
            {
                if (!holder.TryGetProperty(tolerated.Key, out _)) faults.Add(new(place, $"“{place}” has no “{tolerated.Key}” beside it to be the tolerance of."));
                _ = Number(member.Value, place, faults);
            }
            else if (Target.Named(member.Name) is { } target)
            {
                double? off = holder.TryGetProperty(target.Key + ToleranceSuffix, out var tolerance) && tolerance.ValueKind == JsonValueKind.Number ? tolerance.GetDouble() : null;
                if (Number(member.Value, place, faults) is { } value) aims.Add(new(target.Key, value, off));
            }
            else
            {
                faults.Add(Unknown(place, member.Name));
            }
        }

        return [.. aims];
    }

    private static double? Number(JsonElement value, string place, List<Problem> faults)
    {
        if (value.ValueKind == JsonValueKind.Number && value.TryGetDouble(out var number) && double.IsFinite(number)) return number;
        faults.Add(new(place, $"“{place}” is {value.GetRawText()[..Math.Min(40, value.GetRawText().Length)]}; it must be a number without quotes, with a decimal point."));
        return null;
    }

    private static string Word(JsonElement holder, string name, string place, List<Problem> faults)
    {
        if (!holder.TryGetProperty(name, out var value) || value.ValueKind == JsonValueKind.Null) return "";
        if (value.ValueKind == JsonValueKind.String) return value.GetString() ?? "";
        faults.Add(new(place, $"“{place}” must be text in quotes."));
        return "";
    }

    private static Problem Unknown(string place, string name) => new(place, $"“{name}” is no member of a recipe here: look at its spelling; docs/handbook/recipe-json.md lists them all.");

    private static void Text(Utf8JsonWriter writer, string name, string value)
    {
        if (value.Length > 0) writer.WriteString(name, value);
    }

    private static void Aims(Utf8JsonWriter writer, ImmutableArray<AimDraft> aims)
    {
        foreach (var aim in aims)
        {
            writer.WriteNumber(aim.Key, aim.Value);
            if (aim.Tolerance is { } off) writer.WriteNumber(aim.Key + ToleranceSuffix, off);
        }
    }
}
