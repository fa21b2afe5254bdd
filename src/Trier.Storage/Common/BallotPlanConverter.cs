using System.Text.Json;
using System.Text.Json.Serialization;
using Trier.Trials.Plans;

namespace Trier.Storage;

/// <summary>Writes what a ballot asks.</summary>
internal sealed class BallotPlanConverter : JsonConverter<BallotPlan>
{
    public override BallotPlan Read(ref Utf8JsonReader reader, Type typeToConvert, JsonSerializerOptions options)
    {
        var written = JsonSerializer.Deserialize<Written>(ref reader, options) ?? throw new JsonException("What a ballot asks is empty.");
        return BallotPlan.Stored(written.Liking, written.Remark, [.. written.Right ?? []], [.. written.Words ?? []], written.Again);
    }

    public override void Write(Utf8JsonWriter writer, BallotPlan value, JsonSerializerOptions options) =>
        JsonSerializer.Serialize(writer, new Written(value.Liking, value.Remark, [.. value.Right], [.. value.Words], value.Again), options);

    private sealed record Written(bool Liking, bool Remark, string[]? Right, string[]? Words, bool Again);
}
