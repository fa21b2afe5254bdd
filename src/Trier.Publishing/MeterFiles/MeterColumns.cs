namespace Trier.Publishing.MeterFiles;

/// <summary>Which columns of a meter's file say when and what. Empty names are guessed from the header.</summary>
/// <param name="Time">Name of the column of time, or of time of day where <paramref name="Date"/> is another.</param>
/// <param name="Date">Name of the column of the day, where it stands apart; else empty.</param>
/// <param name="Value">Name of the column of readings.</param>
/// <param name="IsTemperature">Whether the readings are temperatures; otherwise pH.</param>
/// <param name="IsFahrenheit">Whether temperatures are °F; otherwise °C.</param>
/// <param name="Order">Whether days are written before months; read from the file where it is not said.</param>
public sealed record MeterColumns(string Time, string Date, string Value, bool IsTemperature, bool IsFahrenheit = false, DayOrder Order = DayOrder.FromFile);

/// <summary>What comes first in a date without a leading year.</summary>
public enum DayOrder
{
    /// <summary>Found out from the file: a day above 12, or the day of the make, tells.</summary>
    FromFile,

    /// <summary>The day: 3/5/2026 is in May.</summary>
    DayFirst,

    /// <summary>The month: 3/5/2026 is in March.</summary>
    MonthFirst,
}
