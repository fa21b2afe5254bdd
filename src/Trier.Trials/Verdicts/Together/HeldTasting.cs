using System.Collections.Immutable;
using Trier.Trials.Common;
using Trier.Trials.Tastings;
using Trier.Trials.Tastings.Steps;

namespace Trier.Trials.Verdicts.Together;

/// <summary>A revealed tasting among others: its record, and which wheel each label stands for.</summary>
/// <param name="Trial">Which trial.</param>
/// <param name="Record">What its verdict looks at.</param>
/// <param name="Entries">Its wheels, withdrawn ones included.</param>
public sealed record HeldTasting(TrialId Trial, TastingRecord Record, ImmutableArray<Entry> Entries)
{
    /// <summary>Reads one.</summary>
    /// <param name="tasting">The tasting.</param>
    /// <param name="ballots">Every taster's history.</param>
    public static HeldTasting Of(RevealedTasting tasting, IReadOnlyDictionary<TasterId, BallotHistory> ballots)
    {
        ArgumentNullException.ThrowIfNull(tasting);
        return new(tasting.Book.Trial, tasting.Record(ballots), tasting.Book.Entries);
    }

    /// <summary>A wheel's age on the day, or null.</summary>
    /// <param name="entry">The wheel.</param>
    public int? AgeOf(Entry entry)
    {
        ArgumentNullException.ThrowIfNull(entry);
        return Record.Head.Day is { } day && entry.Facts.MadeOn is { } made ? day.DayNumber - made.DayNumber : null;
    }
}
