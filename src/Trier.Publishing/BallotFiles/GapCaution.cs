using System.Collections.Immutable;
using System.Globalization;

namespace Trier.Publishing.BallotFiles;

/// <summary>Says whose places have gaps, once for a file.</summary>
internal static class GapCaution
{
    private const int Named = 5;

    public static ImmutableArray<string> Of(IReadOnlyList<string> tasters)
    {
        if (tasters.Count == 0) return [];
        var names = string.Join(", ", tasters.Take(Named).Select(Faults.Short));
        if (tasters.Count > Named) names = string.Create(CultureInfo.InvariantCulture, $"{names} and {tasters.Count - Named} more");
        return [$"The places of {names} have gaps; only their order is used."];
    }
}
