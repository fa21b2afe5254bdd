namespace Trier.Web.Shared;

/// <summary>Where a station of a trial stands.</summary>
public enum StationState
{
    /// <summary>Nothing has been done there yet.</summary>
    ToCome,

    /// <summary>The trial is there now.</summary>
    Now,

    /// <summary>The station is behind us.</summary>
    Done,
}

/// <summary>One segment of the iron's blade.</summary>
/// <param name="Name">The station's one word, for example "Cut".</param>
/// <param name="Caption">A few words on how it stands, for example "5 served, 1 withdrawn".</param>
/// <param name="State">Done, now or to come.</param>
/// <param name="Href">The station's page; null where there is nothing to open yet.</param>
public sealed record IronStation(string Name, string Caption, StationState State, string? Href = null);
