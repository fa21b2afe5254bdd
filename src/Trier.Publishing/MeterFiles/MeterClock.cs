namespace Trier.Publishing.MeterFiles;

/// <summary>Reads a meter's times. A time of day alone belongs to the day of the make, and to the next one once it has run past midnight.</summary>
/// <param name="begins">When the make began.</param>
/// <param name="monthFirst">Whether the month stands before the day.</param>
internal sealed class MeterClock(DateTimeOffset begins, bool monthFirst = false)
{
    private DateTimeOffset? _last;

    /// <summary>The moment, or null where the cells hold none.</summary>
    public DateTimeOffset? Read(ReadOnlySpan<char> time, ReadOnlySpan<char> date)
    {
        Span<int> groups = stackalloc int[7];
        var count = Groups(time, groups, out var yearFirst);
        var half = Half(time);
        if (date.IsEmpty && !time.ContainsAny(':', '/', 'T') && count is 1 or 2 && !time.ContainsAny('-', ' ')) return Minutes(time);
        if (!date.IsEmpty)
        {
            Span<int> day = stackalloc int[7];
            return Groups(date, day, out var dayYearFirst) >= 3 && count is 2 or 3 or 4 ? Moment(day, dayYearFirst, OfHalf(groups[0], half), groups[1], count > 2 ? groups[2] : 0) : null;
        }

        if (count >= 5) return Moment(groups, yearFirst, OfHalf(groups[3], half), groups[4], count > 5 ? groups[5] : 0);
        return count is 2 or 3 && time.Contains(':') ? OfDay(OfHalf(groups[0], half), groups[1], count > 2 ? groups[2] : 0) : null;
    }

    private DateTimeOffset? Minutes(ReadOnlySpan<char> time) =>
        MeterFile.TryNumber(time, out var minutes) && minutes is >= 0 and < 5_300_000 ? begins.AddMinutes(minutes) : null;

    private DateTimeOffset? OfDay(int hour, int minute, int second)
    {
        if (hour > 23 || minute > 59 || second > 59) return null;
        var moment = new DateTimeOffset(begins.Date, begins.Offset).Add(new TimeSpan(hour, minute, second));
        while (_last is { } before && moment < before.AddHours(-12)) moment = moment.AddDays(1);
        _last = moment;
        return moment;
    }

    private DateTimeOffset? Moment(ReadOnlySpan<int> day, bool yearFirst, int hour, int minute, int second)
    {
        var (year, month, date) = yearFirst ? (day[0], day[1], day[2]) : monthFirst ? (day[2], day[0], day[1]) : (day[2], day[1], day[0]);
        if (year is < 1 or > 9999 || month is < 1 or > 12 || date < 1 || date > DateTime.DaysInMonth(year, month) || hour > 23 || minute > 59 || second > 59) return null;
        return new DateTimeOffset(year, month, date, hour, minute, second, begins.Offset);
    }

    // "am" or "pm" after the digits, with or without points; none is a clock of 24 hours.
    private static char? Half(ReadOnlySpan<char> time)
    {
        var end = time.TrimEnd([' ', '.', 'm', 'M']);
        return end.Length < time.Length && end.Length > 1 && (end[^1] | ' ') is 'a' or 'p' && time.TrimEnd([' ', '.'])[^1] is 'm' or 'M' ? (char)(end[^1] | ' ') : null;
    }

    private static int OfHalf(int hour, char? half) => half is null ? hour : hour is < 1 or > 12 ? 99 : (hour % 12) + (half == 'p' ? 12 : 0);

    private static int Groups(ReadOnlySpan<char> text, Span<int> groups, out bool yearFirst)
    {
        var (count, at) = (0, 0);
        yearFirst = false;
        while (at < text.Length && count < groups.Length)
        {
            if (!char.IsAsciiDigit(text[at]))
            {
                at++;
                continue;
            }

            var (value, start) = (0, at);
            while (at < text.Length && char.IsAsciiDigit(text[at]) && at - start < 9) value = (10 * value) + (text[at++] - '0');
            if (count == 0) yearFirst = at - start == 4;
            groups[count++] = value;
        }

        return count;
    }
}
