using Xunit.Sdk;
using Xunit.v3;

// A browser test waits more than it works: a third one at a time on two cores ends sooner.
[assembly: Parallelization(Mode = ParallelMode.All, MaxThreads = 3)]
