using System.Net;
using Trier.Trials.Tastings;
using Trier.Trials.Tastings.Steps;

namespace Trier.Tests.Web.Ballots;

public class PaperTests
{
    [Fact]
    public async Task Print_pages_are_the_makers_and_name_no_wheel()
    {
        await using var evening = await Evening.BeginAsync();
        using var guest = evening.NewPhone();
        using var maker = await evening.MakerAsync();
        var ada = await evening.TasterAsync("Ada");
        foreach (var page in new[] { "cards", "paper-ballots", "paper", $"paper/{ada.Id.Value}" })
        {
            await guest.GetAsync($"/trials/{evening.Trial.Value}/{page}");
            Assert.StartsWith("/sign-in", guest.Path, StringComparison.Ordinal);
            await maker.GetAsync($"/trials/{evening.Trial.Value}/{page}");
            Assert.Equal(HttpStatusCode.OK, maker.Answer.StatusCode);
            Assert.Contains("Ada", maker.Text, StringComparison.Ordinal);
            Assert.All(Evening.Names, name => Assert.DoesNotContain(name, maker.Html, StringComparison.OrdinalIgnoreCase));
        }
    }

    [Fact]
    public async Task A_card_bears_the_codes_in_serving_order_the_typed_code_and_the_page_to_type_it_on()
    {
        await using var evening = await Evening.BeginAsync();
        using var maker = await evening.MakerAsync();
        await maker.GetAsync($"/trials/{evening.Trial.Value}/cards");
        var door = await evening.DoorAsync("Cleo");
        Assert.Contains($"Plate of Cleo, clockwise from the notch: {string.Join(", ", await evening.ServedAsync("Cleo"))}", maker.Html, StringComparison.Ordinal);
        Assert.Contains($"{door.TypedCode[..3]} {door.TypedCode[3..]}", maker.Text, StringComparison.Ordinal);
        Assert.Contains($"{evening.Address.Authority}/c", maker.Text, StringComparison.Ordinal);
        Assert.DoesNotContain(door.Token, maker.Html, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_paper_ballot_is_typed_in_with_ties_and_counts_as_sent()
    {
        await using var evening = await Evening.BeginAsync();
        using var maker = await evening.MakerAsync();
        var ada = await evening.TasterAsync("Ada");
        var served = await evening.ServedAsync("Ada");
        await maker.GetAsync($"/trials/{evening.Trial.Value}/paper/{ada.Id.Value}");
        await maker.PressAsync(($"liking-{served[0]}", "9"), ($"remark-{served[0]}", "hay"), ($"place-{served[0]}", "1"), ($"place-{served[2]}", "2"), ($"place-{served[3]}", "2"));
        Assert.Contains("Ada’s ballot is in.", maker.Text, StringComparison.Ordinal);
        var sent = (await evening.BallotAsync("Ada")).Counted!;
        Assert.Equal((BallotSource.Paper, BallotStage.Sent), (sent.Source, sent.Stage));
        Assert.Equal([[served[0]], [.. new[] { served[2], served[3] }.Order()]], sent.Content.Places);
        Assert.Equal((9, "hay"), (sent.Content.Answers[served[0]].Liking, sent.Content.Answers[served[0]].Remark));
    }

    [Fact]
    public async Task What_is_ticked_at_the_top_of_a_sheet_outlives_a_slip_further_down()
    {
        await using var evening = await Evening.BeginAsync();
        using var maker = await evening.MakerAsync();
        var ada = await evening.TasterAsync("Ada");
        var served = await evening.ServedAsync("Ada");
        await maker.GetAsync($"/trials/{evening.Trial.Value}/paper/{ada.Id.Value}");
        await maker.PressAsync(($"place-{served[0]}", "9"), ("taste", "milder"), ("cold", "yes"), ("named", "yes"), ("quoted", "yes"));
        Assert.Equal(HttpStatusCode.UnprocessableEntity, maker.Answer.StatusCode);
        await maker.PressAsync(($"place-{served[0]}", "1"));
        var said = await evening.TasterAsync("Ada");
        Assert.Equal((DeclaredTaste.Milder, true, new Agreed(true, true)), (said.Taste, said.NoSmell, said.Agreed));

        await maker.GetAsync($"/trials/{evening.Trial.Value}/paper/{ada.Id.Value}");
        var (action, fields) = maker.Form(null, ($"place-{served[0]}", "9"));
        await maker.PostAsync((action, [.. fields.Where(field => field.Key != "quoted")]));
        await maker.PressAsync(($"place-{served[0]}", "1"));
        Assert.Equal(new Agreed(true, false), (await evening.TasterAsync("Ada")).Agreed);
    }

    [Fact]
    public async Task All_faults_of_a_paper_ballot_are_told_at_once_and_nothing_is_saved()
    {
        await using var evening = await Evening.BeginAsync();
        using var maker = await evening.MakerAsync();
        var ada = await evening.TasterAsync("Ada");
        var served = await evening.ServedAsync("Ada");
        await maker.GetAsync($"/trials/{evening.Trial.Value}/paper/{ada.Id.Value}");
        await maker.PressAsync(($"place-{served[0]}", "7"), ($"place-{served[1]}", "first"), ($"liking-{served[2]}", "11"));
        Assert.Equal(HttpStatusCode.UnprocessableEntity, maker.Answer.StatusCode);
        Assert.Contains($"The place of {served[0]} is 7, but there are 4 samples", maker.Text, StringComparison.Ordinal);
        Assert.Contains("“first” is none", maker.Text, StringComparison.Ordinal);
        Assert.Contains($"Choose one of the nine lines for {served[2]}", maker.Text, StringComparison.Ordinal);
        Assert.Contains("value=\"first\"", maker.Html, StringComparison.Ordinal);
        Assert.Empty((await evening.BallotAsync("Ada")).All);
    }

    [Fact]
    public async Task A_sample_of_the_second_flight_has_no_box_for_a_place_in_print_or_when_typed_in()
    {
        await using var evening = await Evening.BeginAsync(open: false);
        var last = (await evening.TastingAsync()).Book.Entries[3].Wheel;
        await evening.ActAsync<DraftTasting>(draft => draft.ChooseFlight(evening.Trials.Now, last, second: true));
        await evening.OpenAsync();
        using var maker = await evening.MakerAsync();
        var (ada, served) = (await evening.TasterAsync("Ada"), await evening.ServedAsync("Ada"));
        await maker.GetAsync($"/trials/{evening.Trial.Value}/paper-ballots?taster={ada.Id.Value}");
        Assert.Equal(3, maker.Html[maker.Html.IndexOf("paper-places", StringComparison.Ordinal)..].Split("<li>").Length - 1);
        await maker.GetAsync($"/trials/{evening.Trial.Value}/paper/{ada.Id.Value}");
        Assert.All(served[..3], code => Assert.Contains($"name=\"place-{code}\"", maker.Html, StringComparison.Ordinal));
        Assert.Contains($"name=\"liking-{served[3]}\"", maker.Html, StringComparison.Ordinal);
        Assert.DoesNotContain($"place-{served[3]}", maker.Html, StringComparison.Ordinal);

        // Nor does one come back where two entries of the sheet are settled.
        await maker.PressAsync(($"place-{served[0]}", "1"), ($"place-{served[1]}", "2"), ($"place-{served[2]}", "3"), ($"liking-{served[3]}", "8"));
        await maker.GetAsync($"/trials/{evening.Trial.Value}/paper/{ada.Id.Value}/second");
        await maker.PressAsync(($"place-{served[0]}", "1"), ($"place-{served[1]}", "2"), ($"place-{served[2]}", "3"), ($"liking-{served[3]}", "2"), ("by", "Gus"));
        await maker.PressAsync(($"liking-{served[3]}", "second"), ($"place-{served[3]}", "unclear"));
        var settled = (await evening.BallotAsync("Ada")).Counted!.Content;
        Assert.Equal([[served[0]], [served[1]], [served[2]]], settled.Places);
        Assert.Equal((2, null), (settled.Answers[served[3]].Liking, settled.Answers[served[3]].Unclear));
    }

    [Fact]
    public async Task A_post_without_the_forms_token_is_refused()
    {
        await using var evening = await Evening.BeginAsync();
        using var maker = await evening.MakerAsync();
        var ada = await evening.TasterAsync("Ada");
        var code = (await evening.ServedAsync("Ada"))[0];
        await maker.PostAsync(($"/trials/{evening.Trial.Value}/paper/{ada.Id.Value}", [new($"place-{code}", "1")]));
        Assert.Equal(HttpStatusCode.BadRequest, maker.Answer.StatusCode);
        Assert.Empty((await evening.BallotAsync("Ada")).All);
    }
}
