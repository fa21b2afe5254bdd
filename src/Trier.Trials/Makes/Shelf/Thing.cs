using System.Collections.Immutable;
using Trier.Trials.Common;

namespace Trier.Trials.Makes.Shelf;

/// <summary>The things behind a record that have a history of their own.</summary>
public enum ThingKind
{
    /// <summary>A brine.</summary>
    Brine,

    /// <summary>A lot of culture.</summary>
    Culture,

    /// <summary>A lot of rennet.</summary>
    Rennet,

    /// <summary>A pH meter.</summary>
    PhMeter,

    /// <summary>A thermometer.</summary>
    Thermometer,

    /// <summary>A scale.</summary>
    Scale,
}

/// <summary>What happens to a thing.</summary>
public enum ThingDeed
{
    /// <summary>It was made, opened or bought.</summary>
    Begun,

    /// <summary>It was used.</summary>
    Used,

    /// <summary>Salt and water were added.</summary>
    ToppedUp,

    /// <summary>Its strength was brought back with salt.</summary>
    Mended,

    /// <summary>It was strained or its vessel washed.</summary>
    Cleaned,

    /// <summary>It was boiled.</summary>
    Boiled,

    /// <summary>It was checked against something known.</summary>
    Checked,

    /// <summary>It is gone.</summary>
    Emptied,
}

/// <summary>One line of a thing's history. Appended, never changed.</summary>
/// <param name="At">When.</param>
/// <param name="Deed">What.</param>
/// <param name="Note">A few words; may be empty.</param>
/// <param name="Wheels">Numbers of the wheels that went through; only for brines.</param>
/// <param name="RawMilk">Whether any of them is of raw milk.</param>
public sealed record ThingEvent(DateTimeOffset At, ThingDeed Deed, string Note, ImmutableArray<int> Wheels, bool RawMilk = false);

/// <summary>A brine, a lot or an instrument with its history.</summary>
/// <param name="Id">Names it.</param>
/// <param name="Kind">What sort.</param>
/// <param name="Name">What people call it.</param>
/// <param name="ExpiresOn">The date on the packet, or null.</param>
/// <param name="Log">Its history, oldest first; begins with <see cref="ThingDeed.Begun"/>.</param>
public sealed record Thing(ThingId Id, ThingKind Kind, string Name, DateOnly? ExpiresOn, ImmutableArray<ThingEvent> Log)
{
    private const int LongestText = 200;

    /// <summary>Whether it is gone.</summary>
    public bool Gone => Log.Any(line => line.Deed == ThingDeed.Emptied);

    /// <summary>What can be written of it, by its kind.</summary>
    public ImmutableArray<ThingDeed> Deeds => Kind switch
    {
        ThingKind.Brine => [ThingDeed.Used, ThingDeed.ToppedUp, ThingDeed.Mended, ThingDeed.Cleaned, ThingDeed.Boiled, ThingDeed.Emptied],
        ThingKind.Culture or ThingKind.Rennet => [ThingDeed.Used, ThingDeed.Emptied],
        _ => [ThingDeed.Checked, ThingDeed.Emptied],
    };

    /// <summary>How long a check of such an instrument holds (common practice, no source); null for what is not checked.</summary>
    public static TimeSpan? CheckHolds(ThingKind kind) => kind switch
    {
        ThingKind.PhMeter => TimeSpan.FromDays(1),
        ThingKind.Thermometer or ThingKind.Scale => TimeSpan.FromDays(90),
        _ => null,
    };

    /// <summary>Whether the date on its packet lay behind at a moment.</summary>
    /// <param name="at">The moment.</param>
    public bool PastDate(DateTimeOffset at) => ExpiresOn is { } last && DateOnly.FromDateTime(at.DateTime) > last;

    /// <summary>Whether a check held at a moment.</summary>
    /// <param name="at">The moment.</param>
    public bool WasChecked(DateTimeOffset at) =>
        CheckHolds(Kind) is { } holds && Log.Any(line => line.Deed == ThingDeed.Checked && line.At <= at.AddHours(1) && at - line.At <= holds);

    /// <summary>Puts a thing on the shelf.</summary>
    /// <param name="id">Its id.</param>
    /// <param name="at">Now.</param>
    /// <param name="kind">What sort.</param>
    /// <param name="name">What people call it.</param>
    /// <param name="expires">The date on the packet, or null.</param>
    /// <param name="note">How it was made or where it is from.</param>
    public static Outcome<Thing> Begin(ThingId id, DateTimeOffset at, ThingKind kind, string name, DateOnly? expires, string note)
    {
        var problems = new List<Problem>();
        if (name.Trim().Length is 0 or > 60) problems.Add(new("name", "Give it a name of 1 to 60 letters, such as “Brine of May” or “Rennet, lot 4711”."));
        if (note.Length > LongestText) problems.Add(new("note", "The note is longer than 200 letters: shorten it."));
        return problems.Count > 0 ? Outcome.Fault<Thing>(problems) : Outcome.Of(new Thing(id, kind, name.Trim(), expires, [new(at, ThingDeed.Begun, note.Trim(), [])]));
    }

    /// <summary>Writes a line of its history.</summary>
    /// <param name="line">The line.</param>
    public Outcome<ThingEvent> Do(ThingEvent line)
    {
        if (Gone) return Outcome.Fault<ThingEvent>("deed", $"“{Name}” is gone: put a new one on the shelf.");
        if (!Deeds.Contains(line.Deed)) return Outcome.Fault<ThingEvent>("deed", "This is nothing that is done to it.");
        if (line.Note.Length > LongestText) return Outcome.Fault<ThingEvent>("note", "The note is longer than 200 letters: shorten it.");
        if (line.At < Log[^1].At) return Outcome.Fault<ThingEvent>("when", "This lies before the last line of its history; write it in order.");
        return line.Wheels.Any(number => number < 1) ? Outcome.Fault<ThingEvent>("wheels", "Wheels have numbers from 1 on.") : Outcome.Of(line);
    }

    /// <summary>What should be minded about it now, in plain sentences.</summary>
    /// <param name="now">Now.</param>
    public ImmutableArray<string> Minds(DateTimeOffset now)
    {
        var said = ImmutableArray.CreateBuilder<string>();
        if (Gone) return [];
        if (PastDate(now)) said.Add(Kind == ThingKind.Rennet ? "Its date is past: it sets slower; watch the flocculation." : "Its date is past: it may be slow or dead; watch the pH.");
        if (CheckHolds(Kind) is { } holds && !WasChecked(now)) said.Add(Kind == ThingKind.PhMeter ? "Not checked within a day: readings made with it will say so." : $"Not checked within {holds.Days.ToString(System.Globalization.CultureInfo.InvariantCulture)} days.");
        if (Kind == ThingKind.Brine)
        {
            var since = Log.Skip(Log.Select((line, index) => line.Deed == ThingDeed.Boiled ? index + 1 : 0).Max());
            if (since.Any(line => line is { Deed: ThingDeed.Used, RawMilk: true })) said.Add("Raw-milk wheels went through it since it was last boiled: boil it before wheels of other milk go in. Brine does not clean itself.");
            var begun = Log.Last(line => line.Deed is ThingDeed.Begun or ThingDeed.Boiled).At;
            if (now - begun > TimeSpan.FromDays(180)) said.Add("It was neither made nor boiled within half a year: germs live in brine for months.");
        }

        return said.ToImmutable();
    }
}
