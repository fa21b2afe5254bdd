using System.Collections.Immutable;
using Trier.Statistics.Randomness;
using Trier.Trials.Common;

namespace Trier.Trials.Tastings.Placing;

/// <summary>The order in which one taster reads the words to tick: shuffled, so that the top of the list favours none, and the same on every sample, phone and sheet.</summary>
public static class WordOrder
{
    /// <summary>The words in this taster's order.</summary>
    /// <param name="taster">Who.</param>
    /// <param name="words">The host's words.</param>
    public static ImmutableArray<string> For(TasterId taster, ImmutableArray<string> words)
    {
        var order = words.ToArray();
        new Seed(0).Child("words").Child(taster.Value.ToString("N")).Generator().Shuffle(order.AsSpan());
        return [.. order];
    }
}
