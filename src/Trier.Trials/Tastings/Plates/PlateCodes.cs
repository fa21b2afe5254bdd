using System.Collections.Immutable;
using Trier.Statistics.Randomness;
using Trier.Trials.Common;

namespace Trier.Trials.Tastings.Plates;

/// <summary>Gives plates their codes: those a sample has for everybody, and those of plates that bear their own.</summary>
internal static class PlateCodes
{
    /// <summary>What was drawn.</summary>
    /// <param name="Lines">The key's lines, in no order.</param>
    /// <param name="Plates">The codes of each plate by number, in serving order.</param>
    /// <param name="Retired">Codes given out once and never used again, sorted.</param>
    internal sealed record Coded(ImmutableArray<KeyLine> Lines, IReadOnlyDictionary<int, ImmutableArray<BlindCode>> Plates, ImmutableArray<BlindCode> Retired);

    public static Outcome<Coded> Draw(DayBook book, Menu menu, IReadOnlyCollection<Slot> slots, Seed seed)
    {
        var before = (book.Key?.Lines ?? []).Where(line => !book.IsWithdrawn(line.Wheel)).ToList();
        var lines = slots.Where(slot => slot.Kept is not null).SelectMany(slot => slot.Kept!.Value).Distinct().Select(code => before.Find(line => line.Code == code)!).ToList();
        // Every code that was ever seen, those in use included: whatever is drawn now is new to everybody.
        var seen = book.RetiredBefore.Concat(book.Key?.Retired ?? []).Concat(before.Select(line => line.Code)).ToHashSet();
        var chance = seed.Child("codes").Generator();
        var plates = new Dictionary<int, ImmutableArray<BlindCode>>();

        if (slots.Any(slot => slot is { Own: false, Kept: null }))
        {
            var shared = Shared(before, [.. lines.Select(line => line.Wheel)], menu, seen, seed, chance);
            if (!shared.TryGet(out var drawn)) return Outcome.Fault<Coded>(shared.Problems);
            lines = [.. lines.Union(drawn)];
        }

        foreach (var slot in slots)
        {
            if (slot.Kept is { } kept) plates[slot.Number] = kept;
            else if (!slot.Own) plates[slot.Number] = [.. slot.Order.Select(serving => lines.Find(line => line.Plate is null && Serving.Of(line) == serving)!.Code)];
            else
            {
                var known = slot.Afresh ? [] : before.Where(line => line.Plate == slot.Number && slot.Order.Contains(Serving.Of(line))).ToList();
                var missing = slot.Order.Except(known.Select(Serving.Of)).ToArray();
                var drawn = BlindCodes.Draw(missing.Length, known.Select(line => line.Code), seen, chance);
                if (!drawn.TryGet(out var codes)) return Outcome.Fault<Coded>(drawn.Problems);
                seen.UnionWith(codes);
                known.AddRange(missing.Select((serving, index) => new KeyLine(codes[index], serving.Wheel, serving.Counts) { Plate = slot.Number }));
                lines.AddRange(known);
                plates[slot.Number] = [.. slot.Order.Select(serving => known.Find(line => Serving.Of(line) == serving)!.Code)];
            }
        }

        var used = lines.Select(line => line.Code).ToHashSet();
        var retired = book.RetiredBefore.Concat(book.Key?.Retired ?? []).Concat(before.Select(line => line.Code)).Where(code => !used.Contains(code));
        return Outcome.Of(new Coded([.. lines], plates, [.. retired.Distinct().Order()]));
    }

    private static Outcome<List<KeyLine>> Shared(List<KeyLine> before, HashSet<WheelId> eaten, Menu menu, HashSet<BlindCode> seen, Seed seed, Generator chance)
    {
        var kept = before.Where(line => line.Plate is null && menu.All.Any(serving => serving.Wheel == line.Wheel) && (line.Counts || menu.All.Contains(Serving.Of(line)))).ToList();
        var servings = menu.All.Select(serving => serving.Wheel).ToList();
        foreach (var line in kept) servings.Remove(line.Wheel);
        var codes = BlindCodes.Draw(servings.Count, kept.Select(line => line.Code), seen, chance);
        if (!codes.TryGet(out var drawn)) return Outcome.Fault<List<KeyLine>>(codes.Problems);
        seen.UnionWith(drawn);
        var lines = kept.Concat(servings.Select((wheel, index) => new KeyLine(drawn[index], wheel, Counts: true))).ToList();
        // A pair that stays keeps its lot: a new draw after a withdrawal must not be a second throw of the coin.
        if (menu.First.FirstOrDefault(serving => !serving.Counts).Wheel is var repeated && repeated != default && lines.Where(line => line.Wheel == repeated).All(line => line.Counts))
        {
            // Somebody eats from the first code already, and has that one alone: it goes on counting, and the new one is the check.
            if (eaten.Contains(repeated) && lines.FindLastIndex(line => line.Wheel == repeated) is var latest) lines[latest] = lines[latest] with { Counts = false };
            else DrawWhichCounts(lines, repeated, seed.Child("which code counts").Generator());
        }

        return Outcome.Of(lines);
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
