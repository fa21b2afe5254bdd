using System.Globalization;

namespace Trier.Publishing.Writing;

/// <summary>The names of places.</summary>
public static class Ordinal
{
    /// <summary>1st, 2nd, 3rd, 4th...</summary>
    /// <param name="place">A place from 1.</param>
    /// <returns>The English short form.</returns>
    public static string English(int place)
    {
        string ending = (place % 100) is >= 11 and <= 13 ? "th" : (place % 10) switch
        {
            1 => "st",
            2 => "nd",
            3 => "rd",
            _ => "th",
        };
        return place.ToString(CultureInfo.InvariantCulture) + ending;
    }
}
