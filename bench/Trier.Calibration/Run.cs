using System.Globalization;
using Trier.Statistics.Power;
using Trier.Statistics.Randomness;

namespace Trier.Calibration;

/// <summary>What one run is held to.</summary>
/// <param name="Seed">Fixes every draw.</param>
/// <param name="Panels">Panels a cell, unless a table says otherwise.</param>
internal sealed record Run(ulong Seed, int Panels)
{
    public Seed For(string name, params int[] cell) => cell.Aggregate(new Seed(Seed).Child(name), (seed, part) => seed.Child(part));

    /// <summary>Fewer panels where each costs much, in the same proportion in a quick look.</summary>
    public int Fewer(int panels) => (int)Math.Max(50, (long)panels * Panels / 20_000);

    /// <summary>Nominal share plus three errors at a number of panels.</summary>
    public static double Bar(double nominal, int panels) => nominal + (3 * Math.Sqrt(nominal * (1 - nominal) / panels));

    public static string Percent(Simulated share) => Percent(share.Share);

    public static string Percent(double share) => (100 * share).ToString("F2", CultureInfo.InvariantCulture);

    public static string Number(double value, string format = "F2") => value.ToString(format, CultureInfo.InvariantCulture);
}
