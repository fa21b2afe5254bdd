using Trier.Publishing.Charts;
using Trier.Storage.Tastings;
using Trier.Trials.Common;
using Trier.Trials.Makes;
using Trier.Trials.Tastings;
using Trier.Trials.Tastings.Steps;
using Trier.Web.Access;
using Trier.Web.Tastings.Ballots;

namespace Trier.Tests.Web.Ballots;

/// <summary>What a guest is told before and after the key is opened is what is known then.</summary>
public class SealedWordsTests
{
    [Fact]
    public async Task Before_the_reveal_no_guest_and_no_helper_reads_the_title_which_may_name_a_recipe()
    {
        await using var evening = await Evening.BeginAsync();
        using var phone = evening.NewPhone();
        var trial = evening.Trial;
        await phone.GetAsync("/walk-in");
        Assert.Contains("An invented kitchen", phone.Text, StringComparison.Ordinal);
        await phone.GetAsync((await evening.DoorAsync("Ada")).Path);
        await phone.GetAsync(await evening.Helpers.PathAsync(trial, Helper.Server));
        Assert.Contains("Carrying the plates", phone.Html, StringComparison.Ordinal);
        await phone.GetAsync(await evening.Helpers.PathAsync(trial, Helper.Scribe));
        await phone.GetAsync(await evening.Helpers.PathAsync(trial, Helper.Plater));
        Assert.Equal(5, phone.Seen.Count);
        Assert.All(phone.Seen, page => Assert.DoesNotContain("Four tommes", page, StringComparison.Ordinal));
    }

    [Fact]
    public async Task A_sent_page_says_that_the_key_is_sealed_and_the_review_what_counts_without_another_send()
    {
        await using var evening = await Evening.BeginAsync();
        using var phone = evening.NewPhone();
        var door = await evening.DoorAsync("Ada");
        var served = await evening.ServedAsync("Ada");
        await phone.GetAsync(door.Path + "/sample/1");
        await phone.PressAsync(("liking", "7"));
        await phone.GetAsync(door.Path + "/places");
        Assert.Contains("Four more to place", phone.Text, StringComparison.Ordinal);
        Assert.Contains("<span class=\"plug-words\">Look it over</span>", phone.Html, StringComparison.Ordinal);
        foreach (var code in served) await phone.PressAsync(("move", $"place:{code}"));
        Assert.DoesNotContain("more to place<", phone.Html, StringComparison.Ordinal);
        await phone.PressAsync();
        Assert.Contains("If you do not send, only your likings count", phone.Text, StringComparison.Ordinal);
        await phone.PressAsync();
        Assert.Contains("The key is still sealed.", phone.Text, StringComparison.Ordinal);
        Assert.DoesNotContain("Nobody", phone.Text, StringComparison.Ordinal);
        await phone.GetAsync(door.Path + "/review");
        Assert.Contains("If you do not send again, what you sent at", phone.Text, StringComparison.Ordinal);
        Assert.DoesNotContain("only your likings count", phone.Text, StringComparison.Ordinal);

        await evening.ActAsync<OpenTasting>(open => open.OpenKey(evening.Trials.Now, "Ines", early: true, taster: null));
        await phone.GetAsync(door.Path + "/sent");
        Assert.Contains("The names are not out yet.", phone.Text, StringComparison.Ordinal);
        Assert.DoesNotContain("still sealed", phone.Text, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_slip_tells_the_two_servings_apart_tells_of_swapped_codes_and_marks_wheels_as_the_verdict_does()
    {
        await using var evening = await Evening.BeginAsync(open: false);
        var trials = evening.Trials;
        var before = (await evening.TastingAsync()).Book;
        var (twice, sibling) = (before.Entries[0], new Wheel(new WheelId(Guid.NewGuid()), "Eldermoss", before.Entries[0].Facts));
        await evening.ActAsync<DraftTasting>(draft => draft.Enter(trials.Now, new Wheel(new WheelId(Guid.NewGuid()), "Fernhollow", sibling.Facts)));
        await evening.ActAsync<DraftTasting>(draft => draft.Enter(trials.Now, sibling));
        await evening.ActAsync<DraftTasting>(draft => draft.ServeTwice(trials.Now, twice.Wheel));
        await evening.OpenAsync();
        var ada = await evening.TasterAsync("Ada");
        var served = await evening.ServedAsync("Ada");
        var book = (await evening.TastingAsync()).Book;
        var two = served.Where(code => book.Key![code]!.Wheel == twice.Wheel).ToList();
        var once = served.First(code => book.Key![code]!.Wheel == sibling.Id);
        Assert.Equal(2, two.Count);
        // The serving tasted last stands first on the ballot.
        var ballot = Ballot.Of(served, served.Reverse().Select(code => new[] { code }), []).Value;
        await trials.ReceiveAsync(evening.Trial, new BallotSend(new RevisionId(Guid.NewGuid()), ada.Id, null, "paper", BallotSource.Paper, BallotStage.Sent, ballot), TestContext.Current.CancellationToken);
        await evening.ActAsync<OpenTasting>(open => open.SwapCodes(trials.Now, ada.Id, two[1], once, "the card lay turned", "Cleo"));
        await evening.ActAsync<OpenTasting>(open => open.Close(trials.Now));
        await evening.ActAsync<ClosedTasting>(closed => closed.Reveal(trials.Now));

        var revealed = (RevealedTasting)await evening.TastingAsync();
        var slip = OwnSlip.Of(revealed, ada.Id, ballot);
        var servings = new[] { two[0], once }.OrderBy(code => served.IndexOf(code)).ToList();
        Assert.Equal((1, 2, 0), (slip.Placed.Single(line => line.Sample == servings[0]).Time, slip.Placed.Single(line => line.Sample == servings[1]).Time, slip.Placed.Single(line => line.Sample == two[1]).Time));
        var looks = VerdictLooks.Of(revealed.Record(await trials.BallotsAsync(revealed, TestContext.Current.CancellationToken)));
        Assert.Equal(looks[twice.Label], slip.Placed.Single(line => line.Sample == servings[0]).Look);
        Assert.Equal(WheelFill.Half, slip.Placed.Single(line => line.Sample == two[1]).Look.Fill);
        Assert.Equal(looks[revealed.Book.Entry(sibling.Id)!.Label], slip.Placed.Single(line => line.Sample == two[1]).Look);

        using var phone = evening.NewPhone();
        await phone.GetAsync((await evening.DoorAsync("Ada")).Path);
        Assert.Contains($"On your plate the codes {two[1]} and {once} had changed places.", phone.Text, StringComparison.Ordinal);
        Assert.Contains("served to you twice, here for the second time", phone.Text, StringComparison.Ordinal);

        using var maker = await evening.MakerAsync();
        await maker.GetAsync($"/trials/{evening.Trial.Value}/slips");
        Assert.DoesNotContain("<h2>Ada</h2>", maker.Html, StringComparison.Ordinal);
        Assert.Contains("A slip too for the one who tasted on paper or with a scribe", maker.Text, StringComparison.Ordinal);
        await maker.GetAsync($"/trials/{evening.Trial.Value}/slips?all=1");
        Assert.Contains("<h2>Ada</h2>", maker.Html, StringComparison.Ordinal);
        Assert.Contains("had changed places", maker.Text, StringComparison.Ordinal);
    }
}
