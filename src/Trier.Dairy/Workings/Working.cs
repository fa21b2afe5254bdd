namespace Trier.Dairy.Workings;

/// <summary>How a number came about, as data: every number on a sheet unfolds to one of these.</summary>
/// <param name="Title">What was computed.</param>
/// <param name="Formula">The formula in plain characters, with the units its symbols carry.</param>
/// <param name="Inputs">The numbers that went in.</param>
/// <param name="Results">The numbers that came out.</param>
/// <param name="Source">Where the formula comes from, and how it is known.</param>
public sealed record Working(string Title, string Formula, Listed<Given> Inputs, Listed<Given> Results, Source Source)
{
    /// <summary>Where the formula holds, in one sentence; null where it is an identity.</summary>
    public string? Domain { get; init; }

    /// <summary>How far off the result may be, in one sentence; null where the arithmetic is exact.</summary>
    public string? LikelyError { get; init; }

    /// <summary>Other sources of constants used, each with its own status.</summary>
    public Listed<Source> AlsoFrom { get; init; } = [];

    /// <summary>Workings of the intermediate numbers, if any.</summary>
    public Listed<Working> Parts { get; init; } = [];
}
