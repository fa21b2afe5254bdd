namespace Trier.Trials.Tastings;

/// <summary>What a taster agreed to at sign-in about what may be published. Ballots are published as numbers; a name and a taster's own words only by agreement.</summary>
/// <param name="Named">Their name may stand beside their ballot.</param>
/// <param name="Quoted">Their remarks and words may be quoted.</param>
public sealed record Agreed(bool Named, bool Quoted)
{
    /// <summary>Agreed to nothing, or never asked.</summary>
    public static Agreed ToNothing { get; } = new(false, false);
}
