using System.Collections.Immutable;
using Trier.Trials.Common;
using Trier.Trials.Tastings.Events;
using Trier.Trials.Verdicts;

namespace Trier.Trials.Tastings.Steps;

/// <summary>A tasting whose key has been opened for everyone. Only this can be judged.</summary>
public sealed class RevealedTasting : Tasting
{
    internal RevealedTasting(DayBook book)
        : base(book)
    {
    }

    /// <summary>Most letters of something said after the reveal.</summary>
    public const int LongestSaid = 400;

    /// <summary>Keeps what a taster says now that the key is open. No ballot moves.</summary>
    /// <param name="at">When.</param>
    /// <param name="taster">Who.</param>
    /// <param name="words">What.</param>
    public Outcome<ImmutableArray<DayEvent>> Say(DateTimeOffset at, TasterId taster, string words)
    {
        if (Book.Taster(taster) is null) return Fault("taster", "This taster is not on the list.");
        var said = string.Join(' ', words.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries));
        if (said.Length == 0) return Fault("words", "Write something first.");
        return said.Length > LongestSaid ? Fault("words", $"At most {LongestSaid} letters fit; this has {said.Length}.") : Do(new SaidAfterReveal(at, taster, said));
    }

    /// <summary>Applies the key to the ballots: what the verdict looks at.</summary>
    /// <param name="ballots">Every taster's history; a taster without one sent nothing.</param>
    public TastingRecord Record(IReadOnlyDictionary<TasterId, BallotHistory> ballots) => RecordWriting.Write(Book, ballots);
}
