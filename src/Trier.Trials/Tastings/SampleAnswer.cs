using System.Collections.Immutable;
using Trier.Trials.Plans;

namespace Trier.Trials.Tastings;

/// <summary>What one taster said of one sample, places apart.</summary>
public sealed record SampleAnswer
{
    /// <summary>Nothing said.</summary>
    public static SampleAnswer Nothing { get; } = new();

    /// <summary>Liking, 1 (dislike very much) to 9 (like very much), or null where not given.</summary>
    public int? Liking
    {
        get;
        init => field = value is null or (>= 1 and <= 9) ? value : throw new ArgumentOutOfRangeException(nameof(value), value, "Liking runs from 1 to 9.");
    }

    /// <summary>The liking first given, where it was later corrected as a slip; else null.</summary>
    public int? FirstLiking
    {
        get;
        init => field = value is null or (>= 1 and <= 9) ? value : throw new ArgumentOutOfRangeException(nameof(value), value, "Liking runs from 1 to 9.");
    }

    /// <summary>Salt: -1 too little, 0 just right, 1 too much, or null where not asked.</summary>
    public int? Salt
    {
        get;
        init => field = value is null or (>= -1 and <= 1) ? value : throw new ArgumentOutOfRangeException(nameof(value), value, "Just-about-right runs from -1 to 1.");
    }

    /// <summary>Words ticked.</summary>
    public ImmutableArray<string> Words { get; init; } = [];

    /// <summary>Free remark, or null.</summary>
    public string? Remark { get; init; }

    /// <summary>Other properties than salt, by name: -1 too little, 0 just right, 1 too much. Null where none was answered; never empty.</summary>
    public ImmutableSortedDictionary<string, int>? Right
    {
        get;
        init
        {
            if (value is not null && value.Values.Any(amount => amount is < -1 or > 1)) throw new ArgumentOutOfRangeException(nameof(value), "Just-about-right runs from -1 to 1.");
            field = value is null || value.IsEmpty ? null : value.WithComparers(StringComparer.Ordinal);
        }
    }

    /// <summary>Whether the taster would serve it again, or null where not answered.</summary>
    public bool? Again { get; init; }

    /// <summary>What stands on paper where the place cannot be read for certain, such as "1 or 7"; else null. The place then counts as a tie.</summary>
    public string? Unclear { get; init; }

    /// <summary>The answer about a property: -1, 0 or 1; null where not given.</summary>
    /// <param name="property">Salt, or any other.</param>
    public int? Amount(string property) =>
        property == BallotPlan.Salt ? Salt : Right is { } right && right.TryGetValue(property, out var amount) ? amount : null;

    /// <summary>The same with another answer about a property.</summary>
    /// <param name="property">Salt, or any other.</param>
    /// <param name="amount">-1, 0 or 1; null takes the answer away.</param>
    public SampleAnswer With(string property, int? amount)
    {
        if (property == BallotPlan.Salt) return this with { Salt = amount };
        var right = Right ?? ImmutableSortedDictionary.Create<string, int>(StringComparer.Ordinal);
        return this with { Right = amount is { } given ? right.SetItem(property, given) : right.Remove(property) };
    }

    /// <inheritdoc/>
    public bool Equals(SampleAnswer? other) =>
        other is not null && Liking == other.Liking && FirstLiking == other.FirstLiking && Salt == other.Salt && Remark == other.Remark
        && Again == other.Again && Unclear == other.Unclear && Words.SequenceEqual(other.Words) && Pairs(Right).SequenceEqual(Pairs(other.Right));

    /// <inheritdoc/>
    public override int GetHashCode() => HashCode.Combine(Liking, FirstLiking, Salt, Remark, Words.Length, Again, Unclear);

    private static ImmutableSortedDictionary<string, int> Pairs(ImmutableSortedDictionary<string, int>? amounts) => amounts ?? ImmutableSortedDictionary<string, int>.Empty;
}
