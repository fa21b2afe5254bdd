using Trier.Trials.Tastings;

namespace Trier.Tests.Web.Ballots;

public class SecondEntryTests
{
    [Fact]
    public async Task A_digit_nobody_can_read_is_kept_as_unclear_and_counts_as_a_tie()
    {
        await using var evening = await Evening.BeginAsync();
        using var maker = await evening.MakerAsync();
        var (ada, served) = (await evening.TasterAsync("Ada"), await evening.ServedAsync("Ada"));
        await maker.GetAsync($"/trials/{evening.Trial.Value}/paper/{ada.Id.Value}");
        await maker.PressAsync(($"place-{served[0]}", "1"), ($"place-{served[1]}", "1"), ($"place-{served[2]}", "7/1 faint stroke"), ($"place-{served[3]}", "?"));
        var sent = (await evening.BallotAsync("Ada")).Counted!.Content;
        Assert.Equal([[.. served.Take(3).Order()]], sent.Places);
        Assert.Equal(("7/1 faint stroke", "?"), (sent.Answers[served[2]].Unclear, sent.Answers[served[3]].Unclear));
        await maker.GetAsync($"/trials/{evening.Trial.Value}/paper/{ada.Id.Value}");
        Assert.Contains("value=\"7/1 faint stroke\"", maker.Html, StringComparison.Ordinal);

        await maker.PressAsync(($"place-{served[2]}", "3"));
        Assert.False((await evening.BallotAsync("Ada")).Counted!.Content.Answers.ContainsKey(served[2]));
    }

    [Fact]
    public async Task A_second_entry_that_agrees_is_marked_with_who_made_it()
    {
        await using var evening = await Evening.BeginAsync();
        using var maker = await evening.MakerAsync();
        var (ada, served) = (await evening.TasterAsync("Ada"), await evening.ServedAsync("Ada"));
        (string, string)[] sheet = [($"liking-{served[0]}", "9"), ($"place-{served[0]}", "1"), ($"place-{served[1]}", "2")];
        await maker.GetAsync($"/trials/{evening.Trial.Value}/paper/{ada.Id.Value}");
        await maker.PressAsync(sheet);
        await maker.GetAsync($"/trials/{evening.Trial.Value}/paper/{ada.Id.Value}/second");
        Assert.DoesNotContain("value=\"1\" selected", maker.Html, StringComparison.Ordinal);
        await maker.PressAsync(sheet);
        Assert.Contains("Say who types it in the second time", maker.Text, StringComparison.Ordinal);
        await maker.PressAsync([.. sheet, ("by", "Gus")]);
        Assert.Contains("agrees, by Gus", maker.Text, StringComparison.Ordinal);
        await maker.GetAsync($"/trials/{evening.Trial.Value}/board");
        Assert.Contains("typed in again by Gus, agrees", maker.Text, StringComparison.Ordinal);
        Assert.DoesNotContain("two versions", maker.Text, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Every_mismatch_is_listed_and_settled_and_both_entries_stay()
    {
        await using var evening = await Evening.BeginAsync();
        using var maker = await evening.MakerAsync();
        using var phone = evening.NewPhone();
        var (ada, served) = (await evening.TasterAsync("Ada"), await evening.ServedAsync("Ada"));
        await maker.GetAsync($"/trials/{evening.Trial.Value}/paper/{ada.Id.Value}");
        await maker.PressAsync(($"liking-{served[0]}", "9"), ($"remark-{served[0]}", "hay"), ($"place-{served[0]}", "1"), ($"place-{served[1]}", "2"), ($"place-{served[2]}", "3"));
        var first = (await evening.BallotAsync("Ada")).Counted!;
        await maker.GetAsync($"/trials/{evening.Trial.Value}/paper/{ada.Id.Value}/second");
        await maker.PressAsync(($"liking-{served[0]}", "8"), ($"remark-{served[0]}", "hay"), ($"place-{served[0]}", "1"), ($"place-{served[1]}", "2"), ($"place-{served[2]}", "1"), ("by", "Gus"));
        Assert.Contains("differences in Ada’s ballot", maker.Text, StringComparison.Ordinal);
        Assert.Contains("first entry: 9", maker.Text, StringComparison.Ordinal);
        Assert.Contains("second entry: 8", maker.Text, StringComparison.Ordinal);
        Assert.DoesNotContain("hay", maker.Text, StringComparison.Ordinal);
        Assert.Equal(first.Id, (await evening.BallotAsync("Ada")).Counted!.Id);
        var compared = maker.Path;
        await maker.GetAsync($"/trials/{evening.Trial.Value}/board");
        Assert.Contains("typed in twice, not settled yet", maker.Text, StringComparison.Ordinal);
        Assert.DoesNotContain("the taster is asked", maker.Text, StringComparison.Ordinal);
        await maker.GetAsync(compared);
        await phone.GetAsync((await evening.DoorAsync("Ada")).Path);
        Assert.EndsWith("/sent", phone.Path, StringComparison.Ordinal);

        await maker.PressAsync(($"liking-{served[0]}", "second"), ($"place-{served[2]}", "unclear"));
        Assert.Contains("agrees, by Gus", maker.Text, StringComparison.Ordinal);
        var history = await evening.BallotAsync("Ada");
        Assert.Equal(3, history.All.Length);
        var settled = history.Counted!.Content;
        Assert.Equal((8, "3/1", "hay"), (settled.Answers[served[0]].Liking, settled.Answers[served[2]].Unclear, settled.Answers[served[0]].Remark));
        Assert.Equal([[.. new[] { served[0], served[2] }.Order()], [served[1]]], settled.Places);
    }

    [Fact]
    public async Task A_ballot_begun_on_a_phone_is_printed_with_its_answers()
    {
        await using var evening = await Evening.BeginAsync();
        using var maker = await evening.MakerAsync();
        using var phone = evening.NewPhone();
        await phone.GetAsync((await evening.DoorAsync("Bruno")).Path + "/sample/1");
        await phone.PressAsync(("liking", "3"), ("remark", "hay barn"));
        var bruno = await evening.TasterAsync("Bruno");
        await maker.GetAsync($"/trials/{evening.Trial.Value}/paper-ballots?taster={bruno.Id.Value}&sofar=1");
        Assert.Contains("What Bruno said so far is printed.", maker.Text, StringComparison.Ordinal);
        Assert.Contains("hay barn", maker.Text, StringComparison.Ordinal);
        Assert.Single(System.Text.RegularExpressions.Regex.Matches(maker.Html, "paper-ticked", System.Text.RegularExpressions.RegexOptions.None, TimeSpan.FromSeconds(1)));
        await maker.GetAsync($"/trials/{evening.Trial.Value}/paper-ballots");
        Assert.DoesNotContain("paper-ticked", maker.Html, StringComparison.Ordinal);
    }
}
