using System.Diagnostics;
using System.Globalization;
using Trier.Statistics.ChoiceModels;

namespace Trier.Benchmarks;

/// <summary>Prints "name, tab, median seconds" for the script that puts them beside R and SciPy. "one" is meant for a process held to one processor, "two" for all.</summary>
internal static class Compared
{
    public static void One(string folder)
    {
        Say("friedman 1000x5", Works.FriedmanTable(1000, 5));
        Say("permutations 12x5", Works.Permutations(12, 5, 10_000));
        Say("simulation 20000 of 12x5", Works.Simulation(20_000, 12, 5));
        Say("exact null 8x5", Works.NullDistribution(8, 5));
        Say("bradley-terry 7", Works.BradleyTerryGames(Path.Combine(folder, "baseball.csv")));
        Say("proportional odds", Works.Cheese(Path.Combine(folder, "cheese.csv")));
        Say("plackett-luce 5000x10", Works.PlackettLuceOrders(Path.Combine(folder, "orders.csv")));
        Say("plan 40x8", Works.ServingPlan(40, 8));
        Say("plan 40x8 with a repeat", Works.ServingPlanWithRepeat(40, 8));
    }

    public static void Two()
    {
        foreach (var (judges, items) in new[] { (15, 5), (20, 5), (50, 4) })
        {
            var name = string.Create(CultureInfo.InvariantCulture, $"exact tied {judges}x{items}");
            var work = Works.TiedExact(judges, items);
            Say(name, Clock.Wall(work));

            // Where other programs hold the processors the wall clock says little: half the processor time is what two free ones would take at best.
            Say(name + " processor", Clock.Processor(work, 3) / 2);
        }
    }

    /// <summary>A million orders of ten: seconds by the wall clock and the process's largest memory, the orders themselves included.</summary>
    public static void Million()
    {
        var orders = Works.DrawnOrders(1_000_000, 10);
        var start = Stopwatch.GetTimestamp();
        var fit = PlackettLuce.Fit(ChoiceCounts.FromOrders(10, orders));
        Say("plackett-luce 1000000x10", Stopwatch.GetElapsedTime(start).TotalSeconds);
        using var own = Process.GetCurrentProcess();
        Say("plackett-luce 1000000x10 megabytes", own.PeakWorkingSet64 / 1e6);
        if (!fit.Stands) throw new InvalidOperationException(fit.Refusal!.Sentence);
    }

    private static void Say(string name, Action work) => Say(name, Clock.Processor(work));

    private static void Say(string name, double seconds) => Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{name}\t{seconds:E5}"));
}
