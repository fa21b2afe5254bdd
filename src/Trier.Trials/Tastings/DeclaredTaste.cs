namespace Trier.Trials.Tastings;

/// <summary>What a taster said, before tasting, that they usually like. Camps are tested against this and nothing else.</summary>
public enum DeclaredTaste
{
    /// <summary>No idea.</summary>
    NoIdea,

    /// <summary>Usually milder-tasting cheese.</summary>
    Milder,

    /// <summary>Usually stronger-tasting cheese.</summary>
    Stronger,
}
