using System.Globalization;
using Trier.Trials.Common;

namespace Trier.Web.Makes;

/// <summary>Times of a vat day as people write them: 9:05, 09.05, 0905; a day before it where it is not today: 3/5/2026 9:05.</summary>
internal static class DayClock
{
    private static readonly string[] Hours = ["H:m", "H.m", "HHmm", "H:mm:ss"];
    private static readonly string[] Days = ["d/M/yyyy H:m", "d.M.yyyy H:m", "yyyy-MM-dd H:m", "yyyy-MM-dd'T'H:mm"];

    /// <summary>Reads a time; blank is null. A time alone is that of the latest such moment not more than half a day ahead.</summary>
    public static DateTimeOffset? Read(string text, string field, DateTimeOffset now, List<Problem> problems)
    {
        var trimmed = text.Trim();
        if (trimmed.Length == 0) return null;
        if (DateTimeOffset.TryParseExact(trimmed, "yyyy-MM-dd'T'HH:mm:ss.FFFK", CultureInfo.InvariantCulture, DateTimeStyles.AssumeUniversal, out var exact)) return exact.ToOffset(now.Offset);
        if (DateTime.TryParseExact(trimmed, Days, CultureInfo.InvariantCulture, DateTimeStyles.None, out var whole)) return new DateTimeOffset(whole, now.Offset);
        if (!TimeOnly.TryParseExact(trimmed, Hours, CultureInfo.InvariantCulture, DateTimeStyles.None, out var time))
        {
            problems.Add(new(field, $"“{trimmed}” is no time of day: write it as 9:05, or as 3/5/2026 9:05."));
            return null;
        }

        var moment = new DateTimeOffset(now.Date + time.ToTimeSpan(), now.Offset);
        return moment > now.AddHours(12) ? moment.AddDays(-1) : moment;
    }

    public static string Write(DateTimeOffset moment) => moment.ToString("HH:mm", CultureInfo.InvariantCulture);

    /// <summary>The time, with the day where it is another one than the day's own.</summary>
    public static string Write(DateTimeOffset moment, DateTimeOffset day) =>
        moment.Date == day.Date ? Write(moment) : moment.ToString("dd/MM HH:mm", CultureInfo.InvariantCulture);

    public static string Iso(DateTimeOffset moment) => moment.UtcDateTime.ToString("yyyy-MM-dd'T'HH:mm:ss.fff'Z'", CultureInfo.InvariantCulture);
}
