using System.Net;
using Trier.Tests.Web.Ballots;
using Trier.Trials.Tastings;

namespace Trier.Tests.Web.Moments;

/// <summary>A note of the room that is refused opens again as it was typed, and its faults bear the fields' own names.</summary>
public class RefusedNoteTests
{
    private static async Task<Phone> PostAsync(Phone maker, Evening evening, string act, params (string Name, string Value)[] given)
    {
        await maker.GetAsync($"/trials/{evening.Trial.Value}/board");
        return await maker.PostAsync(maker.Form($"/trials/{evening.Trial.Value}/{act}\"", given));
    }

    [Fact]
    public async Task Mixed_up_codes_keep_the_person_the_codes_and_the_reason()
    {
        await using var evening = await Evening.BeginAsync();
        using var maker = await evening.MakerAsync();
        var ada = await evening.TasterAsync("Ada");
        var served = await evening.ServedAsync("Ada");
        var elsewhere = Enumerable.Range(200, 800).Select(number => number.ToString(System.Globalization.CultureInfo.InvariantCulture)).First(text => BlindCode.TryParse(text, out var code) && !served.Contains(code));
        await PostAsync(maker, evening, "room/swapped", ("who", ada.Id.Value.ToString()), ("first", served[0].ToString()), ("second", elsewhere), ("reason", "the card lay turned"), ("witness", ""));
        Assert.Equal(HttpStatusCode.UnprocessableEntity, maker.Answer.StatusCode);
        Assert.Contains($"The other code : Sample {elsewhere} is not on this plate.", maker.Text, StringComparison.Ordinal);
        Assert.Contains("Who saw it : Say who saw it.", maker.Text, StringComparison.Ordinal);
        Assert.Contains("href=\"#swapped-witness\"", maker.Html, StringComparison.Ordinal);
        Assert.Matches("<details class=\"unfold\" open[^>]*>\\s*<summary>Codes mixed up on a plate", maker.Html);
        Assert.DoesNotMatch("<details class=\"unfold\" open[^>]*>\\s*<summary>Somebody leaves", maker.Html);
        Assert.Contains("value=\"the card lay turned\"", maker.Html, StringComparison.Ordinal);
        Assert.Matches($"<option value=\"{ada.Id.Value}\" selected", maker.Html);
        Assert.Matches($"<option value=\"{served[0]}\" selected", maker.Html);

        await PostAsync(maker, evening, "room/swapped", ("who", ada.Id.Value.ToString()), ("first", served[0].ToString()), ("second", "54"), ("reason", "r"), ("witness", "Cleo"));
        Assert.Contains("The other code : “54” is no code", maker.Text, StringComparison.Ordinal);
        Assert.Contains("value=\"Cleo\"", maker.Html, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Every_other_form_of_the_room_keeps_what_was_typed()
    {
        await using var evening = await Evening.BeginAsync();
        using var maker = await evening.MakerAsync();
        var ada = (await evening.TasterAsync("Ada")).Id.Value.ToString();
        await PostAsync(maker, evening, "room/compared", ("people", ada));
        Assert.Contains("Who : Choose the two or more people", maker.Text, StringComparison.Ordinal);
        Assert.Matches($"value=\"{ada}\" checked", maker.Html);

        await PostAsync(maker, evening, "room/spoken", ("first", ""), ("words", "that is the old one"));
        Assert.Contains("Which sample : Choose the sample.", maker.Text, StringComparison.Ordinal);
        Assert.Contains("value=\"that is the old one\"", maker.Html, StringComparison.Ordinal);

        await PostAsync(maker, evening, "room/dropped", ("who", ada), ("first", ""), ("replaced", ""));
        Assert.Matches("value=\"\" checked", maker.Html);

        await PostAsync(maker, evening, "room/parted", ("who", ""), ("second", "Emil"));
        Assert.Contains("Who : Choose who it was.", maker.Text, StringComparison.Ordinal);
        Assert.Contains("value=\"Emil\"", maker.Html, StringComparison.Ordinal);

        await PostAsync(maker, evening, "tasters", ("taster", "Bruno"));
        Assert.Contains("Name of the newcomer :", maker.Text, StringComparison.Ordinal);
        Assert.Matches("<details class=\"unfold\" open[^>]*>\\s*<summary>Somebody comes late", maker.Html);
        Assert.Contains("value=\"Bruno\"", maker.Html, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_plan_that_is_refused_names_its_fields_as_the_page_does()
    {
        await using var evening = await Evening.BeginAsync(open: false);
        using var maker = await evening.MakerAsync();
        await maker.GetAsync($"/trials/{evening.Trial.Value}/plan");
        await maker.PressAsync(("samplesEach", "1"));
        Assert.Contains("Samples a taster gets : A taster gets 2 to", maker.Text, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Where_nobody_is_at_the_table_nobody_is_said_to_have_sent()
    {
        await using var evening = await Evening.BeginAsync();
        using var maker = await evening.MakerAsync();
        await maker.GetAsync($"/trials/{evening.Trial.Value}/board");
        Assert.Contains("3 of 3 have not sent yet.", maker.Text, StringComparison.Ordinal);
        foreach (var name in new[] { "Ada", "Bruno", "Cleo" })
        {
            var taster = await evening.TasterAsync(name);
            await evening.ActAsync<Trier.Trials.Tastings.Steps.OpenTasting>(open => open.LetGo(evening.Trials.Now, taster.Id));
        }

        await maker.GetAsync($"/trials/{evening.Trial.Value}/board");
        Assert.Contains("Nobody is at the table.", maker.Text, StringComparison.Ordinal);
        Assert.DoesNotContain("Everybody has sent.", maker.Text, StringComparison.Ordinal);
    }
}
