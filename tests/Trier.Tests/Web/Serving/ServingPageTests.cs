using System.Net;
using Trier.Tests.Web.Ballots;
using Trier.Trials.Tastings.Steps;
using Trier.Web.Tastings.Serving;

namespace Trier.Tests.Web.Serving;

/// <summary>Before the day, over HTTP.</summary>
public sealed class ServingPageTests
{
    [Fact]
    public async Task The_invitation_tells_allergens_and_milk_and_gives_no_wheel_away()
    {
        await using var evening = await Evening.BeginAsync(open: false);
        var maker = await evening.MakerAsync();
        await maker.GetAsync($"/trials/{evening.Trial.Value}/serving");
        var text = maker.Text;
        var invitation = text[text.IndexOf("You are invited", StringComparison.Ordinal)..text.IndexOf("Allergens and milk are told for all wheels", StringComparison.Ordinal)];
        Assert.Contains("Of the milks, some were pasteurised, some raw.", invitation, StringComparison.Ordinal);
        Assert.Contains("made from milk (cow, sheep)", invitation, StringComparison.Ordinal);
        Assert.Contains("Some of it contains egg.", invitation, StringComparison.Ordinal);
        Assert.Contains("ask your midwife or doctor", invitation, StringComparison.Ordinal);
        Assert.All(Evening.Names, name => Assert.DoesNotContain(name, invitation, StringComparison.OrdinalIgnoreCase));
        Assert.DoesNotContain("Four tommes", invitation, StringComparison.Ordinal);
        Assert.DoesNotContain("lot 7", invitation, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_wheel_with_an_allergen_comes_last_and_a_sample_left_off_is_not_cut()
    {
        await using var evening = await Evening.BeginAsync(open: false);
        var book = (await evening.TastingAsync()).Book;
        await evening.ActAsync<DraftTasting>(draft => draft.LeaveOff(evening.Trials.Now, book.Tasters[0].Id, [book.Entries[2].Wheel]));
        await evening.ActAsync<DraftTasting>(draft => draft.ServeTwice(evening.Trials.Now, book.Entries[0].Wheel));
        var maker = await evening.MakerAsync();
        await maker.GetAsync($"/trials/{evening.Trial.Value}/serving?across=17&tall=6,5&spare=0");
        Assert.Matches("Amberholt W1 14 42 a quarter 45 three quarters Birkmoor W2 7 21 a quarter 45 three quarters Dunfennel W4 7 21 .* Corrieglen W3 last, on its own board: egg 6 18 a quarter", maker.Text);
    }

    [Fact]
    public async Task Spare_plates_are_bought_cut_and_plated_alike_and_numbers_have_a_comma()
    {
        await using var evening = await Evening.BeginAsync(open: false);
        var maker = await evening.MakerAsync();
        var ada = await evening.TasterAsync("Ada");
        await evening.ActAsync<DraftTasting>(draft => draft.LeaveOff(evening.Trials.Now, ada.Id, [draft.Book.Entries[2].Wheel]));
        foreach (var step in new[] { "a draft", "sealed" })
        {
            await maker.GetAsync($"/trials/{evening.Trial.Value}/serving?spare=0&across=17,5");
            Assert.Contains("Samples are counted for 7 plates, 4 of them spare.", maker.Text, StringComparison.Ordinal);
            Assert.Contains("7 plates, plain and alike: 3 for those on the list and 4 spare ones", maker.Text, StringComparison.Ordinal);
            Assert.Contains("unsalted table-water ones: 35,", maker.Text, StringComparison.Ordinal);
            Assert.Contains("Amberholt W1 7 21", maker.Text, StringComparison.Ordinal);
            Assert.Contains("1,08 g a cubic centimetre", maker.Text, StringComparison.Ordinal);
            Assert.Contains("a wheel 17,5 cm across", maker.Text, StringComparison.Ordinal);
            if (step == "a draft") await evening.ActAsync<DraftTasting>(draft => draft.Seal(evening.Trials.Now, new Trier.Statistics.Randomness.Seed(7)));
        }

        await maker.GetAsync($"/trials/{evening.Trial.Value}/plates");
        Assert.Contains("3 plates, up to 4 samples each.", maker.Text, StringComparison.Ordinal);
        await maker.GetAsync(await evening.Helpers.PathAsync(evening.Trial, Trier.Web.Access.Helper.Plater));
        await maker.PressAsync(("by", "Gus"));
        Assert.Matches("Amberholt W1 on 7 plates, 4 of them spare", maker.Text);
    }

    [Fact]
    public async Task What_cannot_be_is_told_field_by_field_and_nothing_is_worked_out()
    {
        await using var evening = await Evening.BeginAsync(open: false);
        var maker = await evening.MakerAsync();
        await maker.GetAsync($"/trials/{evening.Trial.Value}/serving?across=&cube=900&room=x&first=soon&tall-W1=NaN");
        Assert.Equal(HttpStatusCode.OK, maker.Answer.StatusCode);
        Assert.Contains("A cube’s edge is between 8 and 40 mm.", maker.Text, StringComparison.Ordinal);
        Assert.Contains("Edge of a cube : A cube’s edge", maker.Text, StringComparison.Ordinal);
        Assert.Contains("A temperature here is between 0 and 35 °C.", maker.Text, StringComparison.Ordinal);
        Assert.Contains("Write the time as 16:10.", maker.Text, StringComparison.Ordinal);
        Assert.DoesNotContain("You are invited", maker.Text, StringComparison.Ordinal);
    }

    [Fact]
    public void The_briefing_is_read_aloud_in_about_a_minute() =>
        Assert.InRange(Briefing.Lines.Sum(line => line.Split(' ').Length), 120, 180);
}
