using System.Collections.Immutable;
using Trier.Trials.Common;
using Trier.Trials.Tastings.Events;
using Trier.Trials.Tastings.Plates;

namespace Trier.Trials.Tastings;

/// <summary>What stands in the way of a withdrawal, and what follows from one.</summary>
internal static class Withdrawing
{
    public static Problem? Check(DayBook book, WheelId wheel, string reason)
    {
        if (book.Entry(wheel) is not { } entry) return new Problem("wheel", "This wheel is not in the trial.");
        if (book.IsWithdrawn(wheel)) return new Problem("wheel", $"{entry.Name} is withdrawn already.");
        return string.IsNullOrWhiteSpace(reason) ? new Problem("reason", "Say why the wheel is withdrawn: its record stays, and the verdict tells it.") : null;
    }

    /// <summary>Withdraws a wheel, gives its place to a hidden repeat where one is asked for, and draws the key anew.</summary>
    public static Outcome<ImmutableArray<DayEvent>> AndDraw(
        DayBook book,
        DateTimeOffset at,
        WheelId wheel,
        string reason,
        string? decidedBy,
        WheelId? serveTwice,
        Func<IEnumerable<DayEvent>, DayBook> later,
        Func<DayBook, Outcome<KeySealed>> draw)
    {
        if (Check(book, wheel, reason) is { } problem) return Outcome.Fault<ImmutableArray<DayEvent>>([problem]);
        var repeat = book.Repeat == wheel ? null : book.Repeat;
        if (serveTwice is { } twice)
        {
            if (repeat is { } already && already != twice) return Outcome.Fault<ImmutableArray<DayEvent>>("repeat", $"{book.Entry(already)!.Name} is served twice already, and one hidden repeat is enough.");
            if (twice == wheel || book.SecondFlight.Contains(twice) || !book.Standing.Any(entry => entry.Wheel == twice)) return Outcome.Fault<ImmutableArray<DayEvent>>("repeat", "Only a wheel that stays in the trial can be served twice.");
            repeat = twice;
        }

        var events = ImmutableArray.CreateBuilder<DayEvent>();
        events.Add(new WheelWithdrawn(at, wheel, reason.Trim(), decidedBy));
        if (repeat != book.Repeat) events.Add(new RepeatChosen(at, repeat));
        var after = later(events);
        var empty = LeavingOff.EmptyPlates(after).ToList();
        return empty.Count > 0 ? Outcome.Fault<ImmutableArray<DayEvent>>(empty) : draw(after).Then(key => Outcome.Of<ImmutableArray<DayEvent>>([.. events, key]));
    }
}
