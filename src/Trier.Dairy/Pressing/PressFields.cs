using Trier.Dairy.Workings;

namespace Trier.Dairy.Pressing;

/// <summary>The inputs about pressing, with their possible and usual ranges (ranges: common practice).</summary>
public static class PressFields
{
    /// <summary>Weight hung or laid on.</summary>
    public static readonly Field Weight = new("press-weight", "Weight on the press", "kg", 0, 50_000, 0.5, 250);

    /// <summary>Lever ratio.</summary>
    public static readonly Field Lever = new("lever", "Lever ratio", "", 0.1, 100, 1, 8);

    /// <summary>Follower and arm.</summary>
    public static readonly Field Follower = new("follower", "Weight of follower and arm", "kg", 0, 1000, 0, 10);

    /// <summary>Width of a mould face.</summary>
    public static readonly Field MouldWidth = new("mould-width", "Diameter or side of the mould", "cm", 0, 300, 5, 60, LowestExcluded: true);
}
