using System.Diagnostics;
using System.Net;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;
using Trier.Storage;
using Trier.Trials.Common;
using Trier.Trials.Tastings.Steps;
using Trier.Web.Access;

namespace Trier.Tests.Web.Ballots;

public class DoorTests
{
    [Fact]
    public async Task An_unknown_link_answers_404_with_a_page_that_helps()
    {
        await using var evening = await Evening.BeginAsync();
        using var phone = evening.NewPhone();
        foreach (var path in new[] { "/t/AAAAAAAAAAAAAAAAAAAAAA", "/t/x", "/t/AAAAAAAAAAAAAAAAAAAAAA/sample/1", "/t/AAAAAAAAAAAAAAAAAAAAAA/sent" })
        {
            await phone.GetAsync(path);
            Assert.Equal(HttpStatusCode.NotFound, phone.Answer.StatusCode);
            Assert.Contains("This link opens no ballot.", phone.Text, StringComparison.Ordinal);
        }
    }

    [Fact]
    public async Task Every_taster_page_is_neither_stored_nor_told_to_other_sites_and_says_its_language()
    {
        await using var evening = await Evening.BeginAsync();
        using var phone = evening.NewPhone();
        var door = await evening.DoorAsync("Ada");
        foreach (var path in new[] { door.Path, door.Path + "/sample/1", door.Path + "/places", door.Path + "/review", "/c", "/walk-in" })
        {
            await phone.GetAsync(path);
            Assert.Equal(HttpStatusCode.OK, phone.Answer.StatusCode);
            Assert.Equal("no-referrer", Assert.Single(phone.Answer.Headers.GetValues("Referrer-Policy")));
            Assert.True(phone.Answer.Headers.CacheControl!.NoStore);
            Assert.Contains("<html lang=\"en\">", phone.Html, StringComparison.Ordinal);
        }

        Assert.DoesNotContain(door.Token, (await phone.GetAsync(door.Path + "/sample/1")).DraftKey, StringComparison.Ordinal);
    }

    [Fact]
    public async Task The_first_load_of_a_ballot_stays_under_60_kB_and_its_module_under_15()
    {
        await using var evening = await Evening.BeginAsync();
        using var phone = evening.NewPhone();
        await phone.GetAsync((await evening.DoorAsync("Ada")).Path + "/sample/1");
        var files = phone.Files.Append("/kit.css").ToList();
        Assert.True(files.Count >= 4);
        long bytes = System.Text.Encoding.UTF8.GetByteCount(phone.Html);
        foreach (var file in files)
        {
            using var answer = await phone.FetchAsync(file);
            Assert.Equal(HttpStatusCode.OK, answer.StatusCode);
            var length = (await answer.Content.ReadAsByteArrayAsync(TestContext.Current.CancellationToken)).Length;
            Assert.True(length > 0, file);
            bytes += length;
        }

        Assert.InRange(bytes, 1, 60_000);
        using var module = await phone.FetchAsync("/ballot.js");
        Assert.InRange((await module.Content.ReadAsByteArrayAsync(TestContext.Current.CancellationToken)).Length, 1, 15_000);
    }

