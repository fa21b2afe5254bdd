using System.Collections.Immutable;
using Trier.Statistics.Randomness;
using Trier.Trials.Common;
using Trier.Trials.Plans;
using Trier.Trials.Tastings.Events;

namespace Trier.Trials.Tastings.Plates;

/// <summary>Draws the key: numbered plates in balanced orders, codes, and which of a repeat's two codes counts.</summary>
internal static class KeyDraw
{
    /// <summary>Draws everything, or everything anew; codes that go on being served are kept.</summary>
    /// <param name="book">The day book.</param>
    /// <param name="at">When.</param>
    /// <param name="seed">Chance for the draw.</param>
    /// <param name="begun">People who have begun their plate: it stays as it is, but for wheels withdrawn.</param>
    public static Outcome<KeySealed> Draw(DayBook book, DateTimeOffset at, Seed seed, IReadOnlySet<TasterId>? begun = null)
    {
        var menu = Menu.Of(book);
        var rules = book.Plan.Serving ?? ServingRules.Usual;
        var slots = Stays(book, begun ?? ImmutableHashSet<TasterId>.Empty).ToList();
        var waiting = book.Present.Where(taster => slots.TrueForAll(slot => slot.Taster != taster.Id)).ToList();
        var special = waiting.Where(taster => menu.All.Any(serving => taster.LeftOff.Contains(serving.Wheel))).ToList();
        var ordinary = waiting.Except(special).Where(taster => book.IsExpected(taster) || Held(book, taster) is not null).ToList();
        var spares = SparePlates.For(book.Present.Count());
        var orders = PlateOrders.Plan(menu, ordinary.Count, [.. special.Select(taster => taster.LeftOff)], spares, seed);

        var free = new Numbers(slots.Select(slot => slot.Number).Concat(ordinary.Concat(special).Select(taster => Held(book, taster)).OfType<int>()));
        for (var i = 0; i < orders.Length; i++)
        {
            var taster = i < ordinary.Count ? ordinary[i] : i < ordinary.Count + special.Count ? special[i - ordinary.Count] : null;
            var held = taster is null ? null : Held(book, taster);
            var given = taster is not null && (!rules.AsTheyCome || held is not null || i >= ordinary.Count);
            slots.Add(new(held ?? free.Next(), given ? taster!.Id : null, orders[i], Own: i >= ordinary.Count && i < ordinary.Count + special.Count));
        }

        var own = rules.OwnCodes && slots.Sum(slot => slot.Order.Length) <= ServingRules.MostOwnCodes;
        var coded = PlateCodes.Draw(book, menu, [.. slots.Select(slot => own ? slot with { Own = true } : slot)], seed);
        // Where codes run short for everybody's own, the same for all are enough.
        if (!coded.Ok && own) coded = PlateCodes.Draw(book, menu, slots, seed);
        return coded.Then(codes => Outcome.Of(Sealed(book, at, codes, slots, slots.Count - spares)));
    }

    /// <summary>One plate drawn again, after something was left off it or put back; every other plate stays. It bears codes that no earlier plate of this person bore.</summary>
    /// <param name="book">The day book, with what is left off.</param>
    /// <param name="at">When.</param>
    /// <param name="taster">Whose plate.</param>
    /// <param name="seed">Chance for the draw.</param>
    public static Outcome<KeySealed> DrawOne(DayBook book, DateTimeOffset at, Taster taster, Seed seed)
    {
        var menu = Menu.Of(book);
        var number = book.Plate(taster.Id)?.Number ?? NextPlates.Free(book).First();
        var slots = book.Orders.Select((codes, index) => new Slot(index + 1, HolderOf(book, index + 1), Order(book, codes), Own: false) { Kept = codes }).ToList();
        // Whoever has a plate beyond the spares goes on having it.
        slots.AddRange(book.Present.Select(present => book.Plate(present.Id)).OfType<Plate>().Where(plate => plate.Number > slots.Count)
            .Select(plate => new Slot(plate.Number!.Value, plate.Taster, Order(book, plate.Codes), Own: false) { Kept = plate.Codes }).ToList());
        if (slots.TrueForAll(slot => slot.Number != number)) slots.Add(new(number, taster.Id, [], Own: false));
        var now = slots.Single(slot => slot.Number == number);
        var others = slots.Where(slot => slot.Number != number && slot.Taster is not null).Select(slot => slot.Order);
        var order = PlateOrders.Again(menu, now.Order, others, taster.LeftOff, seed);
        var own = menu.All.Any(serving => taster.LeftOff.Contains(serving.Wheel)) || book.Key!.Lines.All(line => line.Plate is not null);
        slots[slots.IndexOf(now)] = new(number, taster.Id, order, own) { Afresh = true };
        return PlateCodes.Draw(book, menu, slots, seed).Then(codes => Outcome.Of(Sealed(book, at, codes, slots, book.PlannedPlates!.Value)));
    }

