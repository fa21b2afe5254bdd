using System.Diagnostics;
using Microsoft.Playwright;
using Trier.Browser.Tests.Kit;
using static Microsoft.Playwright.Assertions;

namespace Trier.Browser.Tests.Moments;

/// <summary>A whole tasting on fourteen phones at once; the laptop falls in the middle of it.</summary>
public sealed class WholeTableTests(Chromium chromium)
{
    private const int Samples = 4;
    private static readonly string[] Names = ["Ada", "Bruno", "Cleo", "Dora", "Emil", "Fina", "Gus", "Hilde", "Ivo", "Jana", "Karl", "Lena", "Milo", "Nora"];

    [Fact]
    public async Task Fourteen_phones_taste_at_once_the_laptop_is_killed_in_the_middle_and_nothing_is_lost()
    {
        var contexts = new List<IBrowserContext>();
        await using var table = await Table.SetAsync(new Setting { Killable = true }, Names);
        try
        {
            foreach (var _ in Names) contexts.Add(await chromium.PhoneAsync());
            var watch = Stopwatch.StartNew();
            var phones = await Task.WhenAll(Names.Select(async (name, at) => await new TasterPhone(await contexts[at].NewPageAsync()).OpenAsync(table.LinkOf(name))));
            await EachAsync(phones, 0, 14, async (phone, at) =>
            {
                await phone.Page.PressAsync("To the first sample");
                await phone.SampleAsync(1, Samples);
                await phone.AnswerAsync(Liking(at, 1), $"word {at}");
                await phone.SampleAsync(2, Samples);
            });
            // Four have sent everything, five have begun their second sample, five are about to send it.
            await EachAsync(phones, 0, 4, async (phone, at) => await FinishAsync(phone, table, Names[at], at, from: 2));
            await EachAsync(phones, 4, 14, async (phone, at) =>
            {
                await phone.FillInAsync(Liking(at, 2), $"draft {at}");
                await phone.Page.SeesAsync("Kept on this phone.");
            });

            await table.Process.KillAsync();
            await EachAsync(phones, 9, 14, async (phone, _) =>
            {
                await phone.Page.PressAsync("Keep, and go on");
                await phone.Page.SeesAsync("The Wi-Fi is away.");
            });
            await table.Process.StartAgainAsync();

            // What was acknowledged is there, whoever asks.
            await EachAsync(phones, 0, 4, async (phone, at) =>
            {
                await phone.Page.GotoAsync(table.LinkOf(Names[at]));
                await phone.Page.SeesHeadingAsync($"Thank you, {Names[at]}. Your ballot is safe with the host.");
            });
            // A draft comes back, and goes on.
            await EachAsync(phones, 4, 9, async (phone, at) =>
            {
                await phone.Page.GotoAsync(table.LinkOf(Names[at]));
                await phone.SampleAsync(2, Samples);
                await Expect(phone.Page.GetByLabel(TasterPhone.Liking(Liking(at, 2)), new() { Exact = true })).ToBeCheckedAsync();
                await Expect(phone.Page.Field("In a word")).ToHaveValueAsync($"draft {at}");
                await phone.Page.PressAsync("One sample back");
                await phone.Page.SeesAsync($"You said: {TasterPhone.Liking(Liking(at, 1))}");
                await Expect(phone.Page.Field("In a word")).ToHaveValueAsync($"word {at}");
                await phone.Page.PressAsync("Keep, and go on");
                await FinishAsync(phone, table, Names[at], at, from: 2);
            });
            // What was pressed while the laptop was down goes out by itself.
            await EachAsync(phones, 9, 14, async (phone, at) =>
            {
                await phone.SampleAsync(3, Samples);
                await FinishAsync(phone, table, Names[at], at, from: 3);
            });

            var maker = phones[0].Page;
            await maker.GotoAsync(table.Site.SignInLink);
            await maker.PressAsync("Sign in on this browser");
            await Expect(maker).ToHaveURLAsync($"{table.Site.Address}/");
            await maker.GotoAsync($"{table.Site.Address}/trials/{table.Trial.Value}/board");
            await maker.SeesHeadingAsync("14 ballots in, 0 still at the table.");
            foreach (var name in Names) await Expect(maker.Row(name)).ToContainTextAsync("4 of 4");
            Assert.Empty(table.Site.Failures);
            TestContext.Current.TestOutputHelper?.WriteLine($"{watch.Elapsed.TotalSeconds:0.0} s");
        }
        finally
        {
            foreach (var context in contexts) await context.CloseAsync();
        }
    }

    private static int Liking(int taster, int sample) => 1 + (((taster * 3) + (sample * 2)) % 9);

    private static async Task FinishAsync(TasterPhone phone, Table table, string name, int at, int from)
    {
        for (var sample = from; sample <= Samples; sample++)
        {
            await phone.SampleAsync(sample, Samples);
            await phone.AnswerAsync(Liking(at, sample));
        }

        await phone.Page.SeesHeadingAsync("Now put them in places");
        await phone.PlaceAsync(table.PlateOf(name));
        await phone.LookOverAsync();
        await phone.SendAsync(name);
    }

    private static Task EachAsync(TasterPhone[] phones, int from, int to, Func<TasterPhone, int, Task> act) =>
        Task.WhenAll(Enumerable.Range(from, to - from).Select(at => act(phones[at], at)));
}
