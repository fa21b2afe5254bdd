using Trier.Browser.Tests.Kit;

namespace Trier.Browser.Tests.Ballots;

/// <summary>People without a card: they ask at the door, and the maker answers. And the pages nobody wants to see.</summary>
public sealed class DoorTests(Chromium chromium)
{
    [Fact]
    public async Task Whoever_walks_in_gets_a_plate_once_the_maker_says_so()
    {
        await using var house = await chromium.PhoneAsync();
        await using var street = await chromium.PhoneAsync();
        await using var table = await Table.SetAsync("Ada", "Bruno");
        var eye = new Eye();
        var guest = await street.NewPageAsync();
        await guest.GotoAsync($"{table.Site.Address}/c");
        await guest.PressAsync("I have no card");
        await guest.SeesHeadingAsync("Join a tasting");
        await eye.PhoneAsync(guest, "join a tasting");
        await guest.PressAsync("Ask the host");
        await guest.SeesAsync("Write your name, so that the host knows who is asking.");
        await guest.Field("Your name").FillAsync("Gil");
        await guest.PressAsync("Ask the host");
        await guest.SeesHeadingAsync("A moment, Gil.");
        await guest.PressAsync("Do not look by itself");
        await guest.SeesAsync("Press the key to see whether you are in.");
        await eye.PhoneAsync(guest, "waiting at the door");

        var maker = await house.NewPageAsync();
        await maker.GotoAsync(table.Site.SignInLink);
        await maker.PressAsync("Sign in on this browser");
        await maker.SeesHeadingAsync("One trial.");
        await maker.GotoAsync($"{table.Site.Address}/trials/{table.Trial.Value}/board");
        await maker.SeesHeadingAsync("Gil would like to taste.");
        await eye.BothAsync(maker, "somebody at the door");
        await maker.PressAsync("Give Gil a plate");
        await maker.SeesHeadingAsync("0 ballots in, 3 still at the table.");

        await guest.PressAsync("Look again now");
        await guest.SeesHeadingAsync("You are in, Gil.");
        await eye.PhoneAsync(guest, "let in");
        await guest.PressAsync("Open my ballot");
        await guest.SeesHeadingAsync("Welcome, Gil.");

        await guest.GotoAsync($"{table.Site.Address}/t/AAAAAAAAAAAAAAAAAAAAAA");
        await guest.SeesHeadingAsync("This link opens no ballot.");
        await eye.PhoneAsync(guest, "a link that opens nothing");
        await guest.GotoAsync($"{table.Site.Address}/nowhere");
        await guest.SeesHeadingAsync("There is no such page.");
        await eye.BothAsync(guest, "no such page");
        eye.FoundNothing();
    }
}
