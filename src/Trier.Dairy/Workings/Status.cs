namespace Trier.Dairy.Workings;

/// <summary>How well a figure or formula is known: what stands behind it.</summary>
public enum Status
{
    /// <summary>The figure was seen in the cited text itself.</summary>
    Read,

    /// <summary>Seen in a copy or a summary of the cited work.</summary>
    Secondary,

    /// <summary>From memory, unverified.</summary>
    Memory,

    /// <summary>Common practice, no source.</summary>
    Practice,

    /// <summary>Arithmetic or elementary physics; needs no source.</summary>
    Derived,
}

/// <summary>Plain words for <see cref="Status"/>.</summary>
public static class StatusWords
{
    /// <summary>The status as a short English phrase for a page or a printed line.</summary>
    /// <param name="status">The status.</param>
    public static string InWords(this Status status) => status switch
    {
        Status.Read => "read in the source",
        Status.Secondary => "read in a copy or summary of the source",
        Status.Memory => "from memory, unverified",
        Status.Practice => "common practice, no source",
        _ => "derived; needs no source",
    };
}
