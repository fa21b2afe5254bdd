using Trier.Trials.Common;

namespace Trier.Trials.Tastings;

/// <summary>Joins tasters who compared notes, directly or through others, to one voice.</summary>
internal static class Voices
{
    /// <summary>The voice number of every taster who compared notes; the others have a voice of their own and stand nowhere here.</summary>
    public static IReadOnlyDictionary<TasterId, int> Of(DayBook book)
    {
        var parent = new Dictionary<TasterId, TasterId>();
        foreach (var compared in book.Compared)
        {
            foreach (var taster in compared.Tasters) parent[Root(parent, taster)] = Root(parent, compared.Tasters[0]);
        }

        var numbers = new Dictionary<TasterId, int>();
        var voices = new Dictionary<TasterId, int>();
        foreach (var taster in book.Tasters.Where(taster => parent.ContainsKey(taster.Id)))
        {
            var root = Root(parent, taster.Id);
            if (!numbers.TryGetValue(root, out var number)) numbers[root] = number = numbers.Count + 1;
            voices[taster.Id] = number;
        }

        return voices;
    }

    private static TasterId Root(Dictionary<TasterId, TasterId> parent, TasterId taster)
    {
        while (parent.TryGetValue(taster, out var above) && above != taster) taster = above;
        parent.TryAdd(taster, taster);
        return taster;
    }
}
