using System.Collections.Immutable;
using System.Globalization;
using Trier.Trials.Common;
using Trier.Trials.Makes.Days;
using Trier.Trials.Makes.Recipes;

namespace Trier.Publishing.MeterFiles;

/// <summary>
/// Reads what a pH meter or thermometer wrote: one row a reading, any column names, comma, semicolon or tab between cells, decimal comma or point. Times are a
/// day and a time of day (year first, day before month, or month before day where only that makes sense), a time of day alone, or minutes since the make began.
/// </summary>
public static class MeterFile
{
    /// <summary>Largest file read, in bytes (40 MB: more than a year, minute by minute).</summary>
    public const int LargestBytes = 40_000_000;

    private const int MostFaults = 20;
    private static readonly string[] TimeWords = ["time", "stamp", "zeit", "hora", "minute", "elapsed"];
    private static readonly string[] DateWords = ["date", "day", "datum", "data"];

    /// <summary>The names in the header, or why there are none.</summary>
    /// <param name="text">The file's text.</param>
    public static Outcome<ImmutableArray<string>> Header(string text)
    {
        var first = text.AsSpan().TrimStart('\uFEFF');
        var end = first.IndexOfAny('\r', '\n');
        if (end < 0) return Outcome.Fault<ImmutableArray<string>>("file", "The file has one line or none; it needs a header line and readings.");
        var line = first[..end].ToString();
        var cells = line.Split(DelimiterOf(line)).Select(cell => cell.Trim().Trim('"')).ToImmutableArray();
        return cells.Length < 2 ? Outcome.Fault<ImmutableArray<string>>("file", "The first line has one cell; a meter's file has a column of time and one of readings.") : Outcome.Of(cells);
    }

    /// <summary>Fills in the columns that were not named, from the header.</summary>
    /// <param name="header">The names.</param>
    /// <param name="wanted">What is known; columns that are not in the header are guessed anew.</param>
    public static MeterColumns Guess(ImmutableArray<string> header, MeterColumns wanted)
    {
        string Known(string name) => header.FirstOrDefault(column => string.Equals(column, name, StringComparison.OrdinalIgnoreCase)) ?? "";
        string Like(string[] words, string besides = "") => header.FirstOrDefault(column => column != besides && words.Any(word => column.Contains(word, StringComparison.OrdinalIgnoreCase))) ?? "";
        var time = Known(wanted.Time) is { Length: > 0 } known ? known : Like(TimeWords);
        var date = wanted.Date.Length > 0 ? Known(wanted.Date) : Like(DateWords, time);
        if (time.Length == 0) (time, date) = (date, "");
        var value = Known(wanted.Value) is { Length: > 0 } named ? named : Like(wanted.IsTemperature ? ["temp", "°c", "celsius"] : ["ph"], time);
        return wanted with { Time = time, Date = date, Value = value };
    }

    /// <summary>Reads the readings.</summary>
    /// <param name="text">The file's text.</param>
    /// <param name="name">The file's name.</param>
    /// <param name="columns">Which columns; must be in the header.</param>
    /// <param name="begins">When the make began: minutes count from here, times of day fall on this day or the next.</param>
    /// <returns>The curve, thinned, or the faults by line.</returns>
    public static Outcome<MeterCurve> Read(string text, string name, MeterColumns columns, DateTimeOffset begins)
    {
        var header = Header(text);
        if (!header.TryGet(out var names)) return Outcome.Fault<MeterCurve>(header.Problems);
        var (time, date, value) = (names.IndexOf(columns.Time), columns.Date.Length == 0 ? -1 : names.IndexOf(columns.Date), names.IndexOf(columns.Value));
        var missing = new List<Problem>();
        if (time < 0) missing.Add(new("time", $"Which column holds the time? There are {string.Join(", ", names)}."));
        if (value < 0) missing.Add(new("value", $"Which column holds the readings? There are {string.Join(", ", names)}."));
        if (columns.Date.Length > 0 && date < 0) missing.Add(new("date", $"There is no column “{columns.Date}”. There are {string.Join(", ", names)}."));
        if (missing.Count > 0) return Outcome.Fault<MeterCurve>(missing);

        var target = columns.IsTemperature ? Target.Celsius : Target.Ph;
        var delimiter = DelimiterOf(FirstLine(text));
        var points = new List<MeterPoint>();
        var faults = new List<Problem>();
        var order = columns.Order != DayOrder.FromFile ? columns.Order : OrderOf(text, delimiter, time, date, begins);
        if (order == DayOrder.FromFile) return Outcome.Fault<MeterCurve>("order", "Its days can be read in two ways, such as 3/5: 3 May or 5 March. Say which comes first, the day or the month.");
        var clock = new MeterClock(begins, order == DayOrder.MonthFirst);
        var number = 1;
        foreach (var line in Lines(text))
        {
            number++;
            if (line.IsWhiteSpace()) continue;
            var timeCell = Cell(line, delimiter, time);
            var dateCell = date < 0 ? default : Cell(line, delimiter, date);
            var valueCell = Cell(line, delimiter, value);
            // A meter that was out of the milk writes an empty reading or dashes: a gap, not a fault.
            if (valueCell.IsWhiteSpace() || valueCell.Trim('-').IsEmpty) continue;
            var isNumber = TryNumber(valueCell, out var read);
            if (columns is { IsTemperature: true, IsFahrenheit: true }) read = (read - 32) / 1.8;
            if (!isNumber) Fault(number, columns.Value, $"“{Short(valueCell)}” is no number");
            else if (target.Field.ProblemWith(read) is not null) Fault(number, columns.Value, $"{target.Field.Name} {Short(valueCell)} cannot be; {(!columns.IsTemperature ? "pH runs from 0 to 14" : columns.IsFahrenheit ? "it lies between 30 and 212 °F" : "it lies between -1 and 100 °C")}");
            else if (clock.Read(timeCell, dateCell) is not { } when) Fault(number, columns.Time, $"“{Short(timeCell)}” is no time; write 2026-05-03 9:05, 3/5/2026 9:05, 5/3/2026 9:05 AM, 9:05 or minutes since the start");
            else points.Add(new(when, read));
            if (faults.Count >= MostFaults) break;
        }

        if (faults.Count > 0) return Outcome.Fault<MeterCurve>(faults);
        if (points.Count < 2) return Outcome.Fault<MeterCurve>("file", "The file holds fewer than two readings; nothing can be drawn.");
        points.Sort((one, other) => one.When.CompareTo(other.When));
        return Outcome.Of(new MeterCurve(name, target.Key, CurveThinning.Of(points), points.Count));

        void Fault(int at, string column, string sentence) => faults.Add(new("file", string.Create(CultureInfo.InvariantCulture, $"Line {at}, {column}: {sentence}. Nothing was taken in.")));
    }

