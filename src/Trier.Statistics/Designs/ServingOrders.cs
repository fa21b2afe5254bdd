using System.Collections.Immutable;
using Trier.Statistics.Randomness;
namespace Trier.Statistics.Designs;
/// <summary>Interim.</summary>
public static class ServingOrders
{
    /// <summary>Interim.</summary>
    public static ImmutableArray<ImmutableArray<int>> Williams(int k, Seed seed)
    {
        var first = new int[k];
        for (int i = 1, lo = 1, hi = k - 1; i < k; i++) first[i] = i % 2 == 1 ? lo++ : hi--;
        return [.. Enumerable.Range(0, k).Select(r => first.Select(x => (x + r) % k).ToImmutableArray())];
    }
    /// <summary>Interim.</summary>
    public static ImmutableArray<ImmutableArray<int>> WithRepeat(int k, int a, int b, Seed seed) => Williams(k, seed);
}
