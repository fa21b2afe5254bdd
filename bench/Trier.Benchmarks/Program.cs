using Trier.Benchmarks;

// "one FOLDER", "two" and "million" print medians for bench/compare.py, "scaling" the cost against size, "verdicts" the times of a verdict; anything else is BenchmarkDotNet's.
switch (args)
{
    case ["one", var folder]:
        Compared.One(folder);
        break;
    case ["two"]:
        Compared.Two();
        break;
    case ["million"]:
        Compared.Million();
        break;
    case ["verdicts"]:
        Verdicts.Print();
        break;
    case ["scaling"]:
        Scaling.Print();
        break;
    default:
        BenchmarkDotNet.Running.BenchmarkSwitcher.FromAssembly(typeof(ExactFriedman).Assembly).Run(args);
        break;
}
