using System.Text.Json;

namespace Trier.Publishing.Bundles;

/// <summary>Holds two JSON texts against each other: words exactly, numbers within one part in a thousand million, for processors differ in the last digits.</summary>
internal static class SameJson
{
    private const double Tolerance = 1e-9;
    private const int Most = 10;

    /// <summary>What differs, at most ten sentences.</summary>
    public static IEnumerable<string> Differences(ReadOnlyMemory<byte> held, string drawn)
    {
        JsonDocument before;
        try
        {
            before = JsonDocument.Parse(held);
        }
        catch (JsonException)
        {
            return ["verdict.json cannot be read as JSON."];
        }

        using (before)
        using (var after = JsonDocument.Parse(drawn))
        {
            var version = Text(before.RootElement, "methodsVersion");
            var found = Walk("", before.RootElement, after.RootElement).Take(Most).ToList();
            if (found.Count > 0 && version != Text(after.RootElement, "methodsVersion")) found.Insert(0, $"The bundle was judged by methods version {version ?? "unknown"}, this program has {Text(after.RootElement, "methodsVersion")}: numbers and sentences may differ for that alone.");
            return found;
        }
    }

    private static IEnumerable<string> Walk(string path, JsonElement before, JsonElement after)
    {
        if (before.ValueKind != after.ValueKind) return [Said(path, before, after)];
        return before.ValueKind switch
        {
            JsonValueKind.Object => Members(path, before, after),
            JsonValueKind.Array when before.GetArrayLength() != after.GetArrayLength() => [$"{path} has {before.GetArrayLength()} entries in the bundle and {after.GetArrayLength()} drawn anew."],
            JsonValueKind.Array => before.EnumerateArray().Zip(after.EnumerateArray()).SelectMany((pair, i) => Walk($"{path}[{i}]", pair.First, pair.Second)),
            JsonValueKind.Number => Near(before.GetDouble(), after.GetDouble()) ? [] : [Said(path, before, after)],
            JsonValueKind.String => before.ValueEquals(after.GetString()) ? [] : [Said(path, before, after)],
            _ => [],
        };
    }

    private static IEnumerable<string> Members(string path, JsonElement before, JsonElement after)
    {
        foreach (var member in before.EnumerateObject())
        {
            var at = path.Length == 0 ? member.Name : $"{path}.{member.Name}";
            if (!after.TryGetProperty(member.Name, out var other)) yield return $"{at} stands in the bundle and is not drawn by this program.";
            else foreach (var difference in Walk(at, member.Value, other)) yield return difference;
        }

        foreach (var member in after.EnumerateObject())
        {
            if (!before.TryGetProperty(member.Name, out _)) yield return $"{(path.Length == 0 ? member.Name : $"{path}.{member.Name}")} is missing in the bundle.";
        }
    }

    private static bool Near(double before, double after) => Math.Abs(before - after) <= Tolerance * Math.Max(1, Math.Max(Math.Abs(before), Math.Abs(after)));

    private static string? Text(JsonElement element, string name) => element.ValueKind == JsonValueKind.Object && element.TryGetProperty(name, out var member) && member.ValueKind == JsonValueKind.String ? member.GetString() : null;

    private static string Said(string path, JsonElement before, JsonElement after) => $"{path} is {Short(before)} in the bundle and {Short(after)} drawn anew.";

    private static string Short(JsonElement element) => element.GetRawText() is { Length: > 60 } raw ? raw[..59] + "…" : element.GetRawText();
}
