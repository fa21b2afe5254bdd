using System.Collections.Immutable;
using Trier.Statistics.Randomness;
using Trier.Trials.Common;
using Trier.Trials.Tastings.Events;

namespace Trier.Trials.Tastings;

/// <summary>Draws the key: codes, which of a repeat's two codes counts, balanced serving orders, plates.</summary>
internal static class KeyDraw
{
    public static Outcome<KeySealed> Draw(DayBook book, DateTimeOffset at, Seed seed)
    {
        var wheels = book.Standing.Select(entry => entry.Wheel).ToList();
        var kept = book.Key?.Lines.Where(line => !book.IsWithdrawn(line.Wheel)).ToList() ?? [];
        if (book.Repeat is null) kept.RemoveAll(line => !line.Counts);
        var retired = book.RetiredBefore.Concat(book.Key?.Retired ?? []).ToHashSet();
        var old = book.Key?.Lines.Where(line => book.IsWithdrawn(line.Wheel)) ?? [];

        var servings = wheels.Concat(book.Repeat is { } twice ? [twice] : []).ToList();
        foreach (var line in kept) servings.Remove(line.Wheel);
        var codes = BlindCodes.Draw(servings.Count, kept.Select(line => line.Code), retired, seed.Child("codes").Generator());
        if (!codes.TryGet(out var drawn)) return Outcome.Fault<KeySealed>(codes.Problems);

        var lines = kept.Concat(servings.Select((wheel, index) => new KeyLine(drawn[index], wheel, Counts: true))).ToList();
        // A pair that stays keeps its lot: a new draw after a withdrawal must not be a second throw of the coin.
        if (book.Repeat is { } repeated && lines.Where(line => line.Wheel == repeated).All(line => line.Counts)) DrawWhichCounts(lines, repeated, seed.Child("which code counts").Generator());
        var ordered = lines.OrderBy(line => line.Code).ToImmutableArray();
        var key = new Key((book.Key?.Version ?? book.Log.Count(logged => logged.Event is KeySealed)) + 1, [.. ordered, .. old], [.. retired.Order()]);
        var orders = Dealing.Orders(ordered, seed.Child("orders"));
        return Outcome.Of(new KeySealed(at, key, orders, Dealing.Plates(book, key, orders)));
    }

    private static void DrawWhichCounts(List<KeyLine> lines, WheelId repeated, Generator chance)
    {
        // Codes drawn at random are in no order that tells anything; the coin makes it plain that either could have counted.
        var pair = lines.Where(line => line.Wheel == repeated).OrderBy(line => line.Code).ToList();
        var check = pair[chance.NextInt(2)];
        lines[lines.IndexOf(check)] = check with { Counts = false };
        var counted = pair.Single(line => line != check);
        lines[lines.IndexOf(counted)] = counted with { Counts = true };
    }
}
