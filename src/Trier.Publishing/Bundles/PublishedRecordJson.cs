using System.Collections.Immutable;
using System.Globalization;
using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Serialization;
using System.Text.Unicode;
using Trier.Statistics.Randomness;
using Trier.Trials.Common;
using Trier.Trials.Makes;
using Trier.Trials.Plans;
using Trier.Trials.Verdicts;
using Trier.Trials.Verdicts.Publishing;

namespace Trier.Publishing.Bundles;

/// <summary>
/// A published record as JSON, from which the same verdict can be drawn again. Only what <see cref="PublishedRecord"/> gives is written. Members:
/// docs/handbook/record.schema.json.
/// </summary>
public static class PublishedRecordJson
{
    /// <summary>Names the form in the file.</summary>
    public const string Form = "trier record 1";

    private static readonly JsonSerializerOptions Options = new(JsonSerializerDefaults.Web)
    {
        WriteIndented = true,
        NewLine = "\n",
        DefaultIgnoreCondition = JsonIgnoreCondition.WhenWritingNull,
        IgnoreReadOnlyProperties = true,
        RespectNullableAnnotations = true,
        Encoder = JavaScriptEncoder.Create(UnicodeRanges.All),
        Converters = { new JsonStringEnumConverter(JsonNamingPolicy.CamelCase), new FactsConverter(), new RuleConverter() },
    };

    /// <summary>The text, ending in a line end.</summary>
    /// <param name="record">The record; what may not be published is left out.</param>
    /// <param name="seed">Where chance came from.</param>
    public static string Write(TastingRecord record, ulong seed)
    {
        ArgumentNullException.ThrowIfNull(record);
        return Text(PublishedRecord.Of(record), seed);
    }

    /// <summary>Whether a record says nothing that may not be published.</summary>
    /// <param name="record">The record.</param>
    internal static bool IsPublished(TastingRecord record) => Text(record, 0) == Text(PublishedRecord.Of(record), 0);

    /// <summary>Reads a record.</summary>
    /// <param name="bytes">UTF-8.</param>
    /// <returns>Record and seed, or one sentence on what is wrong.</returns>
    public static Outcome<(TastingRecord Record, Seed Seed)> Read(ReadOnlySpan<byte> bytes)
    {
        try
        {
            var read = JsonSerializer.Deserialize<Written>(bytes.StartsWith(Encoding.UTF8.Preamble) ? bytes[Encoding.UTF8.Preamble.Length..] : bytes, Options);
            if (read is null || read.Form != Form) return Fault($"record.json does not say “{Form}”: it is not a record this program can read.");
            if (!ulong.TryParse(read.Seed, NumberStyles.None, CultureInfo.InvariantCulture, out var seed)) return Fault("The seed in record.json is no whole number.");
            return RecordCheck.Sentence(read.Record) is { } wrong ? Fault(wrong) : Outcome.Of((PublishedRecord.Of(read.Record), new Seed(seed)));
        }
        catch (JsonException fault) when (fault.Path == RuleConverter.Uncountable)
        {
            return Fault(fault.Message);
        }
        catch (Exception fault) when (fault is JsonException or ArgumentException or InvalidOperationException or NotSupportedException)
        {
            return Fault(fault is JsonException { LineNumber: { } line } ? $"record.json, line {line + 1}: this is not as in a published record. Take the bundle anew." : "record.json is not a published record. Take the bundle anew.");
        }
    }

    private static string Text(TastingRecord record, ulong seed) => JsonSerializer.Serialize(new Written(Form, seed.ToString(CultureInfo.InvariantCulture), record), Options) + "\n";

    private static Outcome<(TastingRecord, Seed)> Fault(string sentence) => Outcome.Fault<(TastingRecord, Seed)>("record.json", sentence);

    private sealed record Written(string Form, string Seed, TastingRecord Record);

    private sealed class FactsConverter : JsonConverter<WheelFacts>
    {
        public override WheelFacts Read(ref Utf8JsonReader reader, Type typeToConvert, JsonSerializerOptions options) =>
            WheelFacts.Of(JsonSerializer.Deserialize<Dictionary<string, string?>>(ref reader, options) ?? []);

        public override void Write(Utf8JsonWriter writer, WheelFacts value, JsonSerializerOptions options)
        {
            writer.WriteStartObject();
            foreach (var (name, text) in value.Values) writer.WriteString(name, text);
            writer.WriteEndObject();
        }
    }

    private sealed class RuleConverter : JsonConverter<CountingRule>
    {
        /// <summary>Stands as the path of a fault whose sentence is for people.</summary>
        public const string Uncountable = "the rule";

        public override CountingRule Read(ref Utf8JsonReader reader, Type typeToConvert, JsonSerializerOptions options)
        {
            var rule = JsonSerializer.Deserialize<WrittenRule>(ref reader, options) ?? throw new JsonException();
            return rule.Name switch
            {
                "average place" => new CountingRule.AveragePlace(),
                "firsts" => new CountingRule.Firsts(),
                "place points" => Points([.. rule.Weights ?? throw new JsonException()]),
                "mean liking" => new CountingRule.MeanLiking(),
                _ => throw new JsonException(),
            };
        }

        public override void Write(Utf8JsonWriter writer, CountingRule value, JsonSerializerOptions options) => JsonSerializer.Serialize(
            writer,
            value switch
            {
                CountingRule.AveragePlace => new WrittenRule("average place", null),
                CountingRule.Firsts => new("firsts", null),
                CountingRule.PlacePoints points => new("place points", [.. points.Weights]),
                CountingRule.MeanLiking => new("mean liking", null),
                _ => throw new NotSupportedException($"Cannot write {value.GetType().Name}."),
            },
            options);

        private static CountingRule.PlacePoints Points(ImmutableArray<decimal> weights) =>
            (CountingRule.PlacePoints.Fault(weights) ?? (CountingRule.PlacePoints.Fall(weights) ? null : "Place points fall from the first place to the last.")) is { } fault
                ? throw new JsonException($"The rule in record.json cannot be counted. {fault}", Uncountable, null, null)
                : new(weights);

        private sealed record WrittenRule(string Name, decimal[]? Weights);
    }
}
