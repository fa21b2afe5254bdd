namespace Trier.Publishing.Charts;

/// <summary>Ballots that stand together in a rack.</summary>
/// <param name="Title">What they share, in heavier type: "usually prefer milder".</param>
/// <param name="Rows">The ballots.</param>
/// <param name="Before">Words before the title: "Said before tasting:".</param>
/// <param name="After">Words after it: "in no count".</param>
public sealed record RackGroup(string Title, IReadOnlyList<RackRow> Rows, string? Before = null, string? After = null);

/// <summary>One ballot as a core.</summary>
/// <param name="Name">The taster.</param>
/// <param name="Cells">The wheels, best first; empty where there are only words.</param>
/// <param name="NoteMarks">Signs that a note below the rack explains: "†".</param>
/// <param name="TornWords">Words at a torn end, where fewer wheels were tasted than others had: "no Old Hot"; null for a whole core.</param>
/// <param name="Words">Said instead of places: "called away after three samples; liking kept, no places".</param>
public sealed record RackRow(string Name, IReadOnlyList<RackCell> Cells, string? NoteMarks = null, string? TornWords = null, string? Words = null)
{
    /// <summary>The words at a torn end by sign, for narrow drawings: "no W6".</summary>
    public string? TornShort { get; init; }
}

/// <summary>One wheel on a ballot.</summary>
/// <param name="Long">The wheel's name.</param>
/// <param name="Short">Its two signs, for narrow screens: "W1".</param>
/// <param name="Look">Its mark and tone.</param>
/// <param name="TiedWithPrevious">Same place as the wheel before it.</param>
public sealed record RackCell(string Long, string Short, WheelLook Look, bool TiedWithPrevious = false);

/// <summary>One line of the key that a narrow rack needs.</summary>
/// <param name="Long">The wheel's name.</param>
/// <param name="Short">Its two signs.</param>
/// <param name="Look">Its mark.</param>
/// <param name="Note">A few words: "13 months older".</param>
public sealed record RackKey(string Long, string Short, WheelLook Look, string? Note = null);
