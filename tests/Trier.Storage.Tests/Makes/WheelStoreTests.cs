using Trier.Storage.Common;
using Trier.Trials.Common;
using Trier.Trials.Makes;

namespace Trier.Storage.Makes;

public sealed class WheelStoreTests
{
    [Fact]
    public async Task A_wheel_corrected_keeps_what_was_known_before()
    {
        await using var room = await Room.OpenAsync();
        var first = new Wheel(new WheelId(Guid.NewGuid()), "Thistle", WheelFacts.Of([new("milk", "ewe, 12 l"), new("notes", "“soft” ½")]));
        var other = new Wheel(new WheelId(Guid.NewGuid()), "Calf", WheelFacts.None);
        var corrected = first with { Name = "Thistle one", Facts = WheelFacts.Of([new("milk", "ewe, 14 l")]) };
        await room.Wheels.SaveAsync(first);
        await room.Wheels.SaveAsync(other);
        await room.Wheels.SaveAsync(corrected);
        Assert.Equal([corrected, other], await room.Wheels.AllAsync());
        Assert.Equal([first, corrected], await room.Wheels.HistoryAsync(first.Id));
        Assert.Empty(await room.Wheels.HistoryAsync(new WheelId(Guid.NewGuid())));
    }
}
