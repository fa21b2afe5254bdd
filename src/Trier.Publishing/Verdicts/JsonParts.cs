using System.Text.Json;
using Trier.Statistics.Distributions;
using Trier.Statistics.RankTests;

namespace Trier.Publishing.Verdicts;

/// <summary>Small shapes that the verdict's JSON is made of.</summary>
internal static class JsonParts
{
    public static void List<T>(this Utf8JsonWriter json, string name, IEnumerable<T> items, Action<T> write)
    {
        json.WriteStartArray(name);
        foreach (var item in items) write(item);
        json.WriteEndArray();
    }

    public static void Texts(this Utf8JsonWriter json, string name, IEnumerable<string> texts) => json.List(name, texts, json.WriteStringValue);

    public static void Number(this Utf8JsonWriter json, string name, double? number)
    {
        if (number is { } value && double.IsFinite(value)) json.WriteNumber(name, value);
        else json.WriteNull(name);
    }

    public static void Between(this Utf8JsonWriter json, string name, Interval? interval)
    {
        if (interval is not { } range)
        {
            json.WriteNull(name);
            return;
        }

        json.WriteStartObject(name);
        json.Number("low", range.Low);
        json.Number("high", range.High);
        json.Number("level", range.Level);
        json.WriteEndObject();
    }

    /// <summary>A list of objects.</summary>
    public static void Objects<T>(this Utf8JsonWriter json, string name, IEnumerable<T> items, Action<T> members) => json.List(name, items, item =>
    {
        json.WriteStartObject();
        members(item);
        json.WriteEndObject();
    });

    /// <summary>An object, or null where there is nothing.</summary>
    public static void Object<T>(this Utf8JsonWriter json, string name, T? item, Action<T> members)
        where T : class
    {
        if (item is null)
        {
            json.WriteNull(name);
            return;
        }

        json.WriteStartObject(name);
        members(item);
        json.WriteEndObject();
    }

    public static void Chance(this Utf8JsonWriter json, PValue p)
    {
        json.Number("pValue", p.Value);
        json.WriteString("method", p.Method switch
        {
            TestMethod.Exact => "exact",
            TestMethod.Permutation => "permutation",
            _ => "chiSquare",
        });
        json.Number("error", p.Error);
    }
}
