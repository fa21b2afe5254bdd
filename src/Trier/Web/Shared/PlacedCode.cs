namespace Trier.Web.Shared;

/// <summary>A code that has a place.</summary>
/// <param name="Code">The blind code.</param>
/// <param name="TiedWithPrevious">Same place as the code above it.</param>
/// <param name="Said">What the taster said of it, for example "like a lot".</param>
public sealed record PlacedCode(string Code, bool TiedWithPrevious = false, string? Said = null);

/// <summary>A code that has no place yet.</summary>
/// <param name="Code">The blind code.</param>
/// <param name="Said">What the taster said of it, for example "you said: dislike".</param>
public sealed record CodeOnPlate(string Code, string? Said = null);

/// <summary>
/// The words of the places list. <c>{0}</c> stands for a code, <c>{1}</c> for a place.
/// </summary>
public sealed record PlacesWords
{
    /// <summary>Above the list.</summary>
    public string Best { get; init; } = "best";

    /// <summary>The list's own name.</summary>
    public string List { get; init; } = "places so far, best first";

    /// <summary>Above the codes without a place.</summary>
    public string OnPlate { get; init; } = "Still on the plate";

    /// <summary>In the next free place.</summary>
    public string Slot { get; init; } = "tap one below";

    /// <summary>Spoken after the code on the key that gives it its place.</summary>
    public string Place { get; init; } = "next best";

    /// <summary>The key for the same place as the one above.</summary>
    public string Same { get; init; } = "{0}: same place as the one above";

    /// <summary>The key for one place up.</summary>
    public string Up { get; init; } = "{0} one place up";

    /// <summary>The key for one place down.</summary>
    public string Down { get; init; } = "{0} one place down";

    /// <summary>Spoken after a move.</summary>
    public string Moved { get; init; } = "{0} is now {1}";
}
