Console.WriteLine("Benchmarks: none yet.");
