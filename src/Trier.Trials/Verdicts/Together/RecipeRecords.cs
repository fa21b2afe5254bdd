using System.Collections.Immutable;
using Trier.Statistics.Counting;
using Trier.Trials.Tastings;
using Trier.Trials.Verdicts.Counting;

namespace Trier.Trials.Verdicts.Together;

/// <summary>Gathers the recipes' records from all tastings.</summary>
public static class RecipeRecords
{
    /// <summary>Every recipe that came up, by name; a wheel without a recipe is one of its own name.</summary>
    /// <param name="held">The tastings, in any order.</param>
    public static ImmutableArray<RecipeRecord> Of(IEnumerable<HeldTasting> held)
    {
        var seen = held.OrderBy(tasting => tasting.Record.Head.Day ?? DateOnly.MaxValue).ThenBy(tasting => tasting.Trial.Value).SelectMany(Appearances).ToList();
        // A wheel keeps the recipe it first came up with, here as where tastings are put together: a corrected name does not make two of it.
        var named = seen.GroupBy(pair => pair.Entry.Wheel).ToDictionary(wheel => wheel.Key, wheel => wheel.First().Entry.Facts.Recipe ?? wheel.First().Entry.Name);
        return
        [
            .. seen.GroupBy(pair => named[pair.Entry.Wheel], StringComparer.OrdinalIgnoreCase)
                .Select(recipe => new RecipeRecord(recipe.Key, [.. recipe.GroupBy(pair => pair.Entry.Wheel).Select(Wheel)]))
                .OrderBy(recipe => recipe.Recipe, StringComparer.OrdinalIgnoreCase),
        ];
    }

    private static WheelRecord Wheel(IEnumerable<(Entry Entry, WheelAppearance Appearance)> wheel)
    {
        var all = wheel.ToList();
        var last = all[^1].Entry;
        return new(last.Wheel, last.Name, last.Mark, last.Facts, [.. all.Select(pair => pair.Appearance)]);
    }

    private static IEnumerable<(Entry Entry, WheelAppearance Appearance)> Appearances(HeldTasting tasting)
    {
        var record = tasting.Record;
        var electorate = new Electorate(record);
        var lines = electorate.Wheels.IsEmpty ? [] : Tallying.Lines(electorate, electorate.Wheels, electorate.Headline);
        var ballots = electorate.Ballots(electorate.Headline).Ballots;
        ImmutableArray<string> leaders = ballots == 0 || electorate.Wheels.IsEmpty ? [] : [.. Standing.Of(Rules.Score(electorate, electorate.Headline, record.Plan.Rule)).Leaders.Select(i => electorate.Wheels[i].Id)];
        foreach (var entry in tasting.Entries)
        {
            var gone = record.Withdrawals.FirstOrDefault(withdrawal => withdrawal.Id == entry.Label);
            var line = lines.FirstOrDefault(line => line.Id == entry.Label);
            if (gone is null && line is null) continue;
            yield return (entry, new(tasting.Trial, record.Head.Title, record.Head.Day, tasting.AgeOf(entry), gone?.Reason, line?.AveragePlace, electorate.Wheels.Length, line?.Firsts ?? 0, line?.Ballots ?? 0, leaders.Contains(entry.Label)));
        }
    }
}
