using System.Collections.Immutable;
using Trier.Trials.Common;
using Trier.Trials.Tastings;

namespace Trier.Web.Verdicts.Publishing;

/// <summary>An order of codes as a person writes it: “593 &gt; 417 = 862 &gt; 238”, best first, = for a tie; commas and spaces will do between.</summary>
internal static class PlacesText
{
    /// <summary>Reads an order.</summary>
    public static Outcome<ImmutableArray<ImmutableArray<BlindCode>>> Read(string text)
    {
        var places = ImmutableArray.CreateBuilder<ImmutableArray<BlindCode>>();
        var seen = new HashSet<BlindCode>();
        foreach (var group in text.Replace(" = ", "=", StringComparison.Ordinal).Split([' ', '>', ',', ';'], StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries))
        {
            var tied = ImmutableArray.CreateBuilder<BlindCode>();
            foreach (var word in group.Split('=', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries))
            {
                if (!BlindCode.TryParse(word, out var code)) return Fault($"“{word}” is no code. Write the codes best first, such as 593 > 417 = 862 > 238.");
                if (!seen.Add(code)) return Fault($"{code} stands there twice.");
                tied.Add(code);
            }

            if (tied.Count > 0) places.Add(tied.ToImmutable());
        }

        return seen.Count < 2 ? Fault("Write at least two codes, best first, such as 593 > 417 = 862 > 238.") : Outcome.Of(places.ToImmutable());
    }

    /// <summary>Writes an order so that it can be read again.</summary>
    public static string Write(ImmutableArray<ImmutableArray<BlindCode>> places) => string.Join(" > ", places.Select(group => string.Join(" = ", group)));

    private static Outcome<ImmutableArray<ImmutableArray<BlindCode>>> Fault(string sentence) => Outcome.Fault<ImmutableArray<ImmutableArray<BlindCode>>>("places", sentence);
}
