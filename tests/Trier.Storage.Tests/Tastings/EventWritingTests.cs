using System.Reflection;
using System.Text.Json.Serialization;
using CsCheck;
using Trier.Storage.Common;
using Trier.Trials.Tastings.Events;

namespace Trier.Storage.Tastings;

public sealed class EventWritingTests
{
    private static readonly JsonDerivedTypeAttribute[] Declared = [.. typeof(DayEvent).GetCustomAttributes<JsonDerivedTypeAttribute>()];

    public static TheoryData<Type> Events => [.. Declared.Select(declared => declared.DerivedType)];

    [Fact]
    public void Every_event_there_is_has_a_name_of_its_own_to_be_written_under()
    {
        var all = typeof(DayEvent).Assembly.GetTypes().Where(type => type.IsSubclassOf(typeof(DayEvent)) && !type.IsAbstract);
        Assert.Equal(all.Select(type => type.Name).Order(), Declared.Select(declared => declared.DerivedType.Name).Order());
        Assert.Distinct(Declared.Select(declared => declared.TypeDiscriminator));
    }

    [Theory]
    [MemberData(nameof(Events))]
    public void An_event_is_read_as_it_was_written(Type type) => Gen.Int.Sample(
        seed =>
        {
            var happened = (DayEvent)new Made(seed).Of(type);
            var written = RecordJson.Write(happened);
            var read = RecordJson.Read<DayEvent>(written);
            if (Difference.Between(happened, read) is { } difference) Assert.Fail($"{type.Name} differs at {difference}: {written}");
            Assert.Equal(written, RecordJson.Write(read));
        },
        iter: 200);

    [Fact]
    public async Task A_trial_read_from_the_disk_is_the_trial_that_was_acted_on()
    {
        await using var room = await Room.SealedAsync(9);
        var acted = await room.ActAsync<Trials.Tastings.Steps.SealedTasting>(tasting => tasting.Open(room.Trials.Now));
        Assert.Null(Difference.Between(acted.Book.Log, (await room.FoundAsync()).Book.Log));
        Assert.Null(Difference.Between(acted.Book.Plates, (await room.FoundAsync()).Book.Plates));
        Assert.Equal(16, acted.Book.Log.Length);
    }

    [Fact]
    public void A_word_of_the_record_that_nobody_knows_is_told_and_not_passed_over() =>
        Assert.ThrowsAny<System.Text.Json.JsonException>(() => RecordJson.Read<DayEvent>("""{"event":"weighed","at":"2026-05-16T14:00:00+02:00"}"""));
}
