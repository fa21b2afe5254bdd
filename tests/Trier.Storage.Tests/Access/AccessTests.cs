using Trier.Storage.Common;
using Trier.Trials.Common;

namespace Trier.Storage.Access;

public sealed class AccessTests
{
    [Fact]
    public async Task A_sign_in_link_is_spent_once_even_by_many_at_once()
    {
        await using var room = await Room.OpenAsync();
        var secret = await room.Links.MakeAsync();
        var spent = await Task.WhenAll(Enumerable.Range(0, 10).Select(_ => Task.Run(() => room.Links.SpendAsync(secret))));
        Assert.Single(spent, went => went);
        Assert.False(await room.Links.SpendAsync("never made"));
    }

    [Fact]
    public async Task A_sign_in_link_is_dead_after_ten_minutes_and_lives_until_then()
    {
        await using var room = await Room.OpenAsync();
        var (first, second) = (await room.Links.MakeAsync(), await room.Links.MakeAsync());
        room.Clock.GoOn(SignInLinks.Lifetime - TimeSpan.FromSeconds(5));
        Assert.True(await room.Links.SpendAsync(first));
        room.Clock.GoOn(TimeSpan.FromSeconds(10));
        Assert.False(await room.Links.SpendAsync(second));
    }

    [Fact]
    public async Task The_database_does_not_hold_a_links_secret()
    {
        await using var room = await Room.OpenAsync();
        var secret = await room.Links.MakeAsync();
        var rows = await Room.RowsAsync(room.Database);
        Assert.Contains(rows, row => row.StartsWith("sign_in_links", StringComparison.Ordinal));
        Assert.DoesNotContain(rows, row => row.Contains(secret, StringComparison.OrdinalIgnoreCase));
    }

    [Fact]
    public async Task People_at_the_door_wait_in_order_and_not_more_than_the_door_holds()
    {
        await using var room = await Room.OpenAsync();
        for (var at = 0; at < WalkIns.MostWaiting; at++) Assert.NotNull(await room.WalkIns.AskAsync(room.Trial, $"Guest {at}"));
        Assert.Null(await room.WalkIns.AskAsync(room.Trial, "One more"));
        var waiting = await room.WalkIns.OfAsync(room.Trial);
        Assert.Equal(Enumerable.Range(0, WalkIns.MostWaiting).Select(at => $"Guest {at}"), waiting.Select(walkIn => walkIn.Name));
        var taster = new TasterId(Guid.NewGuid());
        await room.WalkIns.AnswerAsync(waiting[0].Id, taster);
        await room.WalkIns.AnswerAsync(waiting[1].Id, null);
        Assert.Equal(taster, (await room.WalkIns.FindAsync(waiting[0].Id))?.Taster);
        Assert.True((await room.WalkIns.FindAsync(waiting[1].Id))?.TurnedAway);
        Assert.NotNull(await room.WalkIns.AskAsync(room.Trial, "One more"));
    }
}
