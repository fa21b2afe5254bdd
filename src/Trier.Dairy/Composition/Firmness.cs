using Trier.Dairy.Quantities;
using Trier.Dairy.Workings;

namespace Trier.Dairy.Composition;

/// <summary>Firmness words of Codex A-6 by moisture in fat-free substance. The classes overlap: all that fit are given.</summary>
public static class Firmness
{
    /// <summary>The words that fit. Source [CodexA6], read: under 51 extra hard, 49 to 56 hard, 54 to 63 semi-hard, 61 to 69 semi-soft, above 67 soft.</summary>
    /// <param name="moistureInFatFree">MNFS.</param>
    public static Listed<string> Words(Share moistureInFatFree)
    {
        var percent = moistureInFatFree.Percent;
        (string Word, bool Fits)[] classes =
        [
            ("extra hard", percent < 51),
            ("hard", percent is >= 49 and <= 56),
            ("semi-hard", percent is >= 54 and <= 63),
            ("semi-soft", percent is >= 61 and <= 69),
            ("soft", percent > 67),
        ];
        return [.. classes.Where(entry => entry.Fits).Select(entry => entry.Word)];
    }
}
