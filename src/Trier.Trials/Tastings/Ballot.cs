using System.Collections.Immutable;
using Trier.Trials.Common;

namespace Trier.Trials.Tastings;

/// <summary>
/// What one taster says, in codes and never in wheels: withdrawals and swaps are applied when judging. A ballot cannot hold a code
/// twice.
/// </summary>
public sealed class Ballot : IEquatable<Ballot>
{
    private Ballot(ImmutableArray<ImmutableArray<BlindCode>> places, ImmutableSortedDictionary<BlindCode, SampleAnswer> answers)
    {
        Places = places;
        Answers = answers;
    }

    /// <summary>Nothing said yet.</summary>
    public static Ballot Empty { get; } = new([], ImmutableSortedDictionary<BlindCode, SampleAnswer>.Empty);

    /// <summary>Groups of codes, best first; codes in one group are tied. May be empty, may leave codes out.</summary>
    public ImmutableArray<ImmutableArray<BlindCode>> Places { get; }

    /// <summary>Answers about single samples.</summary>
    public ImmutableSortedDictionary<BlindCode, SampleAnswer> Answers { get; }

    /// <summary>How many samples stand in the places.</summary>
    public int Placed => Places.Sum(group => group.Length);

    /// <summary>Makes a ballot for one plate.</summary>
    /// <param name="plate">The codes the taster was served.</param>
    /// <param name="places">Groups of codes, best first; empty groups are dropped.</param>
    /// <param name="answers">Answers by code; empty ones are dropped.</param>
    /// <returns>The ballot, or every code that is unknown or stands twice.</returns>
    public static Outcome<Ballot> Of(
        IReadOnlyCollection<BlindCode> plate,
        IEnumerable<IReadOnlyCollection<BlindCode>> places,
        IEnumerable<KeyValuePair<BlindCode, SampleAnswer>> answers)
    {
        var problems = new List<Problem>();
        var groups = places.Where(group => group.Count > 0).Select(group => group.Order().ToImmutableArray()).ToImmutableArray();
        var seen = new HashSet<BlindCode>();
        foreach (var code in groups.SelectMany(group => group))
        {
            if (!plate.Contains(code)) problems.Add(new("places", $"Sample {code} is not on this plate."));
            else if (!seen.Add(code)) problems.Add(new("places", $"Sample {code} stands in the places twice: give it one place."));
        }

        var said = ImmutableSortedDictionary.CreateBuilder<BlindCode, SampleAnswer>();
        foreach (var (code, answer) in answers)
        {
            if (!plate.Contains(code)) problems.Add(new("answers", $"Sample {code} is not on this plate."));
            else if (!said.TryAdd(code, answer)) problems.Add(new("answers", $"Sample {code} is answered twice."));
            if (answer.Equals(SampleAnswer.Nothing)) said.Remove(code);
        }

        return problems.Count > 0 ? Outcome.Fault<Ballot>(problems) : Outcome.Of(new Ballot(groups, said.ToImmutable()));
    }

    /// <summary>Rebuilds a ballot that was checked when it came in. For storage alone.</summary>
    /// <param name="places">As in <see cref="Places"/>.</param>
    /// <param name="answers">As in <see cref="Answers"/>.</param>
    public static Ballot Stored(ImmutableArray<ImmutableArray<BlindCode>> places, ImmutableSortedDictionary<BlindCode, SampleAnswer> answers)
    {
        var codes = places.SelectMany(group => group).ToList();
        if (codes.Distinct().Count() != codes.Count) throw new ArgumentException("A stored ballot holds a code twice.", nameof(places));
        return new(places, answers);
    }

    /// <inheritdoc/>
    public bool Equals(Ballot? other) =>
        other is not null
        && Places.Length == other.Places.Length
        && Places.Zip(other.Places).All(pair => pair.First.SequenceEqual(pair.Second))
        && Answers.SequenceEqual(other.Answers);

    /// <inheritdoc/>
    public override bool Equals(object? obj) => Equals(obj as Ballot);

    /// <inheritdoc/>
    public override int GetHashCode() => HashCode.Combine(Placed, Places.Length, Answers.Count);
}
