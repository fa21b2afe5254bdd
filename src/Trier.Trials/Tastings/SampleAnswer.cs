using System.Collections.Immutable;

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

    /// <inheritdoc/>
    public bool Equals(SampleAnswer? other) =>
        other is not null && Liking == other.Liking && FirstLiking == other.FirstLiking && Salt == other.Salt && Remark == other.Remark
        && Words.SequenceEqual(other.Words);

    /// <inheritdoc/>
    public override int GetHashCode() => HashCode.Combine(Liking, FirstLiking, Salt, Remark, Words.Length);
}
