using System.Collections.Immutable;

namespace Trier.Publishing.BallotFiles;

/// <summary>What an empty place, or a code left out of an order, means.</summary>
public enum Unplaced
{
    /// <summary>The taster did not taste it: nothing is concluded about it.</summary>
    NotTasted,

    /// <summary>The taster tasted it and left it below all the placed ones: these tie for last.</summary>
    Last,
}

/// <summary>One code that is a second serving of another.</summary>
/// <param name="Check">The code that is only a check.</param>
/// <param name="Counts">The code that counts.</param>
public sealed record RepeatPair(string Check, string Counts);

/// <summary>What the person who hands in a ballot file says about it.</summary>
public sealed record BallotFileOptions
{
    /// <summary>Empty places mean not tasted, and no code repeats another.</summary>
    public static BallotFileOptions Default { get; } = new();

    /// <summary>What an empty place means.</summary>
    public Unplaced Unplaced { get; init; }

    /// <summary>Second servings.</summary>
    public ImmutableArray<RepeatPair> Repeats { get; init; } = [];
}
