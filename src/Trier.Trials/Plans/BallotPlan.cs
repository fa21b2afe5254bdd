using System.Collections.Immutable;
using Trier.Trials.Common;

namespace Trier.Trials.Plans;

/// <summary>
/// What the ballot asks besides places, fixed at sealing. Liking and remark come sample by sample; the rest only after the places, because
/// questions about single properties before the main answer colour it.
/// </summary>
public sealed class BallotPlan : IEquatable<BallotPlan>
{
    /// <summary>The property every ballot knows by itself: salt.</summary>
    public const string Salt = "salt";

    /// <summary>The other property that is known by itself: firmness.</summary>
    public const string Firmness = "firmness";

    /// <summary>Most properties asked as too little, just right or too much.</summary>
    public const int MostRight = 2;

    /// <summary>Most words to tick.</summary>
    public const int MostWords = 12;

    /// <summary>Most letters of a property or a word.</summary>
    public const int LongestWord = 24;

    private BallotPlan(bool liking, bool remark, ImmutableArray<string> right, ImmutableArray<string> words, bool again) =>
        (Liking, Remark, Right, Words, Again) = (liking, remark, right, words, again);

    /// <summary>Likings and remarks, nothing more.</summary>
    public static BallotPlan Usual { get; } = new(true, true, [], [], false);

    /// <summary>Whether each sample gets a liking, 1 to 9.</summary>
    public bool Liking { get; }

    /// <summary>Whether each sample gets a line of free words.</summary>
    public bool Remark { get; }

    /// <summary>Properties asked as too little, just right or too much: at most two.</summary>
    public ImmutableArray<string> Right { get; }

    /// <summary>The host's own words to tick, at most 12, as the host wrote them.</summary>
    public ImmutableArray<string> Words { get; }

    /// <summary>Whether "would you serve this again?" is asked.</summary>
    public bool Again { get; }

    /// <summary>Whether anything is asked of a sample by itself, before the places.</summary>
    public bool AsksFirst => Liking || Remark;

    /// <summary>Whether anything is asked after the places.</summary>
    public bool AsksAfter => Again || Right.Length > 0 || Words.Length > 0;

    /// <summary>Seconds one taster spends writing on one sample: a rough count for planning, common practice, no source.</summary>
    public int SecondsASample => (Liking ? 8 : 0) + (Remark ? 12 : 0) + (6 * Right.Length) + (2 * Words.Length) + (Again ? 4 : 0);

    /// <summary>Makes a plan of what is asked.</summary>
    /// <param name="liking">Whether likings are asked.</param>
    /// <param name="remark">Whether a remark is asked.</param>
    /// <param name="right">Properties asked as just right or not; blank ones are dropped.</param>
    /// <param name="words">Words to tick; blank ones are dropped.</param>
    /// <param name="again">Whether serving it again is asked.</param>
    /// <returns>The plan, or everything that is wrong with it; fields "right" and "words".</returns>
    public static Outcome<BallotPlan> Of(bool liking, bool remark, IEnumerable<string> right, IEnumerable<string> words, bool again)
    {
        var problems = new List<Problem>();
        var properties = Clean(right);
        var ticks = Clean(words);
        if (properties.Length > MostRight) problems.Add(new("right", $"At most {MostRight} properties: more questions tire, and colour each other."));
        if (ticks.Length > MostWords) problems.Add(new("words", $"At most {MostWords} words fit before people stop reading them; there are {ticks.Length}."));
        Check("right", properties, problems);
        Check("words", ticks, problems);
        return problems.Count > 0 ? Outcome.Fault<BallotPlan>(problems) : Outcome.Of(new BallotPlan(liking, remark, properties, ticks, again));
    }

    /// <summary>Rebuilds a plan that was checked when it was written. For storage alone.</summary>
    /// <param name="liking">As in <see cref="Liking"/>.</param>
    /// <param name="remark">As in <see cref="Remark"/>.</param>
    /// <param name="right">As in <see cref="Right"/>.</param>
    /// <param name="words">As in <see cref="Words"/>.</param>
    /// <param name="again">As in <see cref="Again"/>.</param>
    public static BallotPlan Stored(bool liking, bool remark, ImmutableArray<string> right, ImmutableArray<string> words, bool again) => new(liking, remark, right, words, again);

    /// <inheritdoc/>
    public bool Equals(BallotPlan? other) =>
        other is not null && (Liking, Remark, Again) == (other.Liking, other.Remark, other.Again)
        && Right.SequenceEqual(other.Right, StringComparer.Ordinal) && Words.SequenceEqual(other.Words, StringComparer.Ordinal);

    /// <inheritdoc/>
    public override bool Equals(object? obj) => Equals(obj as BallotPlan);

    /// <inheritdoc/>
    public override int GetHashCode() => HashCode.Combine(Liking, Remark, Again, Right.Length, Words.Length);

    private static ImmutableArray<string> Clean(IEnumerable<string> texts) =>
        [.. texts.Select(text => string.Join(' ', text.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries))).Where(text => text.Length > 0)];

    private static void Check(string field, ImmutableArray<string> texts, List<Problem> problems)
    {
        foreach (var text in texts.Where(text => text.Length > LongestWord)) problems.Add(new(field, $"“{text}” has {text.Length} letters; {LongestWord} fit on a phone."));
        foreach (var text in texts.Where(text => text.Contains('+', StringComparison.Ordinal))) problems.Add(new(field, $"“{text}”: a plus sign parts words in the ballot file, so it cannot stand in one."));
        if (texts.Distinct(StringComparer.OrdinalIgnoreCase).Count() < texts.Length) problems.Add(new(field, "One of them stands there twice."));
    }
}
