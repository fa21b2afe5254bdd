namespace Trier.Publishing.Charts;

/// <summary>Where the dots of a places chart stand; one for the wide and one for the narrow drawing.</summary>
/// <param name="Width">Units across; the drawing is never shown smaller than 9/10 of them.</param>
/// <param name="Left">Where the first place stands.</param>
/// <param name="Right">Where the last place stands.</param>
/// <param name="Lane">Height of a lane.</param>
/// <param name="Line">From the top of a lane to its line.</param>
/// <param name="Dot">Radius of a dot.</param>
public sealed record PlacesLayout(double Width, double Left, double Right, double Lane, double Line, double Dot)
{
    /// <summary>Beside its table on a wide screen, and on paper.</summary>
    public static PlacesLayout Wide { get; } = For(800, 130);

    /// <summary>On a phone: the wheel's name and averages stand above its line.</summary>
    public static PlacesLayout Narrow { get; } = For(350, 0);

    /// <summary>Whether names and averages stand above the lines for want of room beside them.</summary>
    public bool IsNarrow => Width < 500;

    /// <summary>A layout of any width.</summary>
    /// <param name="width">Units across, 300 or more.</param>
    /// <param name="names">Width of the longest wheel's name.</param>
    /// <param name="lane">Height of a lane, or null for the usual.</param>
    public static PlacesLayout For(double width, double names, double? lane = null) => width < 500
        ? new(width, 34, width - 34, lane ?? 96, 62, 5.5)
        : new(width, Math.Clamp(names + 72, 110, width * 0.35), width - 190, lane ?? 72, (lane ?? 72) * 40 / 72, 6.5);

    /// <summary>How far a lane's line goes on beyond its first and its last place.</summary>
    public double Edge => IsNarrow ? Left - 2 : 36;

    /// <summary>Height kept for the names of the places.</summary>
    public const double Head = 30;

    /// <summary>The middle of a place's column.</summary>
    /// <param name="place">From 1 to <paramref name="places"/>.</param>
    /// <param name="places">How many places there are.</param>
    public double X(double place, int places) => places < 2 ? (Left + Right) / 2 : Left + ((place - 1) / (places - 1) * (Right - Left));

    /// <summary>
    /// Dots of one lane, side by side where several tasters gave the same place, closer where they would run into the next place or off the line.
    /// </summary>
    /// <param name="dots">The lane's dots.</param>
    /// <param name="places">How many places there are.</param>
    /// <returns>Each dot with its centre, measured from the lane's line downwards.</returns>
    public IEnumerable<(Camp Camp, double X, double Y)> Spread(IReadOnlyList<PlacesDot> dots, int places)
    {
        double room = places < 2 ? Right - Left : (Right - Left) / (places - 1);
        foreach (var group in dots.GroupBy(dot => (dot.Place, dot.Camp)).OrderBy(g => g.Key.Camp).ThenBy(g => g.Key.Place))
        {
            int count = group.Count();
            double middle = X(group.Key.Place, places);
            double half = Math.Min(room * 0.46, Math.Min(middle - Left, Right - middle) + Edge) - Dot;
            double step = count < 2 ? 0 : Math.Min(2.1 * Dot, 2 * half / (count - 1));
            double y = group.Key.Camp switch { Camp.Milder => -2.2 * Dot, Camp.Stronger => 2.2 * Dot, _ => 0 };
            for (int i = 0; i < count; i++)
                yield return (group.Key.Camp, middle + ((i - ((count - 1) / 2.0)) * step), y);
        }
    }
}
