using Trier.Trials.Common;

namespace Trier.Trials.Tastings;

/// <summary>What stands in the way of a withdrawal.</summary>
internal static class Withdrawing
{
    public static Problem? Check(DayBook book, WheelId wheel, string reason)
    {
        if (book.Entry(wheel) is not { } entry) return new Problem("wheel", "This wheel is not in the trial.");
        if (book.IsWithdrawn(wheel)) return new Problem("wheel", $"{entry.Name} is withdrawn already.");
        return string.IsNullOrWhiteSpace(reason) ? new Problem("reason", "Say why the wheel is withdrawn: its record stays, and the verdict tells it.") : null;
    }
}
