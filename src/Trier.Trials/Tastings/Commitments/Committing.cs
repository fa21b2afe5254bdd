using System.Collections.Immutable;
using Trier.Trials.Common;
using Trier.Trials.Tastings.Events;

namespace Trier.Trials.Tastings.Commitments;

/// <summary>Adds the commitment to an act that draws a key.</summary>
public static class Committing
{
    /// <summary>The events of an act, with a commitment after them where they draw a key; as they were where they draw none. Takes about a second.</summary>
    /// <param name="before">The day book before the act.</param>
    /// <param name="events">What the act yields.</param>
    /// <param name="salt">16 bytes from a secure source of the shell.</param>
    public static ImmutableArray<DayEvent> With(DayBook before, ImmutableArray<DayEvent> events, ReadOnlySpan<byte> salt)
    {
        if (events.OfType<KeySealed>().LastOrDefault() is not { } sealing) return events;
        var log = before.Log.ToBuilder();
        foreach (var happened in events) log.Add(new Logged(log.Count + 1, happened));
        var after = DayBookReading.Read(before.Trial, log.ToImmutable());
        var lines = Statement.Of(after, before.Commitments.LastOrDefault()?.Words);
        var commitment = new Commitment(before.Commitments.Length + 1, sealing.Key.Version, Convert.ToHexStringLower(salt), Commitment.WordsOf(lines, salt), lines);
        return events.Add(new KeyCommitted(sealing.At, commitment));
    }
}
