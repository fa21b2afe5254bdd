using System.Diagnostics;
using System.Globalization;
using Trier.Calibration;

// Each section writes its own part of docs/methods/calibration.md; without a name all are run. "--panels N" makes a quick look, which is printed and not written.
var sections = new (string Name, Func<Run, string> Make)[]
{
    ("sizes", Sizes.Make),
    ("camps", Camping.Make),
    ("approximations", Approximations.Make),
    ("pairs", FalsePairs.Make),
    ("comparisons", Comparisons.Make),
    ("orders", Orders.Make),
    ("favourite", Favourites.Make),
    ("ladder", Ladder.Make),
    ("figures", Figures.Make),
    ("verdicts", WholeVerdicts.Make),
};
var at = Array.IndexOf(args, "--panels");
var run = new Run(20250830, at >= 0 ? int.Parse(args[at + 1], CultureInfo.InvariantCulture) : 20_000);
var wanted = args.Where(name => sections.Any(section => section.Name == name)).ToHashSet(StringComparer.Ordinal);
foreach (var (name, make) in sections)
{
    if (wanted.Count > 0 && !wanted.Contains(name)) continue;
    var start = Stopwatch.GetTimestamp();
    var text = make(run);
    text += $"\nRun time {Stopwatch.GetElapsedTime(start).TotalMinutes.ToString("F1", CultureInfo.InvariantCulture)} minutes on two cores of a shared machine at low priority; seed {run.Seed}.\n";
    Console.WriteLine(text);
    if (at < 0) Page.Write(name, text);
}
