using System.Net;
using Trier.Trials.Tastings;
using Trier.Trials.Tastings.Steps;

namespace Trier.Tests.Web.Ballots;

public class BallotWalkTests
{
    [Fact]
    public async Task A_whole_ballot_is_given_without_script()
    {
        await using var evening = await Evening.BeginAsync();
        using var phone = evening.NewPhone();
        var door = await evening.DoorAsync("Ada");
        var served = await evening.ServedAsync("Ada");
        await phone.GetAsync(door.Path);
        Assert.Contains("In at least one: egg", phone.Text, StringComparison.Ordinal);
        Assert.Contains("pasteurised, raw", phone.Text, StringComparison.Ordinal);
        Assert.DoesNotContain("lot 7", phone.Text, StringComparison.Ordinal);

        await phone.PressAsync(("taste", "stronger"));
        Assert.Equal(DeclaredTaste.Stronger, (await evening.TasterAsync("Ada")).Taste);
        for (var i = 0; i < served.Length; i++)
        {
            Assert.Equal($"{door.Path}/sample/{i + 1}", phone.Path);
            Assert.Contains($"Sample {i + 1} of 4, code {served[i]}", phone.Text, StringComparison.Ordinal);
            await phone.PressAsync(("liking", $"{8 - i}"), ("remark", $" nutty  {i} "));
        }

        Assert.Equal($"{door.Path}/places", phone.Path);
        foreach (var code in served) await phone.PressAsync(("move", $"place:{code}"));
        await phone.PressAsync(("move", $"same:{served[1]}"));
        await phone.PressAsync(("move", $"down:{served[2]}"));
        await phone.PressAsync();
        Assert.Equal($"{door.Path}/review", phone.Path);
        await phone.PressAsync();
        Assert.Equal($"{door.Path}/sent", phone.Path);
        Assert.Contains("Thank you, Ada", phone.Text, StringComparison.Ordinal);

        var counted = (await evening.BallotAsync("Ada")).Counted!;
        Assert.Equal(BallotStage.Sent, counted.Stage);
        Assert.Equal([[.. new[] { served[0], served[1] }.Order()], [served[3]], [served[2]]], counted.Content.Places);
        Assert.Equal([8, 7, 6, 5], served.Select(code => counted.Content.Answers[code].Liking!.Value));
        Assert.Equal("nutty 0", counted.Content.Answers[served[0]].Remark);
    }

    [Fact]
    public async Task The_same_send_twice_is_stored_once()
    {
        await using var evening = await Evening.BeginAsync();
        using var phone = evening.NewPhone();
        var door = await evening.DoorAsync("Ada");
        await phone.GetAsync($"{door.Path}/sample/1");
        var answer = phone.Form(null, ("liking", "7"));
        await phone.PostAsync(answer);
        await phone.PostAsync(answer);
        Assert.Single((await evening.BallotAsync("Ada")).All);

        await phone.GetAsync($"{door.Path}/review");
        var send = phone.Form();
        await phone.PostAsync(send);
        await phone.PostAsync(send);
        Assert.Equal($"{door.Path}/sent", phone.Path);
        Assert.Equal(2, (await evening.BallotAsync("Ada")).All.Length);
    }

