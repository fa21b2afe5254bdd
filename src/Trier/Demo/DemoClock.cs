namespace Trier.Demo;

/// <summary>The clock of what is invented: the afternoon of Saturday 30 August 2025, or a moment set; western European summer time.</summary>
internal sealed class DemoClock : TimeProvider
{
    private DateTimeOffset _now = new(2025, 8, 30, 9, 0, 0, TimeSpan.FromHours(1));

    public override TimeZoneInfo LocalTimeZone { get; } = TimeZoneInfo.CreateCustomTimeZone("demo", TimeSpan.FromHours(1), "demo", "demo");

    public override DateTimeOffset GetUtcNow() => _now.ToUniversalTime();

    public DateTimeOffset At(int hour, int minute) => _now = new(2025, 8, 30, hour, minute, 0, TimeSpan.FromHours(1));

    public DateTimeOffset Set(DateTimeOffset moment) => _now = moment;
}