    [Fact]
    public async Task A_typed_code_opens_the_ballot_whatever_its_case_and_spaces_while_the_tasting_is_open()
    {
        await using var evening = await Evening.BeginAsync();
        using var phone = evening.NewPhone();
        var door = await evening.DoorAsync("Bruno");
        await phone.GetAsync("/c");
        await phone.PressAsync(("typed", $" {door.TypedCode[..3].ToLowerInvariant()} {door.TypedCode[3..]} "));
        Assert.Equal(door.Path, phone.Path);

        await phone.GetAsync("/c");
        await phone.PressAsync(("typed", "BCD"));
        Assert.Contains("The code has six letters; this one has 3.", phone.Text, StringComparison.Ordinal);

        await evening.ActAsync<OpenTasting>(tasting => tasting.Close(evening.Trials.Now));
        await phone.GetAsync("/c");
        await phone.PressAsync(("typed", door.TypedCode));
        Assert.Equal(HttpStatusCode.UnprocessableEntity, phone.Answer.StatusCode);
        Assert.Contains("No card with this code is open now.", phone.Text, StringComparison.Ordinal);

        await evening.ActAsync<ClosedTasting>(tasting => tasting.Reveal(evening.Trials.Now));
        await phone.GetAsync("/c");
        await phone.PressAsync(("typed", door.TypedCode));
        Assert.Equal(door.Path, phone.Path);
        Assert.Contains("The key is open, Bruno.", phone.Text, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Wrong_codes_are_slowed_after_sixty_a_minute()
    {
        await using var evening = await Evening.BeginAsync();
        using var phone = evening.NewPhone();
        await phone.GetAsync("/c");
        var wrong = phone.Form(null, ("typed", "ZZZZZZ"));
        var free = Stopwatch.StartNew();
        for (var i = 0; i < WrongTries.FreePerMinute; i++) await phone.PostAsync(wrong);
        free.Stop();
        var slowed = Stopwatch.StartNew();
        await phone.PostAsync(wrong);
        Assert.True(slowed.Elapsed > TimeSpan.FromSeconds(1.9), $"{slowed.Elapsed}");

        var together = Stopwatch.StartNew();
        using var other = evening.NewPhone();
        await Task.WhenAll(phone.PostAsync(wrong), other.PostAsync(wrong));
        Assert.True(together.Elapsed > TimeSpan.FromSeconds(3.9), $"{together.Elapsed}");
        Assert.True(free.Elapsed / WrongTries.FreePerMinute < TimeSpan.FromSeconds(1), $"{free.Elapsed}");
    }

    [Fact]
    public async Task A_walk_in_waits_until_the_maker_lets_them_in()
    {
        await using var evening = await Evening.BeginAsync();
        using var phone = evening.NewPhone();
        await phone.GetAsync("/walk-in");
        await phone.PressAsync();
        Assert.Contains("Write your name", phone.Text, StringComparison.Ordinal);
        await phone.PressAsync(("name", "Dario"));
        Assert.Contains("A moment, Dario.", phone.Text, StringComparison.Ordinal);
        Assert.Equal("5", Assert.Single(phone.Answer.Headers.GetValues("Refresh")));
        Assert.DoesNotContain("/t/", phone.Html, StringComparison.Ordinal);
        var waiting = phone.Path;
        await phone.GetAsync(waiting + "?still=1");
        Assert.False(phone.Answer.Headers.Contains("Refresh"));

        var here = TestContext.Current.CancellationToken;
        var taster = new TasterId(Guid.NewGuid());
        await evening.ActAsync<OpenTasting>(tasting => tasting.AddTaster(evening.Trials.Now, taster, "Dario", knowsTheKey: false, junior: false, 1));
        await evening.Door.AnswerAsync(Assert.Single(await evening.Door.OfAsync(evening.Trial, here)).Id, taster, here);
        await phone.GetAsync(waiting);
        Assert.Contains((await evening.DoorAsync("Dario")).Path, phone.Html, StringComparison.Ordinal);
        Assert.False(phone.Answer.Headers.Contains("Refresh"));
    }

    [Theory]
    [InlineData("yes")]
    [InlineData("no")]
    public async Task A_walk_in_whose_letting_in_was_cut_short_is_let_in_by_the_next_answer(string answer)
    {
        await using var evening = await Evening.BeginAsync();
        var here = TestContext.Current.CancellationToken;
        var asked = (await evening.Door.AskAsync(evening.Trial, "Dario", here))!.Id;
        using var maker = await evening.MakerAsync();
        var board = $"/trials/{evening.Trial.Value}/board";
        var letIn = (await maker.GetAsync(board)).Form($"/trials/{evening.Trial.Value}/walk-ins/{asked}", ("answer", "yes"));
        await maker.PostAsync(letIn);
        var taster = (await evening.TasterAsync("Dario")).Id;
        // As the program is killed between the list and the door.
        await evening.Door.AnswerAsync(asked, null, here);
        await using (var db = await evening.Services.GetRequiredService<IDbContextFactory<TrierDb>>().CreateDbContextAsync(here))
            await db.Database.ExecuteSqlAsync($"UPDATE walk_ins SET TurnedAway = 0", here);
        Assert.Null((await evening.Door.FindAsync(asked, here))!.Taster);

        await maker.PostAsync((await maker.GetAsync(board)).Form($"/trials/{evening.Trial.Value}/walk-ins/{asked}", ("answer", answer)));
        Assert.Equal(board, maker.Path);
        Assert.Equal((taster, false), ((await evening.Door.FindAsync(asked, here))!.Taster, (await evening.Door.FindAsync(asked, here))!.TurnedAway));
        Assert.Single((await evening.TastingAsync()).Book.Tasters, one => one.Name == "Dario");
    }

    [Fact]
    public async Task A_close_stands_though_it_cannot_be_copied_and_the_next_look_at_the_board_copies_it()
    {
        await using var evening = await Evening.BeginAsync();
        using var maker = await evening.MakerAsync();
        var board = $"/trials/{evening.Trial.Value}/board";
        if (Directory.Exists(evening.Copies)) Directory.Delete(evening.Copies, recursive: true);
        await File.WriteAllTextAsync(evening.Copies, "in the way", TestContext.Current.CancellationToken);
        await maker.PostAsync((await maker.GetAsync(board)).Form($"/trials/{evening.Trial.Value}/close"));
        Assert.Equal((board, HttpStatusCode.OK), (maker.Path, maker.Answer.StatusCode));
        Assert.IsType<ClosedTasting>(await evening.TastingAsync());
        Assert.Contains("could not be written", maker.Text, StringComparison.Ordinal);

        File.Delete(evening.Copies);
        await maker.GetAsync(board);
        Assert.DoesNotContain("could not be written", maker.Text, StringComparison.Ordinal);
        var copy = Assert.Single(Directory.GetFiles(evening.Copies));
        await maker.GetAsync(board);
        Assert.Equal([copy], Directory.GetFiles(evening.Copies));
    }

    [Fact]
    public async Task Before_the_opening_the_page_says_so_and_takes_nothing_in()
    {
        await using var evening = await Evening.BeginAsync(open: false);
        using var phone = evening.NewPhone();
        var door = await evening.DoorAsync("Ada");
        await phone.GetAsync(door.Path);
        Assert.Contains("The tasting has not begun.", phone.Text, StringComparison.Ordinal);
        Assert.Contains("In at least one: egg", phone.Text, StringComparison.Ordinal);
        await phone.PostAsync(($"{door.Path}/sample/1", [new("sample", "417"), new("liking", "5")]));
        Assert.Contains("The tasting has not begun.", phone.Text, StringComparison.Ordinal);
        Assert.Empty((await evening.BallotAsync("Ada")).All);
    }
}