    // The order that reads every date; where both do, the one that begins near the make; where that is both again, only the maker knows.
    private static DayOrder OrderOf(string text, char delimiter, int time, int date, DateTimeOffset begins)
    {
        var (dayFirst, monthFirst) = (new MeterClock(begins), new MeterClock(begins, monthFirst: true));
        var (byDay, byMonth, differ) = (true, true, false);
        DateTimeOffset? firstByDay = null, firstByMonth = null;
        foreach (var line in Lines(text))
        {
            if (line.IsWhiteSpace()) continue;
            var timeCell = Cell(line, delimiter, time);
            var dateCell = date < 0 ? default : Cell(line, delimiter, date);
            var (one, other) = (dayFirst.Read(timeCell, dateCell), monthFirst.Read(timeCell, dateCell));
            if (one is null && other is null) continue;
            byDay &= one is not null;
            byMonth &= other is not null;
            differ |= one != other;
            firstByDay ??= one;
            firstByMonth ??= other;
        }

        if (!differ || byDay != byMonth) return byMonth && !byDay ? DayOrder.MonthFirst : DayOrder.DayFirst;
        var (nearByDay, nearByMonth) = (Near(firstByDay), Near(firstByMonth));
        return nearByDay == nearByMonth ? DayOrder.FromFile : nearByDay ? DayOrder.DayFirst : DayOrder.MonthFirst;

        bool Near(DateTimeOffset? first) => first is { } moment && moment >= begins.AddDays(-1) && moment <= begins.AddDays(14);
    }

    private static string FirstLine(string text)
    {
        var end = text.AsSpan().IndexOfAny('\r', '\n');
        return end < 0 ? text : text[..end];
    }

    private static char DelimiterOf(string line) => line.Contains('\t', StringComparison.Ordinal) ? '\t' : line.Contains(';', StringComparison.Ordinal) ? ';' : ',';

    private static LineEnumerator Lines(string text)
    {
        var end = text.AsSpan().IndexOf('\n');
        return new(end < 0 ? [] : text.AsSpan(end + 1));
    }

    private static ReadOnlySpan<char> Cell(ReadOnlySpan<char> line, char delimiter, int index)
    {
        for (var i = 0; i < index; i++)
        {
            var next = line.IndexOf(delimiter);
            if (next < 0) return [];
            line = line[(next + 1)..];
        }

        var end = line.IndexOf(delimiter);
        return (end < 0 ? line : line[..end]).Trim().Trim('"');
    }

    internal static bool TryNumber(ReadOnlySpan<char> cell, out double number)
    {
        if (double.TryParse(cell, NumberStyles.AllowLeadingSign | NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out number)) return true;
        return cell.Contains(',') && cell.Length < 32 && double.TryParse(cell.ToString().Replace(',', '.'), NumberStyles.AllowLeadingSign | NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out number);
    }

    private static string Short(ReadOnlySpan<char> cell) => cell.Length > 30 ? string.Concat(cell[..27], "...") : cell.ToString();

    private ref struct LineEnumerator(ReadOnlySpan<char> rest)
    {
        private ReadOnlySpan<char> _rest = rest;

        public ReadOnlySpan<char> Current { get; private set; } = [];

        public readonly LineEnumerator GetEnumerator() => this;

        public bool MoveNext()
        {
            if (_rest.IsEmpty) return false;
            var end = _rest.IndexOf('\n');
            Current = (end < 0 ? _rest : _rest[..end]).TrimEnd('\r');
            _rest = end < 0 ? [] : _rest[(end + 1)..];
            return true;
        }
    }
}
