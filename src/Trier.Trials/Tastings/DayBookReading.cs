using System.Collections.Immutable;
using Trier.Trials.Common;
using Trier.Trials.Tastings.Events;

namespace Trier.Trials.Tastings;

/// <summary>Reads a day book from its events.</summary>
internal static class DayBookReading
{
    public static DayBook Read(TrialId trial, IReadOnlyList<Logged> log)
    {
        if (log.Count == 0 || log[0].Event is not TrialPlanned begun)
            throw new ArgumentException("A trial's first event is its plan.", nameof(log));

        var undone = log.Select(logged => logged.Event).OfType<Undone>().Select(taken => taken.Sequence).ToImmutableHashSet();
        var book = new DayBook { Trial = trial, Plan = begun.Plan, Log = [.. log], Undone = undone };
        foreach (var logged in log)
        {
            if (!undone.Contains(logged.Sequence)) book = Apply(book, logged.Event);
        }

        return book;
    }

    private static DayBook Apply(DayBook book, DayEvent happened) => happened switch
    {
        TrialPlanned planned => book with { Plan = planned.Plan },
        EntryAdded added => book with { Entries = book.Entries.Add(added.Entry) },
        EntryRemoved removed => book with
        {
            Entries = book.Entries.RemoveAll(entry => entry.Wheel == removed.Wheel),
            Repeat = book.Repeat == removed.Wheel ? null : book.Repeat,
            SecondFlight = book.SecondFlight.Remove(removed.Wheel),
        },
        EntryCorrected corrected => Correct(book, corrected),
        FlightChosen flight => book with { SecondFlight = flight.Second ? book.SecondFlight.Add(flight.Wheel) : book.SecondFlight.Remove(flight.Wheel) },
        GroupJoined joined => Change(book, joined.Taster, taster => taster with { Group = joined.Group }),
        GuestsCounted counted => book with { Here = [.. counted.Here] },
        RepeatChosen chosen => book with { Repeat = chosen.Wheel },
        TasterAdded added => book with
        {
            Tasters = book.Tasters.Add(new Taster(added.Taster, added.Number, added.Name, added.KnowsTheKey, added.Junior, added.Sitting, [], null, LetGoAt: null)),
        },
        TasterLetGo gone => LetGo(book, gone),
        TasterCorrected corrected => Correct(book, corrected),
        SampleLeftOff off => Change(book, off.Taster, taster => taster with { LeftOff = [.. off.Wheels] }),
        TasteDeclared declared => Change(book, declared.Taster, taster => taster with { Taste = declared.Taste }),
        TasterSignedIn said => Change(book, said.Taster, taster => taster with { NoSmell = said.NoSmell, AsksHost = said.AsksHost, Junior = taster.Junior || said.Junior, SignedInAt = said.At }),
        AgreementGiven given => Change(book, given.Taster, taster => taster with { Agreed = given.Agreed }),
        LanguageChosen chosen => Change(book, chosen.Taster, taster => taster with { Language = chosen.Language }),
        SaidAfterReveal said => book with { AfterReveal = book.AfterReveal.Add(said) },
        PaperChecked done => book with { PaperChecks = book.PaperChecks.SetItem(done.Revision, done) },
        KeySealed sealing => book with
        {
            Key = sealing.Key,
            Orders = sealing.Orders,
            PlannedPlates = sealing.Planned,
            // A plate that is dealt anew is to be plated anew; what is cut stays cut.
            Plated = book.Plated.Except(book.Orders.Select((_, index) => index).Where(index => !(index < sealing.Orders.Length && sealing.Orders[index].SequenceEqual(book.Orders[index]))).Select(index => $"plate {index + 1}")),
            // Once plates are out, those of people who are gone stay theirs: a ballot hangs on them.
            Plates = (book.OpenedAt is null ? ImmutableSortedDictionary<int, Plate>.Empty : book.Plates).SetItems(sealing.Plates.Select(plate => KeyValuePair.Create(book.Taster(plate.Taster)!.Number, plate))),
            SealedAt = sealing.At,
        },
        KeyCommitted committed => book with { Commitments = book.Commitments.Add(committed.Commitment) },
        SealBroken => book with
        {
            RetiredBefore = book.Key is { } key ? [.. book.RetiredBefore, .. key.Retired, .. key.Lines.Select(line => line.Code)] : book.RetiredBefore,
            Key = null,
            Orders = [],
            PlannedPlates = null,
            Plated = [],
            Here = null,
            Plates = ImmutableSortedDictionary<int, Plate>.Empty,
            SealedAt = null,
            // Who knows a key that was thrown away knows nothing of the next one.
            KeyOpenings = [],
            Learned = [],
        },
        PlateDealt dealt => book with { Plates = book.Plates.SetItem(book.Taster(dealt.Plate.Taster)!.Number, dealt.Plate) },
        WheelWithdrawn withdrawn => Withdraw(book, withdrawn),
        TastingOpened opened => book with { OpenedAt = opened.At },
        TasterCameLate late => book with { Late = book.Late.Add(late) },
        TasterLeft left => book with { Left = book.Left.Add(left) },
        NotesCompared compared => book with { Compared = book.Compared.Add(compared) },
        IdentitySpoken spoken => book with { Spoken = book.Spoken.Add(spoken) },
        CodesSwapped swapped => book with { Swaps = book.Swaps.Add(swapped) },
        KeyOpened opened => book with { KeyOpenings = book.KeyOpenings.Add(opened) },
        KeyLearned learned => book with { Learned = book.Learned.Add(learned) },
        WheelsTakenOut taken => book with { TakenOutAt = taken.At },
        PlatingTicked ticked => book with { Plated = ticked.Done ? book.Plated.Add(ticked.Work) : book.Plated.Remove(ticked.Work) },
        PlateMadeAgain again => book with { MadeAgain = book.MadeAgain.Add(again), Plated = book.Plated.Remove($"plate {again.Number}") },
        SampleDropped fallen => book with { Dropped = book.Dropped.Add(fallen) },
        ScribeNamed scribe => Change(book, scribe.Taster, taster => taster with { Scribe = scribe.By }),
        TastingClosed closed => book with { ClosedAt = closed.At },
        TastingReopened reopened => book with { ClosedAt = null, Reopenings = book.Reopenings.Add(reopened) },
        LateBallotAdmitted admitted => book with { Admitted = book.Admitted.Add(admitted.Revision) },
        KeyRevealed revealed => book with { RevealedAt = revealed.At },
        VerdictPublished published => book with { Published = book.Published.Add(new(book.Published.Length + 1, published.At, published.Through)) },
        BallotMended mended => book with { Mended = book.Mended.Add(mended) },
        Undone => book,
        _ => throw new NotSupportedException($"A day book cannot read {happened.GetType().Name}."),
    };

