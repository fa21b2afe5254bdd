using Trier.Trials.Common;
using Trier.Trials.Verdicts;

namespace Trier.Trials.Tastings.Steps;

/// <summary>A tasting whose key has been opened for everyone. Only this can be judged.</summary>
public sealed class RevealedTasting : Tasting
{
    internal RevealedTasting(DayBook book)
        : base(book)
    {
    }

    /// <summary>Applies the key to the ballots: what the verdict looks at.</summary>
    /// <param name="ballots">Every taster's history; a taster without one sent nothing.</param>
    public TastingRecord Record(IReadOnlyDictionary<TasterId, BallotHistory> ballots) => RecordWriting.Write(Book, ballots);
}
