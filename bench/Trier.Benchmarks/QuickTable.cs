using System.Diagnostics;
using System.Globalization;
using Trier.Statistics.RankTests;

namespace Trier.Benchmarks;

/// <summary>A table in a minute: medians of seven runs after two to warm up.</summary>
internal static class QuickTable
{
    private const int Warm = 2;
    private const int Runs = 7;

    public static void Print()
    {
        foreach (var (judges, items) in new[] { (14, 4), (10, 5), (15, 5), (20, 5), (50, 4), (8, 5) })
        {
            var ballots = ExactFriedman.Tied(judges, items);
            var p = 0.0;
            var median = Median(() => p = ShuffleConvolution.UpperTail(ballots));
            Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"exact Friedman p, {judges} by {items}, a tie in every ballot: {median:F1} ms (p {p:F6}, work {ShuffleConvolution.Work(ballots):E2})"));
        }
    }

    public static double Median(Action action)
    {
        for (var i = 0; i < Warm; i++) action();
        var times = new double[Runs];
        for (var i = 0; i < Runs; i++)
        {
            var start = Stopwatch.GetTimestamp();
            action();
            times[i] = Stopwatch.GetElapsedTime(start).TotalMilliseconds;
        }

        Array.Sort(times);
        return times[Runs / 2];
    }
}
