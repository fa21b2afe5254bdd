using Trier.Storage.Common;
using Trier.TestKit;
using Trier.Trials.Common;
using Trier.Trials.Makes;
using Trier.Trials.Makes.Days;
using Trier.Trials.Makes.Shelf;
using Trier.Trials.Tastings;
using Trier.Trials.Tastings.Events;

namespace Trier.Storage.Tastings;

/// <summary>
/// Rows as the first version wrote them (Checks/stored-rows.txt, made-up values, one of every event and a wheel and a ballot): what was once
/// written must stay readable. A line is never edited; a new event or field gets a new line.
/// </summary>
public sealed class StoredRowsTests
{
    private static readonly string[] Lines = File.ReadAllLines(Path.Combine(Checkout.Root, "tests", "Trier.Storage.Tests", "Checks", "stored-rows.txt"));

    public static TheoryData<string> Rows => [.. Lines];

    [Theory]
    [MemberData(nameof(Rows))]
    public void A_row_written_long_ago_is_read_and_says_the_same(string row)
    {
        var (kind, json) = (row[..row.IndexOf(' ', StringComparison.Ordinal)], row[(row.IndexOf(' ', StringComparison.Ordinal) + 1)..]);
        object read = kind switch
        {
            "event" => RecordJson.Read<DayEvent>(json),
            "wheel" => RecordJson.Read<Wheel>(json),
            "ballot" => RecordJson.Read<Ballot>(json),
            "make" => RecordJson.Read<MakeEvent>(json),
            "thing" => RecordJson.Read<ThingEvent>(json),
            _ => throw new InvalidOperationException($"No row is called {kind}."),
        };
        Assert.Equal(json, kind switch
        {
            "event" => RecordJson.Write((DayEvent)read),
            "wheel" => RecordJson.Write((Wheel)read),
            "make" => RecordJson.Write((MakeEvent)read),
            "thing" => RecordJson.Write((ThingEvent)read),
            _ => RecordJson.Write((Ballot)read),
        });
    }

    [Fact]
    public void There_is_a_row_of_every_event()
    {
        var all = typeof(DayEvent).Assembly.GetTypes().Where(type => type.IsSubclassOf(typeof(DayEvent)) && !type.IsAbstract).Select(type => type.Name).ToHashSet(StringComparer.Ordinal);
        var read = Lines.Where(line => line.StartsWith("event ", StringComparison.Ordinal)).Select(line => RecordJson.Read<DayEvent>(line[6..]).GetType().Name);
        Assert.Empty(all.Except(read, StringComparer.Ordinal));
    }

    [Fact]
    public void There_is_a_row_of_every_event_of_a_make()
    {
        var all = typeof(MakeEvent).Assembly.GetTypes().Where(type => type.IsSubclassOf(typeof(MakeEvent)) && !type.IsAbstract).Select(type => type.Name).ToHashSet(StringComparer.Ordinal);
        var read = Lines.Where(line => line.StartsWith("make ", StringComparison.Ordinal)).Select(line => RecordJson.Read<MakeEvent>(line[5..]).GetType().Name);
        Assert.Empty(all.Except(read, StringComparer.Ordinal));
    }
}
