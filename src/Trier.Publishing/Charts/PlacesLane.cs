namespace Trier.Publishing.Charts;

/// <summary>What a taster declared before tasting; parts the dots of a lane by position and shape.</summary>
public enum Camp
{
    /// <summary>Nothing asked or nothing said: a bar across the line.</summary>
    None,

    /// <summary>Usually prefers milder: an open sign above the line.</summary>
    Milder,

    /// <summary>Usually prefers stronger: a solid sign below the line.</summary>
    Stronger,
}

/// <summary>One wheel's lane.</summary>
/// <param name="Name">The wheel's name.</param>
/// <param name="Look">Its mark.</param>
/// <param name="Dots">One dot a taster.</param>
/// <param name="Averages">The words at the right, at most two: "milder 1,75", "stronger 2,40".</param>
public sealed record PlacesLane(string Name, WheelLook Look, IReadOnlyList<PlacesDot> Dots, IReadOnlyList<string> Averages);

/// <summary>One taster's place for a wheel.</summary>
/// <param name="Place">From 1; tied wheels share the middle of their places, for example 2.5.</param>
/// <param name="Camp">What the taster declared.</param>
public readonly record struct PlacesDot(double Place, Camp Camp);

/// <summary>Where each taster placed each wheel.</summary>
/// <param name="Lanes">The wheels, best first.</param>
/// <param name="Places">How many places there are.</param>
/// <param name="Milder">Key to the open signs: "above the line: prefer milder, 6".</param>
/// <param name="Stronger">Key to the solid signs.</param>
/// <param name="None">Key to the bars.</param>
/// <param name="Title">What it shows.</param>
/// <param name="Description">What it says.</param>
public sealed record PlacesData(IReadOnlyList<PlacesLane> Lanes, int Places, string Milder, string Stronger, string None, string Title, string Description)
{
    /// <summary>Whether anybody declared a taste, so that the dots need a key.</summary>
    public bool Camps => Lanes.Any(lane => lane.Dots.Any(dot => dot.Camp != Camp.None));
}
