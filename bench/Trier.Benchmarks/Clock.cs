using System.Diagnostics;

namespace Trier.Benchmarks;

/// <summary>
/// Medians in seconds after a warm-up that lets the compiler settle. Work on one thread is timed by the processor time of the whole process, which other programs on the machine do not lengthen; work on several threads by the wall clock.
/// </summary>
internal static class Clock
{
    private const double LeastBatch = 0.02;

    public static double Processor(Action work, int runs = 15) => Median(work, runs, () => Environment.CpuUsage.TotalTime.TotalSeconds);

    public static double Wall(Action work, int runs = 5) => Median(work, runs, () => Stopwatch.GetTimestamp() / (double)Stopwatch.Frequency);

    private static double Median(Action work, int runs, Func<double> now)
    {
        // Tiered compilation replaces hot code after some calls and a tenth of a second: warm up past that, unless the work itself is long.
        var warm = Stopwatch.StartNew();
        var calls = 0;
        do
        {
            work();
            calls++;
        }
        while (warm.Elapsed.TotalSeconds < 0.6 && calls < 3_000);
        var each = warm.Elapsed.TotalSeconds / calls;
        var batch = Math.Max(1, (int)Math.Ceiling(LeastBatch / each));
        var times = new double[runs];
        for (var run = 0; run < runs; run++)
        {
            var start = now();
            for (var i = 0; i < batch; i++) work();
            times[run] = (now() - start) / batch;
        }

        Array.Sort(times);
        return times[runs / 2];
    }
}
