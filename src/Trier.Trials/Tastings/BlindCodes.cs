using System.Collections.Immutable;
using Trier.Statistics.Randomness;
using Trier.Trials.Common;

namespace Trier.Trials.Tastings;

/// <summary>Draws blind codes.</summary>
public static class BlindCodes
{
    /// <summary>
    /// Draws codes of which any two can stand on one table (<see cref="BlindCode.CanStandBeside"/>), beside the codes in use and unlike
    /// every code ever given out.
    /// </summary>
    /// <param name="count">How many.</param>
    /// <param name="inUse">Codes that will stand on the same table.</param>
    /// <param name="retired">Codes that were given out before and are never used again.</param>
    /// <param name="chance">Where chance comes from; advanced.</param>
    /// <returns>The codes in the order drawn, or the sentence that there are not enough left.</returns>
    public static Outcome<ImmutableArray<BlindCode>> Draw(int count, IEnumerable<BlindCode> inUse, IEnumerable<BlindCode> retired, Generator chance)
    {
        var pool = Enumerable.Range(100, 900).Where(BlindCode.Allowed).Select(BlindCode.Of).Except(retired).ToArray();
        chance.Shuffle<BlindCode>(pool);
        var table = inUse.ToList();
        var drawn = ImmutableArray.CreateBuilder<BlindCode>(count);
        foreach (var code in pool)
        {
            if (drawn.Count == count) break;
            // A code that reads as another number upside down can be taken for it on a turned cup; those are not drawn at all.
            if (code.UpsideDown() is { } turned && turned != code.Number) continue;
            if (!table.TrueForAll(code.CanStandBeside)) continue;
            table.Add(code);
            drawn.Add(code);
        }

        return drawn.Count == count
            ? Outcome.Of(drawn.ToImmutable())
            : Outcome.Fault<ImmutableArray<BlindCode>>("codes", "No three-digit codes are left that nobody has seen before: hold a new trial with these wheels.");
    }
}
