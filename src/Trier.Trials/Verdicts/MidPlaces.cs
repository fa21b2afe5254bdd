using System.Collections.Immutable;

namespace Trier.Trials.Verdicts;

/// <summary>Places of a ballot as numbers.</summary>
public static class MidPlaces
{
    /// <summary>The place of every sample, from 1; tied ones share the mean of the places they take up.</summary>
    /// <param name="groups">Groups of sample ids, best first; empty ones count for nothing.</param>
    /// <param name="among">Which samples count; null for all. The others leave the places.</param>
    public static Dictionary<string, double> Of(IEnumerable<ImmutableArray<string>> groups, Func<string, bool>? among = null)
    {
        ArgumentNullException.ThrowIfNull(groups);
        var places = new Dictionary<string, double>(StringComparer.Ordinal);
        foreach (var group in groups)
        {
            var before = places.Count;
            var kept = among is null ? [.. group] : group.Where(among).ToList();
            foreach (var id in kept) places[id] = before + ((kept.Count + 1) / 2.0);
        }

        return places;
    }
}
