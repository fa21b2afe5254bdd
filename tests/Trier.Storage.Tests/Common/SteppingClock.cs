namespace Trier.Storage.Common;

/// <summary>A clock that goes on by one second each time it is read, in a zone two hours off UTC: no two moments are the same.</summary>
internal sealed class SteppingClock : TimeProvider
{
    private static readonly DateTimeOffset Start = new(2026, 5, 16, 14, 0, 0, TimeSpan.Zero);

    private long _seconds;

    public override TimeZoneInfo LocalTimeZone { get; } = TimeZoneInfo.CreateCustomTimeZone("two hours off", TimeSpan.FromHours(2), "two hours off", "two hours off");

    public override DateTimeOffset GetUtcNow() => Start.AddSeconds(Interlocked.Increment(ref _seconds));

    public void GoOn(TimeSpan by) => Interlocked.Add(ref _seconds, (long)by.TotalSeconds);
}
