using Trier.Resources;
using Trier.Trials.Makes;
using Trier.Trials.Tastings;
using Trier.Trials.Tastings.Steps;
using Trier.Web.Tastings.Ballots;

namespace Trier.Tests.Web.Ballots;

/// <summary>What is in the cheeses is told to every guest, whichever way they taste, in words they read.</summary>
public class AllergenTests
{
    private static string Trial(Evening evening, string page) => $"/trials/{evening.Trial.Value}/{page}";

    [Theory]
    [InlineData("de", "egg (lysozyme)", "Ei (Lysozym)")]
    [InlineData("fr", "lysozyme (from egg)", "lysozyme (œuf)")]
    [InlineData("es", "Walnuts", "nuez")]
    [InlineData("it", "cow's", "mucca")]
    [InlineData("de", "sheep’s", "Schaf")]
    [InlineData("pt", "pasteurised", "pasteurizado")]
    [InlineData("de", "annatto", "annatto")]
    [InlineData("de", "egg (organic)", "egg (organic)")]
    [InlineData("en", "egg (lysozyme)", "egg (lysozyme)")]
    public void A_known_word_is_translated_and_any_other_stays_the_makers_own(string language, string written, string read) =>
        Assert.Equal(read, FoodWords.In(written, BallotWords.In(language)));

    [Fact]
    public async Task A_guest_reads_and_ticks_allergens_in_their_own_language()
    {
        await using var evening = await Evening.BeginAsync();
        using var phone = evening.NewPhone();
        var door = await evening.DoorAsync("Ada");
        await phone.GetAsync(door.Path);
        await phone.PostAsync(phone.Form($"{door.Path}/language", ("language", "de")));
        Assert.Contains("In jedem Käse: Milch (Kuh, Schaf). In mindestens einem: Ei. Die Milch war: pasteurisiert, roh.", phone.Text, StringComparison.Ordinal);
        Assert.Contains("value=\"egg\"", phone.Html, StringComparison.Ordinal);
        await phone.PressAsync(("no", "egg"));
        Assert.Equal(3, (await evening.ServedAsync("Ada")).Length);
    }

    [Fact]
    public async Task The_sheet_and_the_scribes_page_tell_what_the_phone_tells()
    {
        await using var evening = await Evening.BeginAsync();
        using var maker = await evening.MakerAsync();
        using var phone = evening.NewPhone();
        var bruno = await evening.TasterAsync("Bruno");
        await evening.ActAsync<OpenTasting>(open => open.ChooseLanguage(evening.Trials.Now, bruno.Id, "fr"));
        foreach (var page in new[] { "paper-ballots", "paper-ballots?large=1" })
        {
            await maker.GetAsync(Trial(evening, page));
            Assert.Contains("In every cheese: milk (cow, sheep). In at least one: egg. The milk was: pasteurised, raw.", maker.Text, StringComparison.Ordinal);
            Assert.Contains("Anything you may not eat? Tell the host before you taste.", maker.Text, StringComparison.Ordinal);
            Assert.Contains("Dans au moins un : œuf.", maker.Text, StringComparison.Ordinal);
            Assert.Contains("Dites-le à vos hôtes avant de goûter.", maker.Text, StringComparison.Ordinal);
        }

        await phone.GetAsync((await evening.DoorAsync("Ada")).Path + "/scribe");
        Assert.Contains("In at least one: egg.", phone.Text, StringComparison.Ordinal);
        Assert.Contains("Anything you may not eat? Tell the host before you taste.", phone.Text, StringComparison.Ordinal);
        Assert.DoesNotContain("tick it below", phone.Text, StringComparison.Ordinal);
    }

    [Fact]
    public async Task The_preview_and_the_dry_run_tell_what_the_real_guest_will_be_told_and_name_no_wheel()
    {
        await using var evening = await Evening.BeginAsync(open: false);
        using var maker = await evening.MakerAsync();
        const string Told = "In every cheese: milk (cow, sheep). In at least one: egg. The milk was: pasteurised, raw.";
        await maker.GetAsync(Trial(evening, "ballot-preview/first"));
        Assert.Contains(Told, maker.Text, StringComparison.Ordinal);
        Assert.All(Evening.Names, name => Assert.DoesNotContain(name, maker.Html, StringComparison.Ordinal));

        await maker.GetAsync(Trial(evening, "practice"));
        await maker.PressAsync();
        var link = System.Text.RegularExpressions.Regex.Match(maker.Html, "href=\"(?<to>http[^\"]*/t/[^\"]*)\"", System.Text.RegularExpressions.RegexOptions.ExplicitCapture, TimeSpan.FromSeconds(1)).Groups["to"].Value;
        using var phone = new Phone(new Uri(link));
        await phone.GetAsync(new Uri(link).PathAndQuery);
        Assert.Contains(Told, phone.Text, StringComparison.Ordinal);
        Assert.Contains("value=\"egg\"", phone.Html, StringComparison.Ordinal);
        Assert.All(Evening.Names, name => Assert.DoesNotContain(name, phone.Html, StringComparison.Ordinal));
        await maker.PostAsync(maker.Form(Trial(evening, "practice/end")));
    }

    [Fact]
    public void Guests_are_told_of_milk_and_what_was_added_and_of_nothing_else()
    {
        var facts = WheelFacts.Of(WheelFacts.Asked.Select(fact => KeyValuePair.Create(fact, (string?)$"the {fact}")));
        Assert.Equal([WheelFacts.AdditivesFact, WheelFacts.AllergensFact, WheelFacts.HeatTreatmentFact, WheelFacts.MilkFact], facts.ToldToGuests().Values.Keys);
    }
}
