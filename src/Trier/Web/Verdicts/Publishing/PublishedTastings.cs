using System.Collections.Concurrent;
using System.Collections.Immutable;
using Trier.Publishing.Bundles;
using Trier.Storage.Tastings;
using Trier.Trials.Common;
using Trier.Trials.Tastings;
using Trier.Trials.Tastings.Steps;
using Trier.Trials.Verdicts;
using Trier.Trials.Verdicts.Publishing;

namespace Trier.Web.Verdicts.Publishing;

/// <summary>Published versions of a verdict, each drawn from what was known when it was published; a name or a quote taken back since is gone from all of them.</summary>
internal sealed class PublishedTastings(TrialStore trials, JudgedTastings verdicts)
{
    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(2.5);

    // A version changes only when an event is added: a name taken back is one.
    private readonly ConcurrentDictionary<(TrialId Trial, int Number), (int Events, Publication Publication)> _kept = new();

    /// <summary>One version, the last where none is named; null where it was not published.</summary>
    /// <param name="id">Which tasting.</param>
    /// <param name="number">Which version, from 1.</param>
    /// <param name="cancellation">Stops the wait.</param>
    public async Task<Publication?> FindAsync(TrialId id, int? number, CancellationToken cancellation)
    {
        if (await trials.FindAsync(id, cancellation) is not RevealedTasting { Book: var book } tasting) return null;
        var version = number is { } wanted ? book.Published.FirstOrDefault(one => one.Number == wanted) : book.Published.LastOrDefault();
        if (version is null) return null;
        if (_kept.TryGetValue((id, version.Number), out var kept) && kept.Events == book.Log.Length) return kept.Publication;
        var ballots = await trials.BallotsAsync(tasting, cancellation);
        var verdict = await verdicts.WholeAsync(id, PublishedRecord.Of(tasting.AsOf(version).Record(ballots)), cancellation);
        var publication = Of(tasting, version, verdict, ballots);
        _kept[(id, version.Number)] = (book.Log.Length, publication);
        return publication;
    }

    /// <summary>What the next version would be; the headline alone where the rest takes longer than a page may.</summary>
    /// <param name="tasting">The tasting as it stands.</param>
    /// <param name="cancellation">Stops the wait.</param>
    public async Task<Verdict> NextAsync(RevealedTasting tasting, CancellationToken cancellation)
    {
        var record = PublishedRecord.Of(tasting.Record(await trials.BallotsAsync(tasting, cancellation)));
        // The headlines that the maker reads here are those that strangers will read.
        var whole = verdicts.WholeAsync(tasting.Book.Trial, record, cancellation);
        await Task.WhenAny(whole, Task.Delay(Patience, cancellation));
        cancellation.ThrowIfCancellationRequested();
        return whole.IsCompletedSuccessfully ? await whole : Judge.Headline(record, JudgedTastings.SeedOf(tasting.Book.Trial));
    }

    /// <summary>What each version put right, in order; nothing for the first.</summary>
    /// <param name="tasting">The tasting.</param>
    /// <param name="cancellation">Stops the wait.</param>
    public async Task<ImmutableArray<string>> CorrectionsAsync(RevealedTasting tasting, CancellationToken cancellation) =>
        tasting.Book.Published.LastOrDefault() is { } last ? Corrections(tasting, last, await trials.BallotsAsync(tasting, cancellation)) : [];

    /// <summary>What was taken out of each version after it was published, in the versions' order.</summary>
    /// <param name="tasting">The tasting.</param>
    /// <param name="cancellation">Stops the wait.</param>
    public async Task<ImmutableArray<ImmutableArray<string>>> TakenOutAsync(RevealedTasting tasting, CancellationToken cancellation)
    {
        var ballots = await trials.BallotsAsync(tasting, cancellation);
        return [.. tasting.Book.Published.Select(version => TakenOut(tasting, version, ballots))];
    }

    private static Publication Of(RevealedTasting tasting, PublishedVersion version, Verdict verdict, IReadOnlyDictionary<TasterId, BallotHistory> ballots)
    {
        var book = tasting.Book;
        return new Publication
        {
            Verdict = verdict,
            Version = version.Number,
            Day = DateOnly.FromDateTime(version.At.DateTime),
            Corrections = Corrections(tasting, version, ballots),
            TakenOut = TakenOut(tasting, version, ballots),
            Key = book.Commitments.IsEmpty ? null : new(book.Trial, book.Commitments, book.Commitment?.Words),
            OpenedAt = book.RevealedAt,
        };
    }

    private static ImmutableArray<string> TakenOut(RevealedTasting tasting, PublishedVersion version, IReadOnlyDictionary<TasterId, BallotHistory> ballots) =>
        TakenOutNote.Of(tasting.Book, version, PublishedRecord.Of(tasting.AsOf(version, agreedThen: true).Record(ballots)), PublishedRecord.Of(tasting.AsOf(version).Record(ballots)));

    private static ImmutableArray<string> Corrections(RevealedTasting tasting, PublishedVersion last, IReadOnlyDictionary<TasterId, BallotHistory> ballots)
    {
        var versions = tasting.Book.Published.Where(version => version.Number <= last.Number).ToList();
        if (versions.Count < 2) return [];
        var headlines = versions.ConvertAll(version => Judge.Headline(PublishedRecord.Of(tasting.AsOf(version, agreedThen: true).Record(ballots)), JudgedTastings.SeedOf(tasting.Book.Trial)));
        return [.. versions.Skip(1).Select((version, i) => VersionNote.Of(DateOnly.FromDateTime(version.At.DateTime), headlines[i], headlines[i + 1]))];
    }
}