    private static KeySealed Sealed(DayBook book, DateTimeOffset at, PlateCodes.Coded codes, IReadOnlyCollection<Slot> slots, int planned)
    {
        var old = book.Key?.Lines.Where(line => book.IsWithdrawn(line.Wheel)) ?? [];
        var key = new Key((book.Key?.Version ?? book.Log.Count(logged => logged.Event is KeySealed)) + 1, [.. codes.Lines.OrderBy(line => line.Code), .. old], codes.Retired);
        var sorted = slots.OrderBy(slot => slot.Number).ToList();
        var plates = book.Tasters.SelectMany(taster => sorted.Where(slot => slot.Taster == taster.Id).Select(slot => new Plate(taster.Id, slot.Dealt ?? codes.Plates[slot.Number]) { Number = slot.Number }));
        return new KeySealed(at, key, [.. sorted.Select(slot => codes.Plates[slot.Number])], [.. plates]) { Planned = planned };
    }

    // Plates somebody eats from already, and numbers that somebody had who is gone: neither is given out anew.
    private static IEnumerable<Slot> Stays(DayBook book, IReadOnlySet<TasterId> begun)
    {
        if (book.OpenedAt is null) return [];
        return book.Tasters
            .Where(taster => taster.LetGo || begun.Contains(taster.Id))
            .Select(taster => book.Plate(taster.Id))
            .OfType<Plate>()
            .Where(plate => plate.Number is not null)
            .DistinctBy(plate => plate.Number)
            .Select(plate => (Plate: plate, Codes: plate.Codes.Where(code => !book.IsWithdrawn(book.Key![code]!.Wheel)).ToImmutableArray()))
            .Select(stays => new Slot(stays.Plate.Number!.Value, stays.Plate.Taster, Order(book, stays.Codes), Own: false) { Kept = stays.Codes, Dealt = stays.Plate.Codes });
    }

    private static int? Held(DayBook book, Taster taster) => book.OpenedAt is null ? null : book.Plate(taster.Id)?.Number;

    private static TasterId? HolderOf(DayBook book, int number) => book.Present.Select(taster => book.Plate(taster.Id)).FirstOrDefault(plate => plate?.Number == number)?.Taster;

    private static ImmutableArray<Serving> Order(DayBook book, ImmutableArray<BlindCode> codes) => [.. codes.Select(code => Serving.Of(book.Key![code]!))];

    private sealed class Numbers(IEnumerable<int> taken)
    {
        private readonly HashSet<int> _taken = [.. taken];
        private int _last;

        public int Next()
        {
            do _last++;
            while (_taken.Contains(_last));
            return _last;
        }
    }
}

/// <summary>One numbered plate while the key is drawn.</summary>
/// <param name="Number">Its number, from 1.</param>
/// <param name="Taster">Whose it is, or null where that is settled when they come.</param>
/// <param name="Order">What stands on it, in serving order.</param>
/// <param name="Own">Whether it bears codes of its own: a plate on which a sample is missing must, or the missing code would name the wheel.</param>
internal sealed record Slot(int Number, TasterId? Taster, ImmutableArray<Serving> Order, bool Own)
{
    /// <summary>The codes it bears and keeps, in the same order; null where codes are looked for.</summary>
    public ImmutableArray<BlindCode>? Kept { get; init; }

    /// <summary>The codes as they were dealt, those of wheels withdrawn since included: what was said of them stays on the ballot. Null for a plate that nobody has begun.</summary>
    public ImmutableArray<BlindCode>? Dealt { get; init; }

    /// <summary>Whether codes it bore before are given up: what stays and what comes would tell of what was left off.</summary>
    public bool Afresh { get; init; }
}
