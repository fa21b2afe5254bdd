using System.Globalization;
using Trier.Trials.Common;

namespace Trier.Web.Plans;

/// <summary>Days as people write them: 30/08/2025, 30.8.2025 or 2025-08-30. The day always comes before the month, or the year first.</summary>
internal static class Dates
{
    private static readonly string[] Forms = ["yyyy-MM-dd", "d/M/yyyy", "d.M.yyyy", "d-M-yyyy"];

    /// <summary>Reads a day; blank is none.</summary>
    public static DateOnly? Parse(string text, string field, List<Problem> problems)
    {
        if (text.Length == 0) return null;
        if (DateOnly.TryParseExact(text, Forms, CultureInfo.InvariantCulture, DateTimeStyles.None, out var day)) return day;
        problems.Add(new(field, $"“{text}” is no day of the calendar: write it as 30/08/2025."));
        return null;
    }

    /// <summary>A day as 30/08/2025.</summary>
    public static string Write(DateOnly day) => day.ToString("dd/MM/yyyy", CultureInfo.InvariantCulture);

    /// <summary>A time of day as 16:31.</summary>
    public static string Clock(DateTimeOffset at) => at.ToString("HH:mm", CultureInfo.InvariantCulture);
}