    private static DayBook Change(DayBook book, TasterId id, Func<Taster, Taster> change) =>
        book with { Tasters = [.. book.Tasters.Select(taster => taster.Id == id ? change(taster) : taster)] };

    private static DayBook LetGo(DayBook book, TasterLetGo gone)
    {
        var after = Change(book, gone.Taster, taster => taster with { LetGoAt = gone.At });
        // Before the first plate is out, a numbered plate is free again; after that it was carried to somebody.
        return after is { OpenedAt: null, PlannedPlates: not null } ? after with { Plates = after.Plates.Remove(after.Taster(gone.Taster)!.Number) } : after;
    }

    private static DayBook Correct(DayBook book, EntryCorrected corrected)
    {
        var entries = book.Entries.Select(entry => entry.Wheel == corrected.Wheel ? entry with { Name = corrected.Name, Facts = corrected.Facts } : entry);
        return book with
        {
            Entries = [.. entries],
            Corrections = book.SealedAt is null ? book.Corrections : book.Corrections.Add(corrected),
        };
    }

    private static DayBook Correct(DayBook book, TasterCorrected corrected)
    {
        var countsAnew = book.SealedAt is not null && book.Taster(corrected.Taster) is { } before && before.Junior != corrected.Junior;
        var after = Change(book, corrected.Taster, taster => taster with { Name = corrected.Name, Junior = corrected.Junior });
        return countsAnew ? after with { Corrections = after.Corrections.Add(corrected) } : after;
    }

    private static DayBook Withdraw(DayBook book, WheelWithdrawn withdrawn)
    {
        var withdrawal = new Withdrawal(withdrawn.Wheel, withdrawn.At, withdrawn.Reason, withdrawn.DecidedBy, book.OpenedAt is not null);
        var key = book.Key is { } sealedKey
            ? sealedKey with { Retired = [.. sealedKey.Retired.Union(sealedKey.Of(withdrawn.Wheel).Select(line => line.Code)).Order()] }
            : null;
        return book with { Withdrawals = book.Withdrawals.Add(withdrawal), Key = key, Repeat = book.Repeat == withdrawn.Wheel ? null : book.Repeat };
    }
}
