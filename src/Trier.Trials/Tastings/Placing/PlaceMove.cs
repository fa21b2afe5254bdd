namespace Trier.Trials.Tastings.Placing;

/// <summary>What a key beside a code does to the places.</summary>
public enum PlaceDeed
{
    /// <summary>Gives a code from the plate the next place.</summary>
    Place,

    /// <summary>Gives a code the place of the one above it, or parts the two again.</summary>
    Same,

    /// <summary>One row up.</summary>
    Up,

    /// <summary>One row down.</summary>
    Down,
}

/// <summary>One press of a key in the places.</summary>
/// <param name="Deed">What the key does.</param>
/// <param name="Code">The code it stands beside.</param>
public readonly record struct PlaceMove(PlaceDeed Deed, BlindCode Code)
{
    /// <summary>Reads a move as a form posts it: <c>place:417</c>, <c>same:417</c>, <c>up:417</c>, <c>down:417</c>.</summary>
    /// <param name="text">The text.</param>
    /// <returns>The move, or null where the text is none.</returns>
    public static PlaceMove? Read(string? text)
    {
        var parts = (text ?? "").Split(':');
        if (parts.Length != 2 || !BlindCode.TryParse(parts[1], out var code)) return null;
        return parts[0] switch
        {
            "place" => new PlaceMove(PlaceDeed.Place, code),
            "same" => new PlaceMove(PlaceDeed.Same, code),
            "up" => new PlaceMove(PlaceDeed.Up, code),
            "down" => new PlaceMove(PlaceDeed.Down, code),
            _ => null,
        };
    }
}
