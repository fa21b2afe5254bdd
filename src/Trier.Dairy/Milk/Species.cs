namespace Trier.Dairy.Milk;

/// <summary>The animal the milk is from.</summary>
public enum Species
{
    /// <summary>Cow.</summary>
    Cow,

    /// <summary>Water buffalo.</summary>
    Buffalo,

    /// <summary>Goat.</summary>
    Goat,

    /// <summary>Sheep.</summary>
    Sheep,
}
