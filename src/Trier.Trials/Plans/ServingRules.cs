namespace Trier.Trials.Plans;

/// <summary>How the samples reach the tasters: fixed when the key is sealed.</summary>
/// <param name="SamplesEach">How many samples of the first flight a taster gets where there are more than a palate takes; null: everybody gets all.</param>
/// <param name="OwnCodes">Every plate has codes of its own; otherwise a sample has one code for everybody.</param>
/// <param name="AsTheyCome">Plates carry numbers, and whoever comes gets the next one; otherwise every plate is dealt to a name beforehand.</param>
/// <param name="WarmUp">A neutral cheese everybody begins with and nobody judges, or null.</param>
public sealed record ServingRules(int? SamplesEach, bool OwnCodes, bool AsTheyCome, string? WarmUp)
{
    /// <summary>Most samples on one plate, a hidden repeat and a warm-up apart.</summary>
    public const int MostOnAPlate = 8;

    /// <summary>Most codes where every plate has its own; beyond that a sample has one code for everybody.</summary>
    public const int MostOwnCodes = 600;

    /// <summary>Everybody gets all, one code a sample, a name on every plate, no warm-up.</summary>
    public static ServingRules Usual { get; } = new(null, OwnCodes: false, AsTheyCome: false, null);
}
