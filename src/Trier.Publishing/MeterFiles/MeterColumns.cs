namespace Trier.Publishing.MeterFiles;

/// <summary>Which columns of a meter's file say when and what. Empty names are guessed from the header.</summary>
/// <param name="Time">Name of the column of time, or of time of day where <paramref name="Date"/> is another.</param>
/// <param name="Date">Name of the column of the day, where it stands apart; else empty.</param>
/// <param name="Value">Name of the column of readings.</param>
/// <param name="IsTemperature">Whether the readings are temperatures; otherwise pH.</param>
/// <param name="IsFahrenheit">Whether temperatures are °F; otherwise °C.</param>
public sealed record MeterColumns(string Time, string Date, string Value, bool IsTemperature, bool IsFahrenheit = false);
