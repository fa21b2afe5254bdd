using System.Collections.Immutable;
using System.Text.Json.Serialization;
using Trier.Trials.Common;

namespace Trier.Trials.Tastings;

/// <summary>One line of the key: a code and the wheel behind it.</summary>
/// <param name="Code">The blind code.</param>
/// <param name="Wheel">The wheel.</param>
/// <param name="Counts">False for the hidden repeat's check code, which is left out of all tallies.</param>
public sealed record KeyLine(BlindCode Code, WheelId Wheel, bool Counts)
{
    /// <summary>The number of the one plate that bears this code; null where it is the sample's code for everybody.</summary>
    public int? Plate { get; init; }
}

/// <summary>Which code is which wheel.</summary>
/// <param name="Version">1 at the first sealing; each later change makes the next.</param>
/// <param name="Lines">One line a code that is served, sorted by code; after them the lines of wheels withdrawn since the first sealing.</param>
/// <param name="Retired">Codes that were given out once and are never used again.</param>
public sealed record Key(int Version, ImmutableArray<KeyLine> Lines, ImmutableArray<BlindCode> Retired)
{
    /// <summary>The line of a code, retired codes included where they stand in <see cref="Lines"/>; null where unknown.</summary>
    /// <param name="code">The code.</param>
    public KeyLine? this[BlindCode code] => Lines.FirstOrDefault(line => line.Code == code);

    /// <summary>Whether every plate has codes of its own.</summary>
    [JsonIgnore]
    public bool OwnCodes => Lines.Any(line => line.Plate is not null) && !Lines.Any(line => line.Plate is null && !Retired.Contains(line.Code));

    /// <summary>The codes of a wheel, the one that counts for everybody first.</summary>
    /// <param name="wheel">The wheel.</param>
    public ImmutableArray<KeyLine> Of(WheelId wheel) => [.. Lines.Where(line => line.Wheel == wheel).OrderBy(line => line.Plate ?? 0).ThenByDescending(line => line.Counts)];
}

/// <summary>One taster's set of samples, in serving order.</summary>
/// <param name="Taster">Whose plate.</param>
/// <param name="Codes">Codes in serving order; none twice.</param>
public sealed record Plate(TasterId Taster, ImmutableArray<BlindCode> Codes)
{
    /// <summary>Its number, from 1; null in a tasting sealed before plates had numbers.</summary>
    public int? Number { get; init; }
}