    [Fact]
    public async Task A_liking_is_locked_and_corrected_once_as_a_slip()
    {
        await using var evening = await Evening.BeginAsync();
        using var phone = evening.NewPhone();
        var door = await evening.DoorAsync("Bruno");
        var code = (await evening.ServedAsync("Bruno"))[0];
        await phone.GetAsync($"{door.Path}/sample/1");
        await phone.PressAsync(("liking", "2"));
        await phone.GetAsync($"{door.Path}/sample/1");
        Assert.DoesNotContain("type=\"radio\"", phone.Html, StringComparison.Ordinal);
        await phone.PressAsync(("liking", "9"));
        Assert.Equal(2, (await evening.BallotAsync("Bruno")).Current!.Content.Answers[code].Liking);

        await phone.GetAsync($"{door.Path}/sample/1?slip=1");
        await phone.PressAsync(("liking", "8"));
        var said = (await evening.BallotAsync("Bruno")).Current!.Content.Answers[code];
        Assert.Equal((8, 2), (said.Liking, said.FirstLiking));

        await phone.GetAsync($"{door.Path}/sample/1?slip=1");
        Assert.DoesNotContain("type=\"radio\"", phone.Html, StringComparison.Ordinal);
        Assert.Contains("Corrected from: dislike a lot", phone.Text, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Two_phones_of_one_taster_lose_nothing_while_tasting()
    {
        await using var evening = await Evening.BeginAsync();
        using var one = evening.NewPhone();
        using var two = evening.NewPhone();
        var door = await evening.DoorAsync("Cleo");
        var served = await evening.ServedAsync("Cleo");
        await one.GetAsync($"{door.Path}/sample/1");
        await two.GetAsync($"{door.Path}/sample/2");
        await one.PressAsync(("liking", "4"));
        await two.PressAsync(("liking", "6"));
        var said = (await evening.BallotAsync("Cleo")).Current!.Content.Answers;
        Assert.Equal((4, 6), (said[served[0]].Liking, said[served[1]].Liking));
    }

    [Fact]
    public async Task A_send_from_a_page_left_open_is_kept_and_the_taster_chooses()
    {
        await using var evening = await Evening.BeginAsync();
        using var one = evening.NewPhone();
        using var two = evening.NewPhone();
        var door = await evening.DoorAsync("Cleo");
        var served = await evening.ServedAsync("Cleo");
        await one.GetAsync($"{door.Path}/places");
        await one.PressAsync(("move", $"place:{served[0]}"));
        await one.GetAsync($"{door.Path}/review");
        await two.GetAsync($"{door.Path}/places");
        await two.PressAsync(("move", $"place:{served[1]}"));
        await two.PressAsync();
        await two.PressAsync();
        Assert.Equal($"{door.Path}/sent", two.Path);

        await one.PressAsync();
        Assert.Equal($"{door.Path}/both", one.Path);
        Assert.Contains("Which one shall count?", one.Text, StringComparison.Ordinal);
        var history = await evening.BallotAsync("Cleo");
        var aside = Assert.Single(history.Aside);
        Assert.Equal(2, history.Current!.Content.Placed);

        await one.PostAsync(FormOf(one, aside.Id));
        Assert.Equal($"{door.Path}/sent", one.Path);
        var settled = await evening.BallotAsync("Cleo");
        Assert.Equal(1, settled.Counted!.Content.Placed);
        Assert.Equal(BallotStage.Sent, settled.Counted.Stage);
    }

    [Fact]
    public async Task A_withdrawn_sample_vanishes_and_what_was_said_of_it_stays()
    {
        await using var evening = await Evening.BeginAsync();
        using var phone = evening.NewPhone();
        var door = await evening.DoorAsync("Ada");
        var served = await evening.ServedAsync("Ada");
        await phone.GetAsync($"{door.Path}/sample/2");
        await phone.PressAsync(("liking", "3"));
        var open = phone.Form(null, ("liking", "5"));
        var gone = (await evening.TastingAsync()).Book.Key![served[1]]!.Wheel;
        await evening.ActAsync<OpenTasting>(tasting => tasting.Withdraw(evening.Trials.Now, gone, "Smelled wrong when cut.", null));

        await phone.PostAsync(open);
        foreach (var step in new[] { "/sample/1", "/sample/2", "/sample/3", "/places", "/review" })
        {
            await phone.GetAsync(door.Path + step);
            Assert.DoesNotContain(served[1].ToString(), phone.Text, StringComparison.Ordinal);
        }

        await phone.GetAsync($"{door.Path}/sample/1");
        Assert.Contains("Sample 1 of 3", phone.Text, StringComparison.Ordinal);
        var answers = (await evening.BallotAsync("Ada")).Current!.Content.Answers;
        Assert.Equal((3, 5), (answers[served[1]].Liking, answers[served[2]].Liking));
    }

    [Fact]
    public async Task A_sample_left_off_appears_on_no_page_of_that_taster()
    {
        await using var evening = await Evening.BeginAsync(open: false);
        var bruno = await evening.TasterAsync("Bruno");
        var off = (await evening.TastingAsync()).Book.Entries[2].Wheel;
        await evening.ActAsync<DraftTasting>(draft => draft.LeaveOff(evening.Trials.Now, bruno.Id, [off]));
        await evening.OpenAsync();
        var code = (await evening.TastingAsync()).Book.Key!.Of(off)[0].Code.ToString();
        Assert.Contains(code, (await evening.ServedAsync("Ada")).Select(served => served.ToString()));

        using var phone = evening.NewPhone();
        await WholeWalkAsync(evening, phone, "Bruno");
        Assert.True(phone.Seen.Count > 8);
        await phone.GetAsync((await evening.DoorAsync("Bruno")).Path + "/sample/4");
        // As a word of its own: send ids and links are random and may hold the digits.
        Assert.All(phone.Seen, page => Assert.DoesNotMatch($@"(?<![\w-]){code}(?![\w-])", page));
        Assert.Matches($@"(?<![\w-]){(await evening.ServedAsync("Bruno"))[0]}(?![\w-])", string.Concat(phone.Seen));
    }

    [Fact]
    public async Task No_page_of_a_taster_names_a_wheel_before_the_reveal_and_the_slip_does_after()
    {
        await using var evening = await Evening.BeginAsync();
        using var phone = evening.NewPhone();
        await WholeWalkAsync(evening, phone, "Ada");
        await evening.ActAsync<OpenTasting>(tasting => tasting.Close(evening.Trials.Now));
        var door = await evening.DoorAsync("Ada");
        await phone.GetAsync(door.Path);
        Assert.Contains("The ballots are closed, Ada", phone.Text, StringComparison.Ordinal);
        Assert.All(phone.Seen, page => Assert.All(Evening.Names, name => Assert.DoesNotContain(name, page, StringComparison.OrdinalIgnoreCase)));

        await evening.ActAsync<ClosedTasting>(tasting => tasting.Reveal(evening.Trials.Now));
        await phone.GetAsync(door.Path);
        Assert.All(Evening.Names, name => Assert.Contains(name, phone.Html, StringComparison.Ordinal));
    }

    [Fact]
    public async Task A_send_after_the_close_is_kept_and_said_to_be_late()
    {
        await using var evening = await Evening.BeginAsync();
        using var phone = evening.NewPhone();
        var door = await evening.DoorAsync("Bruno");
        await phone.GetAsync($"{door.Path}/sample/1");
        await phone.PressAsync(("liking", "9"));
        await phone.GetAsync($"{door.Path}/review");
        await evening.ActAsync<OpenTasting>(tasting => tasting.Close(evening.Trials.Now));
        await phone.PressAsync();
        Assert.Contains("came after the close. It is kept. It counts only if the host lets it in", phone.Text, StringComparison.Ordinal);
        var history = await evening.BallotAsync("Bruno");
        Assert.Equal(BallotStanding.AfterClose, history.All[^1].Standing);
        Assert.Equal(BallotStage.Tasting, history.Counted!.Stage);

        await evening.ActAsync<ClosedTasting>(tasting => tasting.Reveal(evening.Trials.Now));
        await phone.GetAsync($"{door.Path}/review");
        Assert.Contains("The key is open, Bruno", phone.Text, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_ballot_that_looks_upside_down_is_asked_about_and_still_sent()
    {
        await using var evening = await Evening.BeginAsync();
        using var phone = evening.NewPhone();
        var door = await evening.DoorAsync("Ada");
        var served = await evening.ServedAsync("Ada");
        for (var i = 0; i < served.Length; i++)
        {
            await phone.GetAsync($"{door.Path}/sample/{i + 1}");
            await phone.PressAsync(("liking", $"{9 - i}"));
        }

        foreach (var code in served.Reverse()) await phone.PressAsync(("move", $"place:{code}"));
        await phone.PressAsync();
        Assert.Contains($"You liked {served[0]} best and placed it last. Is that right?", phone.Text, StringComparison.Ordinal);
        await phone.PressAsync();
        Assert.Equal($"{door.Path}/sent", phone.Path);
    }

    [Fact]
    public async Task What_changed_after_sending_is_said_until_it_is_sent_again()
    {
        await using var evening = await Evening.BeginAsync();
        using var phone = evening.NewPhone();
        await WholeWalkAsync(evening, phone, "Ada");
        var door = await evening.DoorAsync("Ada");
        await phone.GetAsync($"{door.Path}/places");
        await phone.PressAsync(("move", $"down:{(await evening.ServedAsync("Ada"))[0]}"));
        await phone.GetAsync(door.Path);
        Assert.Contains("and did not send it again", phone.Text, StringComparison.Ordinal);
        await phone.GetAsync($"{door.Path}/review");
        await phone.PressAsync();
        Assert.DoesNotContain("and did not send it again", phone.Text, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_wrong_liking_code_or_place_is_refused_with_a_sentence()
    {
        await using var evening = await Evening.BeginAsync();
        using var phone = evening.NewPhone();
        var door = await evening.DoorAsync("Ada");
        await phone.GetAsync($"{door.Path}/sample/1");
        await phone.PressAsync(("liking", "12"), ("remark", "kept words"));
        Assert.Equal(HttpStatusCode.UnprocessableEntity, phone.Answer.StatusCode);
        Assert.Contains("Choose one of the nine lines, or none.", phone.Text, StringComparison.Ordinal);
        Assert.Contains("kept words", phone.Html, StringComparison.Ordinal);

        var code = (await evening.ServedAsync("Ada"))[0].ToString();
        await phone.GetAsync($"{door.Path}/places");
        var form = phone.Form();
        form.Fields.AddRange([new("order", code), new("order", code), new("order", "000")]);
        await phone.PostAsync(form);
        Assert.Equal(HttpStatusCode.UnprocessableEntity, phone.Answer.StatusCode);
        Assert.Contains("A sample stands twice, or is not on your plate.", phone.Text, StringComparison.Ordinal);
        Assert.Empty((await evening.BallotAsync("Ada")).All);
    }

    internal static async Task WholeWalkAsync(Evening evening, Phone phone, string name)
    {
        var door = await evening.DoorAsync(name);
        var served = await evening.ServedAsync(name);
        await phone.GetAsync(door.Path);
        await phone.PressAsync(("taste", "milder"));
        for (var i = 0; i < served.Length; i++) await phone.PressAsync(("liking", $"{8 - i}"));
        foreach (var code in served) await phone.PressAsync(("move", $"place:{code}"));
        await phone.PressAsync();
        await phone.PressAsync();
        Assert.Equal($"{door.Path}/sent", phone.Path);
    }

    private static (string Action, List<KeyValuePair<string, string>> Fields) FormOf(Phone phone, Trials.Common.RevisionId version)
    {
        var form = phone.Form();
        return (form.Action, [.. form.Fields.Where(field => field.Key != "base"), new("base", version.Value.ToString())]);
    }
}
