using BenchmarkDotNet.Attributes;

namespace Trier.Benchmarks;

/// <summary>The pieces of work that bench/compare.py holds against R and SciPy, for a closer look: allocations, spread, disassembly.</summary>
[MemoryDiagnoser]
public class Speed
{
    private readonly Action _table = Works.FriedmanTable(1000, 5);
    private readonly Action _permutations = Works.Permutations(12, 5, 10_000);
    private readonly Action _simulation = Works.Simulation(20_000, 12, 5);
    private readonly Action _null = Works.NullDistribution(8, 5);
    private readonly Action _cheese = Works.Cheese(Path.Combine(Checkout(), "tests", "Trier.Statistics.Tests", "Checks", "data", "ordinal_cheese_additives.csv"));
    private readonly Action _plan = Works.ServingPlan(40, 8);
    private readonly Action _repeat = Works.ServingPlanWithRepeat(40, 8);

    [Benchmark]
    public void FriedmanTable() => _table();

    [Benchmark]
    public void Permutations() => _permutations();

    [Benchmark]
    public void Simulation() => _simulation();

    [Benchmark]
    public void NullDistribution() => _null();

    [Benchmark]
    public void ProportionalOdds() => _cheese();

    [Benchmark]
    public void ServingPlan() => _plan();

    [Benchmark]
    public void ServingPlanWithRepeat() => _repeat();

    private static string Checkout()
    {
        for (var folder = new DirectoryInfo(AppContext.BaseDirectory); folder is not null; folder = folder.Parent)
        {
            if (File.Exists(Path.Combine(folder.FullName, "Trier.slnx"))) return folder.FullName;
        }

        throw new InvalidOperationException("Run this from a checkout.");
    }
}
