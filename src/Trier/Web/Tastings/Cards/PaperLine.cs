using System.Collections.Immutable;
using System.Globalization;
using Trier.Trials.Plans;
using Trier.Trials.Tastings;
using Trier.Web.Hosting;
using Trier.Web.Tastings.Ballots;

namespace Trier.Web.Tastings.Cards;

/// <summary>One sample of a written ballot, as typed.</summary>
/// <param name="Sample">The code.</param>
/// <param name="Liking">Liking 1 to 9, or empty.</param>
/// <param name="Remark">The remark, or empty.</param>
/// <param name="Place">The place; where it cannot be read for certain, what stands there with a question mark or a stroke; or empty.</param>
public sealed record PaperLine(BlindCode Sample, string Liking, string Remark, string Place)
{
    /// <summary>Answers by property: -1, 0 or 1; null where open.</summary>
    public IReadOnlyDictionary<string, int?> Amounts { get; init; } = ImmutableDictionary<string, int?>.Empty;

    /// <summary>Words ticked.</summary>
    public ImmutableArray<string> Words { get; init; } = [];

    /// <summary>Letters of the words on the sheet that are no letter of it, as typed; else empty.</summary>
    public string StrayTicks { get; init; } = "";

    /// <summary>Whether they would serve it again, or null.</summary>
    public bool? Again { get; init; }

    /// <summary>Whether the sample gets a place; one of a second flight does not.</summary>
    public bool HasPlace { get; init; } = true;

    /// <summary>What a ballot says of a sample already.</summary>
    /// <param name="sample">The code.</param>
    /// <param name="said">What is said, or null.</param>
    /// <param name="place">Its place, or empty.</param>
    /// <param name="asked">What the ballot asks.</param>
    public static PaperLine Of(BlindCode sample, SampleAnswer? said, string place, BallotPlan asked) =>
        new(sample, said?.Liking?.ToString(CultureInfo.InvariantCulture) ?? "", said?.Remark ?? "", said?.Unclear ?? place)
        {
            Amounts = asked.Right.ToDictionary(property => property, property => said?.Amount(property), StringComparer.Ordinal),
            Words = said?.Words ?? [],
            Again = said?.Again,
        };

    /// <summary>A sample's line as posted: ticks come as words, or as the letters beside them on the sheet.</summary>
    /// <param name="sample">The code.</param>
    /// <param name="posted">The form.</param>
    /// <param name="asked">What the ballot asks.</param>
    internal static PaperLine Of(BlindCode sample, Posted posted, BallotPlan asked)
    {
        // A word keeps its letter on every sheet, whatever line it stands in.
        var words = asked.Words;
        var letters = posted.Text($"ticks-{sample}").Where(char.IsAsciiLetter).Select(letter => char.ToLowerInvariant(letter) - 'a').Distinct().ToList();
        var ticked = letters.Where(letter => letter < words.Length).Select(letter => words[letter]).Concat(posted.All($"words-{sample}")).ToHashSet(StringComparer.Ordinal);
        return new(sample, posted.Text($"liking-{sample}"), posted.Text($"remark-{sample}"), posted.Text($"place-{sample}"))
        {
            Amounts = MoreForm.Amounts(posted, asked, $"-{sample}"),
            Words = [.. asked.Words.Where(ticked.Contains)],
            StrayTicks = string.Concat(letters.Where(letter => letter >= words.Length).Select(letter => (char)('a' + letter))),
            Again = MoreForm.Again(posted, $"-{sample}"),
        };
    }

    /// <summary>The letters beside the ticked words on the sheet.</summary>
    /// <param name="words">The host's words.</param>
    public string Ticks(ImmutableArray<string> words) => string.Concat(words.Select((word, index) => Words.Contains(word, StringComparer.Ordinal) ? $"{(char)('a' + index)}" : "")) + StrayTicks;
}
