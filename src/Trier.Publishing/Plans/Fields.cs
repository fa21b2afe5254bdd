using System.Collections.Immutable;
using System.Globalization;
using System.Text.Json;
using Trier.Trials.Common;

namespace Trier.Publishing.Plans;

/// <summary>The members of one JSON object, read with a sentence for each that is not what it should be.</summary>
internal sealed class Fields
{
    private const int Longest = 200;

    private readonly JsonElement _holder;
    private readonly string _path;

    /// <param name="holder">An object.</param>
    /// <param name="path">What stands before a member's name when it is told: "wheels[2].".</param>
    /// <param name="members">The members there may be; any other is a fault.</param>
    /// <param name="faults">Where faults go; a list of its own if null.</param>
    public Fields(JsonElement holder, string path, string[] members, List<Problem>? faults = null)
    {
        (_holder, _path, Faults) = (holder, path, faults ?? []);
        foreach (var stranger in holder.EnumerateObject().Where(member => !members.Contains(member.Name)))
            Fault(stranger.Name, $"“{_path}{stranger.Name}” is no member of a plan: look at its spelling; docs/handbook/plan-json.md lists them all.");
    }

    public List<Problem> Faults { get; }

    public void Fault(string name, string sentence) => Faults.Add(new(name.StartsWith(_path, StringComparison.Ordinal) ? name : _path + name, sentence));

    public string? Text(string name)
    {
        if (Found(name) is not { } value) return null;
        if (value.ValueKind != JsonValueKind.String) Fault(name, $"“{_path}{name}” must be text in quotes.");
        else if (value.GetString()!.Length > Longest) Fault(name, $"“{_path}{name}” has {Longest.ToString(CultureInfo.InvariantCulture)} letters at most.");
        else return value.GetString();
        return null;
    }

    public double? Number(string name)
    {
        if (Found(name) is not { } value) return null;
        if (value.ValueKind == JsonValueKind.Number && value.TryGetDouble(out var number) && double.IsFinite(number)) return number;
        Fault(name, $"“{_path}{name}” must be a number without quotes.");
        return null;
    }

    public int? Whole(string name)
    {
        if (Number(name) is not { } number) return null;
        if (number == Math.Floor(number) && Math.Abs(number) < 1e9) return (int)number;
        Fault(name, $"“{_path}{name}” must be a whole number.");
        return null;
    }

    public bool? Flag(string name)
    {
        if (Found(name) is not { } value) return null;
        if (value.ValueKind is JsonValueKind.True or JsonValueKind.False) return value.GetBoolean();
        Fault(name, $"“{_path}{name}” must be true or false, without quotes.");
        return null;
    }

    public DateOnly? Day(string name)
    {
        if (Text(name) is not { } text) return null;
        if (DateOnly.TryParseExact(text, "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out var day)) return day;
        Fault(name, $"“{_path}{name}” is “{text}”, no day of the calendar: write it as 2025-08-30.");
        return null;
    }

    public List<JsonElement>? List(string name)
    {
        if (Found(name) is not { } value)
        {
            Fault(name, $"“{_path}{name}” is missing: a list in square brackets.");
            return null;
        }

        if (value.ValueKind == JsonValueKind.Array) return [.. value.EnumerateArray()];
        Fault(name, $"“{_path}{name}” must be a list in square brackets.");
        return null;
    }

    public ImmutableArray<decimal> Numbers(string name)
    {
        if (Found(name) is not { } value) return [];
        if (value.ValueKind == JsonValueKind.Array && value.EnumerateArray().All(one => one.ValueKind == JsonValueKind.Number && one.TryGetDecimal(out _))) return [.. value.EnumerateArray().Select(one => one.GetDecimal())];
        Fault(name, $"“{_path}{name}” must be a list of numbers in square brackets.");
        return [];
    }

    /// <summary>Named values of the maker's own.</summary>
    public IEnumerable<KeyValuePair<string, string?>> Named(string name)
    {
        if (Found(name) is not { } value) return [];
        if (value.ValueKind == JsonValueKind.Object && value.EnumerateObject().All(one => one.Value.ValueKind == JsonValueKind.String))
            return [.. value.EnumerateObject().Select(one => new KeyValuePair<string, string?>(one.Name, one.Value.GetString()))];
        Fault(name, $"“{_path}{name}” must be an object of texts in quotes.");
        return [];
    }

    private JsonElement? Found(string name) => _holder.TryGetProperty(name, out var value) && value.ValueKind != JsonValueKind.Null ? value : null;
}
