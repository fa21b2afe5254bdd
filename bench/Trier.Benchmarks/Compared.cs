using System.Globalization;

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
        Say("plan 40x8", Works.ServingPlan(40, 8));
        Say("plan 40x8 with a repeat", Works.ServingPlanWithRepeat(40, 8));
    }

    public static void Two()
    {
        foreach (var (judges, items) in new[] { (15, 5), (20, 5), (50, 4) }) Say(string.Create(CultureInfo.InvariantCulture, $"exact tied {judges}x{items}"), Clock.Wall(Works.TiedExact(judges, items)));
    }

    private static void Say(string name, Action work) => Say(name, Clock.Processor(work));

    private static void Say(string name, double seconds) => Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{name}\t{seconds:E5}"));
}
