using Trier.Statistics.Discrimination;
using Trier.Statistics.Distributions;

namespace Trier.Statistics.Power;

/// <summary>Two items head to head without ties: the exact chance that the two-sided sign test at .05 shows the one that people prefer.</summary>
public static class HeadToHeadPower
{
    private const double Level = 0.05;

    /// <summary>The chance that the preferred one is shown.</summary>
    /// <param name="ratio">How many people prefer it for each that does not, above 0: 2 for 2 : 1.</param>
    /// <param name="voices">At least 1.</param>
    public static double Shown(double ratio, int voices)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(ratio);
        return DiscriminationTest.LeastPreferring(voices, Level) is { } least ? Tails.BinomialAtLeast(least, voices, ratio / (1 + ratio)) : 0;
    }

    /// <summary>The smallest panel that reaches a chance, and the smallest from which it never drops below again up to a largest one: the binomial's saw-tooth makes them differ.</summary>
    /// <param name="ratio">Above 1.</param>
    /// <param name="chance">Wanted, between 0 and 1.</param>
    /// <param name="largest">The largest panel looked at.</param>
    /// <returns>Null where not reached.</returns>
    public static (int? Reaching, int? Lasting) PanelSize(double ratio, double chance, int largest = 1000)
    {
        int? reaching = null, lasting = null;
        for (var n = 1; n <= largest; n++)
        {
            if (Shown(ratio, n) < chance)
            {
                lasting = null;
                continue;
            }

            reaching ??= n;
            lasting ??= n;
        }

        return (reaching, lasting);
    }
}
