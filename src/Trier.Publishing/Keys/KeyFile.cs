using System.Collections.Immutable;
using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;
using Trier.Trials.Common;
using Trier.Trials.Tastings.Commitments;

namespace Trier.Publishing.Keys;

/// <summary>
/// The file by which anyone can work out again what was fixed about a key: tasting, and every commitment with number, key version, salt, words
/// and lines. Described in docs/handbook/key-file.md.
/// </summary>
public static class KeyFile
{
    /// <summary>Most commitments a file may hold; each takes about a second to check.</summary>
    public const int MostCommitments = 50;

    private const int MostLines = 100;

    private static readonly JsonSerializerOptions Options = new(JsonSerializerDefaults.Web)
    {
        WriteIndented = true,
        NewLine = "\n",
        Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
        RespectNullableAnnotations = true,
        RespectRequiredConstructorParameters = true,
    };

    /// <summary>The file's text, ending in a line end.</summary>
    /// <param name="tasting">Which tasting.</param>
    /// <param name="commitments">All of its commitments, in order.</param>
    public static string Write(TrialId tasting, ImmutableArray<Commitment> commitments) =>
        JsonSerializer.Serialize(new Written(Statement.Form, tasting.Value, Commitment.Rounds, [.. commitments]), Options) + "\n";

    /// <summary>Reads a file.</summary>
    /// <param name="bytes">UTF-8, 1 MB at most.</param>
    /// <returns>Tasting and commitments, not yet checked; or one sentence on what is wrong.</returns>
    public static Outcome<(TrialId Tasting, ImmutableArray<Commitment> Commitments)> Read(ReadOnlySpan<byte> bytes)
    {
        Written? read;
        try
        {
            if (bytes.Length > 1_000_000) return Fault("The file is larger than a key file can be (1 MB).");
            read = JsonSerializer.Deserialize<Written>(bytes.StartsWith(Encoding.UTF8.Preamble) ? bytes[Encoding.UTF8.Preamble.Length..] : bytes, Options);
        }
        catch (JsonException wrong)
        {
            return Fault(wrong.LineNumber is { } line ? $"Line {line + 1} is not as in a key file: download the file again from the page of the key." : "This is not a key file: download it again from the page of the key.");
        }

        if (read is null || read.Form != Statement.Form) return Fault($"This is not a key file: its form should be “{Statement.Form}”.");
        if (read.Rounds != Commitment.Rounds) return Fault($"The file names {read.Rounds} rounds; a commitment has {Commitment.Rounds}.");
        if (read.Commitments.Length is 0 or > MostCommitments) return Fault($"A key file holds 1 to {MostCommitments} commitments; this one holds {read.Commitments.Length}.");
        if (read.Commitments.Any(one => one is null || one.Lines.IsDefault || one.Lines.Length > MostLines || one.Lines.Any(line => line is null || line.Contains('\n', StringComparison.Ordinal))))
            return Fault("The lines of a commitment are missing or broken: download the file again from the page of the key.");
        return Outcome.Of((new TrialId(read.Tasting), read.Commitments.ToImmutableArray()));
    }

    private static Outcome<(TrialId, ImmutableArray<Commitment>)> Fault(string sentence) => Outcome.Fault<(TrialId, ImmutableArray<Commitment>)>("file", sentence);

    private sealed record Written(string Form, Guid Tasting, int Rounds, Commitment[] Commitments);
}
