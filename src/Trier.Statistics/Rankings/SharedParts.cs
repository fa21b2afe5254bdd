using System.Collections.Immutable;

namespace Trier.Statistics.Rankings;

/// <summary>Arrays that most rankings have in common, kept once so that a million ballots fit in memory.</summary>
internal static class SharedParts
{
    private const int Kept = 64;

    private static readonly ImmutableArray<int>[] Singles = [.. Enumerable.Range(0, Kept).Select(item => ImmutableArray.Create(item))];

    private static readonly ImmutableArray<int>[] Runs = [.. Enumerable.Range(0, Kept).Select(length => Enumerable.Range(0, length).ToImmutableArray())];

    public static ImmutableArray<int> Single(int item) => item < Kept ? Singles[item] : [item];

    /// <summary>0, 1, ..., length - 1.</summary>
    public static ImmutableArray<int> All(int length) => length < Kept ? Runs[length] : [.. Enumerable.Range(0, length)];
}
