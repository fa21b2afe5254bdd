using System.Collections.Immutable;
using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Serialization;
using Trier.Trials.Common;
using Trier.Trials.Makes;
using Trier.Trials.Plans;
using Trier.Trials.Tastings;

namespace Trier.Storage;

/// <summary>How events, wheels and ballots are written down. What was once written must stay readable.</summary>
internal static class RecordJson
{
    public static JsonSerializerOptions Options { get; } = new(JsonSerializerDefaults.Web)
    {
        DefaultIgnoreCondition = JsonIgnoreCondition.WhenWritingNull,
        // The text goes into a database, never into a page.
        Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
        Converters =
        {
            new JsonStringEnumConverter(),
            new IdConverter<WheelId>(id => id.Value, value => new WheelId(value)),
            new IdConverter<TrialId>(id => id.Value, value => new TrialId(value)),
            new IdConverter<TasterId>(id => id.Value, value => new TasterId(value)),
            new IdConverter<RevisionId>(id => id.Value, value => new RevisionId(value)),
            new IdConverter<RecipeId>(id => id.Value, value => new RecipeId(value)),
            new IdConverter<MakeId>(id => id.Value, value => new MakeId(value)),
            new IdConverter<ThingId>(id => id.Value, value => new ThingId(value)),
            new BlindCodeConverter(),
            new WheelFactsConverter(),
            new CountingRuleConverter(),
            new BallotPlanConverter(),
            new BallotConverter(),
        },
    };

    public static string Write<T>(T value) => JsonSerializer.Serialize(value, Options);

    public static T Read<T>(string json) => JsonSerializer.Deserialize<T>(json, Options) ?? throw new JsonException($"A stored {typeof(T).Name} is empty.");

    private sealed class IdConverter<TId>(Func<TId, Guid> value, Func<Guid, TId> make) : JsonConverter<TId>
    {
        public override TId Read(ref Utf8JsonReader reader, Type typeToConvert, JsonSerializerOptions options) => make(reader.GetGuid());

        public override void Write(Utf8JsonWriter writer, TId id, JsonSerializerOptions options) => writer.WriteStringValue(value(id));
    }

    private sealed class BlindCodeConverter : JsonConverter<BlindCode>
    {
        public override BlindCode Read(ref Utf8JsonReader reader, Type typeToConvert, JsonSerializerOptions options) => Code(reader.GetString());

        public override void Write(Utf8JsonWriter writer, BlindCode value, JsonSerializerOptions options) => writer.WriteStringValue(value.ToString());

        public override BlindCode ReadAsPropertyName(ref Utf8JsonReader reader, Type typeToConvert, JsonSerializerOptions options) => Code(reader.GetString());

        public override void WriteAsPropertyName(Utf8JsonWriter writer, BlindCode value, JsonSerializerOptions options) => writer.WritePropertyName(value.ToString());

        private static BlindCode Code(string? text) => BlindCode.TryParse(text, out var code) ? code : throw new JsonException($"“{text}” is no blind code.");
    }

    private sealed class WheelFactsConverter : JsonConverter<WheelFacts>
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

    private sealed class CountingRuleConverter : JsonConverter<CountingRule>
    {
        public override CountingRule Read(ref Utf8JsonReader reader, Type typeToConvert, JsonSerializerOptions options)
        {
            var written = JsonSerializer.Deserialize<Written>(ref reader, options) ?? throw new JsonException("A counting rule is empty.");
            return written.Rule switch
            {
                "average place" => new CountingRule.AveragePlace(),
                "firsts" => new CountingRule.Firsts(),
                "place points" => CountingRule.PlacePoints.Stored([.. written.Weights ?? []]),
                "mean liking" => new CountingRule.MeanLiking(),
                _ => throw new JsonException($"“{written.Rule}” is no counting rule."),
            };
        }

        public override void Write(Utf8JsonWriter writer, CountingRule value, JsonSerializerOptions options) =>
            JsonSerializer.Serialize(
                writer,
                value switch
                {
                    CountingRule.AveragePlace => new Written("average place", null),
                    CountingRule.Firsts => new Written("firsts", null),
                    CountingRule.PlacePoints points => new Written("place points", [.. points.Weights]),
                    CountingRule.MeanLiking => new Written("mean liking", null),
                    _ => throw new NotSupportedException($"Cannot write {value.GetType().Name}."),
                },
                options);

        private sealed record Written(string Rule, decimal[]? Weights);
    }

    private sealed class BallotConverter : JsonConverter<Ballot>
    {
        public override Ballot Read(ref Utf8JsonReader reader, Type typeToConvert, JsonSerializerOptions options)
        {
            var written = JsonSerializer.Deserialize<Written>(ref reader, options) ?? throw new JsonException("A ballot is empty.");
            return Ballot.Stored([.. written.Places.Select(group => group.ToImmutableArray())], written.Answers.ToImmutableSortedDictionary());
        }

        public override void Write(Utf8JsonWriter writer, Ballot value, JsonSerializerOptions options) =>
            JsonSerializer.Serialize(writer, new Written([.. value.Places.Select(group => group.ToArray())], new(value.Answers)), options);

        private sealed record Written(BlindCode[][] Places, SortedDictionary<BlindCode, SampleAnswer> Answers);
    }
}
