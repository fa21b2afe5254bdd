using Trier.Statistics.Power;
using Trier.Statistics.Randomness;

namespace Trier.Calibration;

/// <summary>Null distributions kept over a run: counted once a panel size, exact up to 24 judges of 5 items, beyond that from a million random panels.</summary>
internal static class Tables
{
    private static readonly Dictionary<(int Items, int Judges), UntiedNull> Known = [];

    public static UntiedNull Of(int items, int judges, Seed seed)
    {
        if (!Known.TryGetValue((items, judges), out var table)) Known.Add((items, judges), table = UntiedNull.Of(items, judges, seed.Child("null"), 3e8));
        return table;
    }
}
