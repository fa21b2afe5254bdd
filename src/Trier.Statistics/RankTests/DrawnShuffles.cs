using System.Runtime.InteropServices;
using Trier.Statistics.Randomness;

namespace Trier.Statistics.RankTests;

/// <summary>How often random shuffles reached what was observed.</summary>
/// <param name="Statistic">Draws with at least the observed statistic.</param>
/// <param name="Lead">Draws with at least the observed gap between first and second.</param>
[StructLayout(LayoutKind.Auto)]
internal readonly record struct Hits(long Statistic, long Lead)
{
    public static Hits operator +(Hits a, Hits b) => new(a.Statistic + b.Statistic, a.Lead + b.Lead);
}

/// <summary>Draws in a fixed number of parts, each with its own stream, so that serial and parallel runs agree.</summary>
internal static class DrawParts
{
    private const int Parts = 16;

    public static Hits Run(int draws, Seed seed, Func<int, Generator, Hits> part) =>
        Streams.Run(Parts, seed, (i, generator) => part(Streams.Share(draws, Parts, i), generator)).Aggregate((a, b) => a + b);
}
