using System.Net;
using System.Text.RegularExpressions;
using Trier.Publishing.Recipes;
using Trier.Tests.Web.Ballots;
using Trier.Tests.Web.Shared;

namespace Trier.Tests.Web.Makes;

/// <summary>The Make station as a maker uses it, without script, on the real site.</summary>
public sealed class MakePagesTests
{
    [Fact]
    public async Task An_empty_station_says_what_comes_next_and_nobody_else_gets_in()
    {
        await using var site = await Evening.BeginAsync(open: false);
        using var guest = site.NewPhone();
        foreach (var path in new[] { "/recipes", "/makes", "/recipes/tomme", "/recipes/tomme/sheet?milk=12", "/wheels/1", "/makes/now" })
        {
            await guest.GetAsync(path);
            Assert.StartsWith("/sign-in", guest.Path, StringComparison.Ordinal);
        }

        using var maker = await site.MakerAsync();
        await maker.GetAsync("/recipes");
        Assert.Contains("No recipe of your own yet.", maker.Text, StringComparison.Ordinal);
        Assert.Contains("Washed curd", maker.Text, StringComparison.Ordinal);
        await maker.GetAsync("/makes");
        Assert.Contains("No make yet.", maker.Text, StringComparison.Ordinal);
        await maker.GetAsync("/wheels/7");
        Assert.Equal(HttpStatusCode.NotFound, maker.Answer.StatusCode);
        await maker.GetAsync("/");
        Assert.Contains("href=\"/recipes\"", maker.Html, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_recipe_is_written_step_by_step_and_every_fault_is_told_beside_its_field()
    {
        await using var site = await Evening.BeginAsync(open: false);
        using var maker = await site.MakerAsync();
        await maker.GetAsync("/recipes/new");
        (string, string)[] head = [("name", "Plain"), ("style", "tomme"), ("milk", "goat"), ("about", "")];
        await maker.PostAsync(maker.Form("/recipes/new", [.. head, ("newkind", "heat"), ("do", "add:0")]));
        await maker.PostAsync(maker.Form("/recipes/new", [.. head, ("do", "add:1"), ("newkind", "renneting"), ("s1-celsius", "130")]));
        Assert.Contains("1. Warm the milk", maker.Text, StringComparison.Ordinal);
        Assert.Contains("2. Add the rennet", maker.Text, StringComparison.Ordinal);
        Assert.Contains("value=\"130\"", maker.Html, StringComparison.Ordinal);

        await maker.PostAsync(maker.Form("/recipes/new", [.. head, ("do", "save"), ("s2-flocMinutes", "soon")]));
        Assert.Equal(HttpStatusCode.UnprocessableEntity, maker.Answer.StatusCode);
        Assert.Contains("Temperature is 130 °C; it must be at least -1 and at most 100 °C (usual: 20 to 45 °C).", maker.Text, StringComparison.Ordinal);
        Assert.Contains("Flocculation time: “soon” is no number; write it as 12 or 12,5.", maker.Text, StringComparison.Ordinal);
        Assert.Contains("Moisture of the cheese is missing", maker.Text, StringComparison.Ordinal);
        Assert.Contains("href=\"#s1-celsius\"", maker.Html, StringComparison.Ordinal);
        Assert.Contains("id=\"s1-celsius\"", maker.Html, StringComparison.Ordinal);

        (string, string)[] right = [.. head, ("cheese-moisturePercent", "43,5"), ("s1-celsius", "62"), ("s2-imcuPerLitre", "40"), ("s2-flocMinutes", "14"), ("s2-multiplier", "3"), ("do", "save")];
        await maker.PostAsync(maker.Form("/recipes/new", right));
        Assert.Contains("Temperature is 62 °C, where 20 to 45 °C is usual: is that right?", maker.Text, StringComparison.Ordinal);
        Assert.Contains("No step salts the cheese", maker.Text, StringComparison.Ordinal);
        await maker.PostAsync(maker.Form("/recipes/new", right));
        Assert.Matches("^/recipes/[0-9a-f-]{36}$", maker.Path);
        Assert.Contains("Moisture of the cheese 43,5 %", maker.Text, StringComparison.OrdinalIgnoreCase);

        await maker.GetAsync($"{maker.Path}/edit");
        await maker.PostAsync(maker.Form("/recipes/", ("name", "Plain"), ("style", "tomme"), ("milk", "goat"), ("do", "drop:1")));
        Assert.Matches("^/recipes/[0-9a-f-]{36}$", maker.Path);
        Assert.DoesNotContain("Warm the milk", maker.Html[maker.Html.IndexOf("<details", StringComparison.Ordinal)..maker.Html.IndexOf("newkind", StringComparison.Ordinal)], StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_file_comes_in_whole_or_is_looked_at_first_and_goes_out_again()
    {
        await using var site = await Evening.BeginAsync(open: false);
        using var maker = await site.MakerAsync();
        await maker.GetAsync("/recipes/import");
        await maker.PostAsync(maker.Form("/recipes/import", ("text", "{ \"trierRecipe\": 1, \"nmae\": \"x\" }")));
        Assert.Contains("“nmae” is no member of a recipe here", maker.Text, StringComparison.Ordinal);
        await maker.PostAsync(maker.Form("/recipes/import", ("text", RecipeJson.Write(ShippedRecipes.Named("washed-curd")!))));
        Assert.Matches("^/recipes/[0-9a-f-]{36}$", maker.Path);
        using var file = await maker.FetchAsync($"{maker.Path}/trier.json");
        Assert.Equal(RecipeJson.Write(ShippedRecipes.Named("washed-curd")!), await file.Content.ReadAsStringAsync(TestContext.Current.CancellationToken));
        using var linked = await maker.FetchAsync($"{maker.Path}/schema-org.json");
        Assert.Contains("\"@type\": \"Recipe\"", await linked.Content.ReadAsStringAsync(TestContext.Current.CancellationToken), StringComparison.Ordinal);

        await maker.GetAsync("/recipes/import");
        await maker.PostAsync(maker.Form("/recipes/import", ("text", """{"@type":"Recipe","name":"Farm","recipeInstructions":["Warm to 90 F.","Cut."]}""")));
        Assert.Contains("steps and numbers were guessed from its words", maker.Text, StringComparison.Ordinal);
        Assert.Contains("value=\"32,22\"", maker.Html, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Recipes_are_compared_with_their_differences_counted_and_in_words()
    {
        await using var site = await Evening.BeginAsync(open: false);
        using var maker = await site.MakerAsync();
        await maker.GetAsync("/recipes/compare?r=alpine&r=alpine-with-propionic&r=nothing");
        Assert.Contains("Add propionic culture: in Alpine type, with propionic culture, not in Alpine type.", maker.Text, StringComparison.Ordinal);
        var told = Regex.Match(maker.Text, @"(?<n>\d+) things differ\.", RegexOptions.None, TimeSpan.FromSeconds(1));
        Assert.Equal(int.Parse(told.Groups["n"].Value, System.Globalization.CultureInfo.InvariantCulture), Regex.Count(maker.Html, ": not the same</span>", RegexOptions.None, TimeSpan.FromSeconds(1)));
        await maker.GetAsync("/recipes/compare");
        Assert.Contains("Tick two or more.", maker.Text, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_sheet_unfolds_every_number_and_refuses_impossible_milk_with_what_was_typed_kept()
    {
        await using var site = await Evening.BeginAsync(open: false);
        using var maker = await site.MakerAsync();
        await maker.GetAsync("/recipes/alpine-with-propionic/sheet?milk=20&fat=3,6&treatment=Raw");
        Assert.Equal(HttpStatusCode.OK, maker.Answer.StatusCode);
        Assert.Contains("4 mL", maker.Text, StringComparison.Ordinal);
        var numbers = Regex.Count(maker.Html, "<details class=\"figure-line\">", RegexOptions.None, TimeSpan.FromSeconds(1));
        Assert.True(numbers > 20, $"{numbers} numbers");
        Assert.True(Regex.Count(maker.Html, "<dt>source</dt>", RegexOptions.None, TimeSpan.FromSeconds(1)) >= numbers);
        Assert.Contains("(read in the source)", maker.Text, StringComparison.Ordinal);
        Assert.Contains("Raw milk can carry germs", maker.Text, StringComparison.Ordinal);
        Assert.DoesNotContain(" safe", maker.Text, StringComparison.OrdinalIgnoreCase);

        await maker.GetAsync("/recipes/tomme/sheet?milk=-3&fat=60&wheels=2&protein=viel");
        Assert.Equal(HttpStatusCode.UnprocessableEntity, maker.Answer.StatusCode);
        Assert.Contains("Volume of milk is -3 L", maker.Text, StringComparison.Ordinal);
        Assert.Contains("Fat of the milk is 60 %", maker.Text, StringComparison.Ordinal);
        Assert.Contains("“viel” is no number", maker.Text, StringComparison.Ordinal);
        Assert.Contains("value=\"60\"", maker.Html, StringComparison.Ordinal);

        await maker.GetAsync("/recipes/tomme");
        await maker.PostAsync(maker.Form("/units"));
        await maker.GetAsync("/recipes/tomme/sheet?milk=5&fat=3.6&units=us");
        Assert.Contains("5 gal", maker.Text, StringComparison.Ordinal);
        Assert.Contains("89.6 °F", maker.Text, StringComparison.Ordinal);
    }

    [Fact]
    public async Task An_address_means_the_same_vat_in_whatever_units_it_is_shown()
    {
        await using var site = await Evening.BeginAsync(open: false);
        using var maker = await site.MakerAsync();
        const string Vat = "/recipes/tomme/sheet?milk=12%2C5&milk-temperature=4&fat=3%2C6&treatment=Raw&mould=15&lever=3&follower=1%2C2";
        await maker.GetAsync(Vat);
        Assert.Contains("12,5 L", maker.Text, StringComparison.Ordinal);
        Assert.Equal("2,5 mL", Rennet());
        await maker.PostAsync(maker.Form("/units"));
        Assert.Contains("3.3 gal", maker.Text, StringComparison.Ordinal);
        Assert.Equal("2,5 mL", Rennet());

        // The make begun from there is of that vat, and its page is too.
        await maker.PostAsync(maker.Form("/recipes/tomme/makes", ("name", "Same vat")));
        var make = maker.Path;
        await maker.GetAsync($"{make}/record");
        Assert.Contains("3.3 gal of cow", maker.Text, StringComparison.Ordinal);

        // A form shown in one unit and sent after the other was chosen elsewhere means what it was shown in.
        await maker.GetAsync("/recipes/tomme/sheet");
        Assert.Contains("US gallons", maker.Text, StringComparison.Ordinal);
        await maker.GetAsync(make);
        var touch = maker.Form($"{make}/steps/1", ("celsius", "89.6"));
        await maker.GetAsync("/recipes/tomme");
        await maker.PostAsync(maker.Form("/units"));
        await maker.PostAsync(touch);
        await maker.GetAsync($"{make}/record");
        Assert.Contains("32 °C", maker.Text, StringComparison.Ordinal);
        Assert.DoesNotContain("89,6", maker.Text, StringComparison.Ordinal);

        string Rennet() => Regex.Match(maker.Text, @"Rennet (?<n>\S+ (mL|tsp))( \((?<n>[\d.,]+ mL)\))?", RegexOptions.ExplicitCapture, TimeSpan.FromSeconds(1)).Groups["n"].Value.Replace('.', ',');
    }

    [Fact]
    public async Task The_key_for_other_units_keeps_what_stands_in_the_half_filled_form()
    {
        await using var site = await Evening.BeginAsync(open: false);
        using var maker = await site.MakerAsync();
        await maker.GetAsync("/recipes/tomme/sheet?units=metric&milk=12%2C5&milk-temperature=&fat=3%2C6&treatment=Raw&wheels=2&mould=15&lever=3&follower=1%2C2&rennet-strength=viel&show=us");
        Assert.Contains("How much milk, and which?", maker.Text, StringComparison.Ordinal);
        Assert.Equal(("3.30215", "3.6", "5.9055", "2.6455", "viel"), (Value("milk"), Value("fat"), Value("mould"), Value("follower"), Value("rennet-strength")));
        Assert.Equal("us", Value("units"));
        Assert.Contains("value=\"Raw\" checked", maker.Html, StringComparison.Ordinal);
        await maker.GetAsync($"/recipes/tomme/sheet?units=us&milk={Value("milk")}&mould={Value("mould")}&follower={Value("follower")}&show=metric");
        Assert.Equal(("12,5", "15", "1,2"), (Value("milk"), Value("mould"), Value("follower")));
        await maker.GetAsync("/recipes/tomme/sheet?units=us&milk=-1");
        Assert.Equal("-3,785", Value("milk"));

        string Value(string field) => Regex.Match(Regex.Match(maker.Html, $"<input[^>]* name=\"{field}\"[^>]*>", RegexOptions.None, TimeSpan.FromSeconds(1)).Value, "value=\"(?<v>[^\"]*)\"", RegexOptions.None, TimeSpan.FromSeconds(1)).Groups["v"].Value;
    }

    [Fact]
    public void The_vat_script_is_small_and_asks_no_other_site()
    {
        Assert.InRange(new FileInfo(SiteFiles.Path("vat.js")).Length, 1, 14_999);
        Assert.DoesNotContain("http", SiteFiles.Read("vat.js").Replace("plain http.", "", StringComparison.Ordinal), StringComparison.Ordinal);
    }
}
