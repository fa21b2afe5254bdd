using System.Collections.Immutable;
using Trier.Trials.Common;
using Trier.Trials.Tastings.Events;
using Trier.Trials.Verdicts;

namespace Trier.Trials.Tastings.Steps;

/// <summary>A tasting whose key has been opened for everyone. Only this can be judged.</summary>
public sealed class RevealedTasting : Tasting
{
    /// <summary>Most letters of something said after the reveal.</summary>
    public const int LongestSaid = 400;

    internal RevealedTasting(DayBook book)
        : base(book)
    {
    }

    /// <summary>Publishes the verdict as it stands now; after a correction as a new version.</summary>
    /// <param name="at">When.</param>
    public Outcome<ImmutableArray<DayEvent>> Publish(DateTimeOffset at)
    {
        var changed = Book.Published.IsEmpty || Book.Log.Any(logged => logged.Sequence > Book.Published[^1].Through && logged.Event is not VerdictPublished);
        return changed ? Do(new VerdictPublished(at, Book.Log.Length)) : Fault("version", $"Nothing has changed since version {Book.Published.Length}: it stands.");
    }

    /// <summary>Puts a ballot right that had been taken in wrongly: a slip of whoever typed or wrote it, never a change of mind.</summary>
    /// <param name="at">When.</param>
    /// <param name="taster">Whose ballot.</param>
    /// <param name="ballot">The ballot as it should have been.</param>
    /// <param name="reason">How the slip was noticed.</param>
    /// <param name="witness">Who saw it.</param>
    public Outcome<ImmutableArray<DayEvent>> Mend(DateTimeOffset at, TasterId taster, Ballot ballot, string reason, string witness)
    {
        ArgumentNullException.ThrowIfNull(ballot);
        if (Book.Taster(taster) is not { } found || Book.Plate(taster) is not { } plate) return Fault("taster", "This taster has no plate.");
        var problems = ImmutableArray.CreateBuilder<Problem>();
        var strange = ballot.Places.SelectMany(group => group).Concat(ballot.Answers.Keys).Where(code => !plate.Codes.Contains(code)).Distinct().ToList();
        if (strange.Count > 0) problems.Add(new("places", $"{string.Join(", ", strange)} {(strange.Count == 1 ? "was" : "were")} not on the plate of {found.Name}."));
        if (string.IsNullOrWhiteSpace(reason)) problems.Add(new("reason", "Say how the slip was noticed, such as “the paper says 593 first”."));
        if (string.IsNullOrWhiteSpace(witness)) problems.Add(new("witness", "Say who else looked at it."));
        return problems.Count > 0 ? Outcome.Fault<ImmutableArray<DayEvent>>(problems.ToImmutable()) : Do(new BallotMended(at, taster, ballot, reason.Trim(), witness.Trim()));
    }

    /// <summary>Takes back what a taster had agreed to; it is gone from every version at once. Taking back what is not agreed to does nothing.</summary>
    /// <param name="at">When.</param>
    /// <param name="taster">Who.</param>
    /// <param name="name">Whether their name is taken back.</param>
    /// <param name="words">Whether their remarks and words are.</param>
    public Outcome<ImmutableArray<DayEvent>> TakeBack(DateTimeOffset at, TasterId taster, bool name, bool words)
    {
        var before = Book.Taster(taster)?.Agreed ?? Agreed.ToNothing;
        var after = new Agreed(before.Named && !name, before.Quoted && !words);
        return after == before ? Outcome.Of(ImmutableArray<DayEvent>.Empty) : Agree(at, taster, after);
    }

    /// <summary>The tasting as a published version saw it; what tasters have since agreed to or taken back is as it is now, so that a name or a quote taken back is gone from every version.</summary>
    /// <param name="version">A version of this tasting.</param>
    /// <param name="agreedThen">True to leave agreements as they were then: to tell what has changed, never to show.</param>
    public RevealedTasting AsOf(PublishedVersion version, bool agreedThen = false)
    {
        ArgumentNullException.ThrowIfNull(version);
        var then = DayBookReading.Read(Book.Trial, [.. Book.Log.Take(version.Through)]);
        var tasters = agreedThen ? then.Tasters : then.Tasters.Select(taster => taster with { Agreed = Both(taster.Agreed, Book.Taster(taster.Id)!.Agreed) });
        return new RevealedTasting(then with { Tasters = [.. tasters] });
    }

    private static Agreed Both(Agreed then, Agreed now) => new(then.Named && now.Named, then.Quoted && now.Quoted);

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
