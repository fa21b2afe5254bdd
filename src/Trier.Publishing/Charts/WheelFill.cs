namespace Trier.Publishing.Charts;

/// <summary>Which wheel of its recipe a mark stands for.</summary>
public enum WheelFill
{
    /// <summary>The recipe's first wheel.</summary>
    Solid,

    /// <summary>The recipe's second wheel.</summary>
    Open,

    /// <summary>The recipe's third wheel: its left half filled.</summary>
    Half,

    /// <summary>The same wheel under a second code: the trier's hole in its middle.</summary>
    Dot,
}
