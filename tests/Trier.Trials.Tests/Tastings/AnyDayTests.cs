using System.Collections.Immutable;
using CsCheck;
using Trier.Statistics.Randomness;
using Trier.Trials.Common;
using Trier.Trials.Plans;
using Trier.Trials.Tastings;
using Trier.Trials.Tastings.Events;
using Trier.Trials.Tastings.Steps;

namespace Trier.Trials.Tests.Tastings;

/// <summary>Days on which anything is tried at any time: whatever is refused, what stands must hold together.</summary>
public class AnyDayTests
{
    [Fact]
    public void Whatever_is_tried_the_book_holds_together_and_reads_the_same_twice()
    {
        var revealed = 0;
        Gen.Select(Gen.ULong, Gen.Int[0, 14].Array[20, 80]).Sample(
            (seed, acts) =>
            {
                var random = new Seed(seed).Generator();
                int? each = random.NextInt(3) == 0 ? 2 + random.NextInt(3) : null;
                var rules = new ServingRules(each, OwnCodes: random.NextInt(2) == 0, AsTheyCome: random.NextInt(2) == 0, WarmUp: null);
                var day = new Day(Day.AnyPlan with { Serving = rules }).Wheels(2 + random.NextInt(4)).Guests(1 + random.NextInt(5));
                foreach (var act in acts)
                {
                    Try(day, act, random);
                    HoldsTogether(day);
                }

                if (day.Tasting is RevealedTasting) Interlocked.Increment(ref revealed);
            },
            iter: 300);
        Assert.InRange(revealed, 8, 300);
    }

    private static void Try(Day day, int act, Generator random)
    {
        var wheel = day.Book.Entries[random.NextInt(day.Book.Entries.Length)].Wheel;
        var taster = day.Book.Tasters[random.NextInt(day.Book.Tasters.Length)].Id;
        var other = day.Book.Tasters[random.NextInt(day.Book.Tasters.Length)].Id;
        if (act == 0)
        {
            if (day.Tasting is OpenTasting or ClosedTasting or RevealedTasting && !day.Book.Served(taster).IsEmpty) Send(day, taster, random);
            return;
        }

        var outcome = day.Try<Tasting>((tasting, at) => (act, tasting) switch
        {
            (1, DraftTasting draft) => draft.Seal(at, new Seed(random.NextUInt64())),
            (2, SealedTasting step) => random.NextInt(4) == 0 ? step.BreakSeal(at) : step.Open(at),
            (3, OpenTasting open) => random.NextInt(3) == 0 ? open.Close(at) : open.AddTaster(at, day.NewTaster(), $"New {at:HHmm}", false, false, 1),
            (3, ClosedTasting closed) => random.NextInt(2) == 0 ? closed.Reopen(at, "Still eating") : closed.Reveal(at),
            (4, DraftTasting draft) => draft.Withdraw(at, wheel, "Mould", null),
            (4, SealedTasting step) => step.Withdraw(at, wheel, "Mould", null, null, new Seed(random.NextUInt64())),
            (4, OpenTasting open) when random.NextInt(2) == 0 => open.WithdrawAndDraw(at, wheel, "Mould", null, day.Ballots.Keys.ToHashSet(), null, new Seed(random.NextUInt64())),
            (4, RoomTasting room) => room.Withdraw(at, wheel, "Mould", null),
            (5, DraftTasting draft) => draft.LetGo(at, taster),
            (5, SealedTasting step) => step.LetGo(at, taster),
            (5, OpenTasting open) => open.LetGo(at, taster),
            (6, RoomTasting room) => room.CompareNotes(at, [taster, other]),
            (7, DraftTasting draft) => draft.ServeTwice(at, random.NextInt(2) == 0 ? wheel : null),
            (7, RoomTasting room) => room.LearnKey(at, taster),
            (8, RoomTasting room) => room.Undo(at, 1 + random.NextInt(day.Log.Count)),
            (9, DraftTasting draft) => draft.LeaveOff(at, taster, [wheel]),
            (9, SealedTasting step) => step.LeaveOff(at, taster, [wheel], new Seed(7)),
            (9, RoomTasting room) => room.Leave(at, taster),
            (10, _) => tasting.CorrectTaster(at, taster, $"Name {at:HHmm}", random.NextInt(2) == 0),
            (11, RoomTasting room) when day.Key.Lines.Length > 1 => room.SwapCodes(at, taster, day.Key.Lines[0].Code, day.Key.Lines[1].Code, "Seen", "Bo"),
            (12, DraftTasting draft) => draft.ChooseFlight(at, wheel, random.NextInt(2) == 0),
            (12 or 13, SealedTasting step) => step.OnlyThese(at, [taster, other], new Seed(random.NextUInt64())),
            (12 or 13 or 14, OpenTasting open) => open.HandOut(at, taster, random.NextInt(2) == 0 ? null : 1 + random.NextInt(9)),
            _ => Outcome.Fault<ImmutableArray<DayEvent>>("act", "Not now."),
        });
        if (outcome.TryGet(out var events)) day.Append(events);
    }

    private static void Send(Day day, TasterId taster, Generator random)
    {
        var codes = day.Book.Served(taster).ToArray();
        random.Shuffle(codes.AsSpan());
        day.Send(taster, Ballot.Of(codes, codes.Take(1 + random.NextInt(codes.Length)).Select(code => new[] { code }), []).Value, random.NextInt(3) == 0 ? BallotStage.Tasting : BallotStage.Sent);
    }

    private static void HoldsTogether(Day day)
    {
        var book = day.Book;
        Assert.Equivalent(book.Plates, Tasting.Read(day.Trial, day.Log).Book.Plates, strict: true);
        Assert.Equal(book.Tasters.Length, book.Tasters.Select(taster => taster.Number).Distinct().Count());
        if (book.Key is { } key)
        {
            Assert.Equal(key.Lines.Length, key.Lines.Select(line => line.Code).Distinct().Count());
            Assert.Empty(book.RetiredBefore.Intersect(key.Lines.Select(line => line.Code)));
            var plates = book.Tasters.Select(taster => book.Plate(taster.Id)).OfType<Plate>().ToList();
            Assert.All(plates, plate => Assert.All(plate.Codes, code => Assert.NotNull(key[code])));
            Assert.All(plates, plate => Assert.Equal(plate.Codes.Length, plate.Codes.Distinct().Count()));
            var held = book.Present.Select(taster => book.Plate(taster.Id)?.Number).OfType<int>().ToList();
            Assert.Equal(held.Count, held.Distinct().Count());
            Assert.All(book.Present.Where(taster => book.OpenedAt is null), taster => Assert.All(book.Served(taster.Id), code => Assert.DoesNotContain(key[code]!.Wheel, taster.LeftOff)));
        }

        if (day.Tasting is not RevealedTasting revealed) return;
        var record = revealed.Record(day.Ballots);
        var samples = record.Samples.Select(sample => sample.Id).ToHashSet();
        Assert.Equal(samples.Count, record.Samples.Length);
        Assert.All(record.Voters, voter => Assert.All(voter.Places.SelectMany(group => group), id => Assert.Contains(id, samples)));
        Assert.All(record.Withdrawals, gone => Assert.DoesNotContain(gone.Id, samples));
    }
}
