using System.Collections.Immutable;
using Trier.Trials.Common;

namespace Trier.Trials.Tastings;

/// <summary>A person who tastes.</summary>
/// <param name="Id">Names the taster in this trial.</param>
/// <param name="Number">1, 2, 3 ... in order of joining; never reused.</param>
/// <param name="Name">Name on the card.</param>
/// <param name="KnowsTheKey">The maker, a plater, or anyone else who knows which code is which wheel.</param>
/// <param name="Junior">Under 12.</param>
/// <param name="Sitting">Which sitting they come to, from 1.</param>
/// <param name="LeftOff">Wheels that are left off this taster's plate. Never shown with a reason.</param>
/// <param name="Taste">What they said before tasting that they usually like, or null where not asked yet.</param>
/// <param name="LetGoAt">When they were taken off the list, or null. What they sent before stays; what comes in later counts nowhere.</param>
public sealed record Taster(
    TasterId Id,
    int Number,
    string Name,
    bool KnowsTheKey,
    bool Junior,
    int Sitting,
    ImmutableHashSet<WheelId> LeftOff,
    DeclaredTaste? Taste,
    DateTimeOffset? LetGoAt)
{
    /// <summary>Whether they were taken off the list.</summary>
    public bool LetGo => LetGoAt is not null;

    /// <summary>Who writes their ballot down for them, or null.</summary>
    public string? Scribe { get; init; }

    /// <summary>The group they taste together with, or null.</summary>
    public string? Group { get; init; }

    /// <summary>What they agreed to at sign-in; a later answer replaces an earlier one.</summary>
    public Agreed Agreed { get; init; } = Agreed.ToNothing;

    /// <summary>Whether they signed in with a cold, or little smell. Shown nowhere beside a name.</summary>
    public bool NoSmell { get; init; }

    /// <summary>Whether they may not eat something that the sign-in could not name, so that the host has to ask them.</summary>
    public bool AsksHost { get; init; }

    /// <summary>When they last signed in, or null.</summary>
    public DateTimeOffset? SignedInAt { get; init; }

    /// <summary>The language they read in, such as "fr"; null where they chose none.</summary>
    public string? Language { get; init; }

    /// <summary>T01, T02 and so on: how the taster is named where names do not belong.</summary>
    public string Label => $"T{Number:00}";
}
