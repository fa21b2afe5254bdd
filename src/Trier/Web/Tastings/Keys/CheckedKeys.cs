using System.Collections.Concurrent;
using Trier.Trials.Common;
using Trier.Trials.Tastings;
using Trier.Trials.Tastings.Commitments;

namespace Trier.Web.Tastings.Keys;

/// <summary>Commitments worked out again, once each: the page is open to anyone, and every working out takes about a second.</summary>
public sealed class CheckedKeys
{
    private readonly ConcurrentDictionary<TrialId, (int Length, Lazy<Task<CommitmentCheck>> Check)> _known = new();

    /// <summary>The check of a revealed tasting, or null where it has no commitment.</summary>
    /// <param name="book">The day book of a revealed tasting.</param>
    public async Task<CommitmentCheck?> OfAsync(DayBook book)
    {
        if (book.Commitments.IsEmpty) return null;
        var known = _known.AddOrUpdate(book.Trial, _ => New(book), (_, before) => before.Length == book.Commitments.Length ? before : New(book));
        return await known.Check.Value;
    }

    private static (int, Lazy<Task<CommitmentCheck>>) New(DayBook book) =>
        (book.Commitments.Length, new(() => Task.Run(() => CommitmentCheck.Of(book.Trial, book.Commitments))));
}
