using Trier.Benchmarks;

// "quick" prints medians of a few runs; anything else is BenchmarkDotNet's.
if (args is ["quick", ..]) QuickTable.Print();
else BenchmarkDotNet.Running.BenchmarkSwitcher.FromAssembly(typeof(ExactFriedman).Assembly).Run(args);
