using System.Net;
using System.Text.RegularExpressions;
using Trier.Tests.Web.Ballots;

namespace Trier.Tests.Web.Makes;

/// <summary>A whole vat day on the real site, without script.</summary>
public sealed partial class VatDayPagesTests
{
    [Fact]
    public async Task A_whole_day_from_the_sheet_to_the_labels_and_into_a_trial()
    {
        await using var site = await Evening.BeginAsync(open: false);
        using var maker = await site.MakerAsync();
        await maker.GetAsync("/recipes/tomme/sheet?milk=12&fat=3,6&treatment=Raw&wheels=2");
        var began = DateTimeOffset.Now.AddHours(-20);
        await maker.PostAsync(maker.Form("/recipes/tomme/makes", ("name", "House, May"), ("begins", Clock(began))));
        Assert.Matches("^/makes/[0-9a-f-]{36}$", maker.Path);
        var make = maker.Path;
        Assert.Contains("step 1 of 18", maker.Text, StringComparison.Ordinal);

        var at = began;
        while (!Shown(maker).Contains("All steps are done.", StringComparison.Ordinal))
        {
            at = at.AddMinutes(30);
            Assert.True(at < DateTimeOffset.Now, "the day went past now");
            await TouchAsync(maker, ("when", Clock(at)));
            Assert.Equal(make, maker.Path);
        }

        await maker.GetAsync($"{make}/record");
        Assert.Contains("28 min later than planned", Regex.Replace(maker.Text, @"flocculation after 30 min, 16 min", "28 min", RegexOptions.None, TimeSpan.FromSeconds(1)), StringComparison.Ordinal);
        Assert.Contains("Hints from common practice, not findings.", maker.Text, StringComparison.Ordinal);

        await maker.GetAsync($"{make}/wheels");
        await maker.PostAsync(maker.Form($"{make}/wheels", ("name-1", "May a"), ("mass-1", "0,71"), ("name-2", "May b"), ("mass-2", "0,69"), ("differs-2", "pressed twice as hard")));
        Assert.Contains("2 wheels.", maker.Text, StringComparison.Ordinal);
        await maker.GetAsync($"{make}/labels");
        Assert.Equal(2, Regex.Count(maker.Html, "class=\"qr\"", RegexOptions.None, TimeSpan.FromSeconds(1)));
        Assert.Contains("/wheels/2", maker.Text, StringComparison.Ordinal);
        Assert.Contains("raw milk", maker.Text, StringComparison.Ordinal);
        await maker.GetAsync("/wheels/2");
        Assert.Contains("pressed twice as hard", maker.Text, StringComparison.Ordinal);
        Assert.Contains("cow's, 12 litres, 3,6 % fat", maker.Text, StringComparison.Ordinal);

        await maker.GetAsync($"/trials/{site.Trial.Value}");
        var known = Regex.Match(maker.Html, "<option value=\"(?<id>[0-9a-f-]{36})\">May b", RegexOptions.None, TimeSpan.FromSeconds(1)).Groups["id"].Value;
        await maker.PostAsync(maker.Form($"/trials/{site.Trial.Value}/wheels", ("known", known)));
        var entry = (await site.TastingAsync()).Book.Entries.Single(entry => entry.Name == "May b");
        Assert.Equal("pressed twice as hard", entry.Facts["done otherwise"]);
        Assert.Contains(entry.Facts.Values, fact => fact.Key.StartsWith("vat day: ", StringComparison.Ordinal));

        // A correction of what the form asks for leaves what the make wrote.
        await maker.GetAsync($"/trials/{site.Trial.Value}/wheels/{entry.Wheel.Value}");
        await maker.PostAsync(maker.Form($"/trials/{site.Trial.Value}/wheels/{entry.Wheel.Value}", ("notes", "soft")));
        entry = (await site.TastingAsync()).Book.Entries.Single(one => one.Name == "May b");
        Assert.Equal(("soft", "pressed twice as hard"), (entry.Facts["notes"], entry.Facts["done otherwise"]));
    }

    [Fact]
    public async Task One_touch_stamps_the_time_a_deviation_is_said_and_undo_takes_it_back()
    {
        await using var site = await Evening.BeginAsync(open: false);
        using var maker = await site.MakerAsync();
        await BeginAsync(maker, "alpine");
        var make = maker.Path;
        await TouchAsync(maker, ("celsius", "40"));
        Assert.Contains("Otherwise. Warm the milk:", maker.Text, StringComparison.Ordinal);
        Assert.Contains("40 °C, 8 °C above the aim of 32 °C", maker.Text, StringComparison.Ordinal);
        Assert.Contains("Add thermophilic bulk or whey starter", Shown(maker), StringComparison.Ordinal);
        await maker.PostAsync(maker.Form($"{make}/undo"));
        Assert.Contains("Warm the milk", Shown(maker), StringComparison.Ordinal);
        Assert.DoesNotContain("8 °C above", maker.Text, StringComparison.Ordinal);
    }

    [Fact]
    public async Task The_same_touch_twice_is_one_and_a_wrong_reading_keeps_what_was_typed()
    {
        await using var site = await Evening.BeginAsync(open: false);
        using var maker = await site.MakerAsync();
        await BeginAsync(maker, "alpine");
        var make = maker.Path;
        var touch = maker.Form($"{make}/steps/1", ("celsius", "32"));
        await maker.PostAsync(touch);
        await maker.PostAsync(touch);
        Assert.Equal(HttpStatusCode.OK, maker.Answer.StatusCode);
        Assert.Contains("step 2 of 17", maker.Text, StringComparison.Ordinal);
        await TouchAsync(maker);
        await TouchAsync(maker, ("pH", "66"), ("note", "slow?"));
        Assert.Equal(HttpStatusCode.UnprocessableEntity, maker.Answer.StatusCode);
        Assert.Contains("pH is 66; it must be at least 0 and at most 14", maker.Text, StringComparison.Ordinal);
        Assert.Contains("value=\"slow?\"", maker.Html, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_file_whose_dates_have_two_meanings_is_asked_about_and_read_as_told()
    {
        await using var site = await Evening.BeginAsync(open: false);
        using var maker = await site.MakerAsync();
        await BeginAsync(maker, "alpine");
        var make = maker.Path;
        await maker.GetAsync($"{make}/meter");
        const string File = "time,pH\n3/5/2001 9:30 AM,6.60\n3/5/2001 10:30 AM,6.58\n";
        await maker.UploadAsync(maker.Form($"{make}/meter", ("kind", "pH")), "file", "us.csv", File);
        Assert.Equal(HttpStatusCode.UnprocessableEntity, maker.Answer.StatusCode);
        Assert.Contains("Say which comes first, the day or the month.", maker.Text, StringComparison.Ordinal);
        await maker.UploadAsync(maker.Form($"{make}/meter", ("kind", "pH"), ("time", "time"), ("date", ""), ("value", "pH"), ("order", "month")), "file", "us.csv", File);
        Assert.Contains("us.csv: 2 readings of pH, 05/03 09:30", maker.Text, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_slip_is_corrected_later_and_the_record_shows_both_values()
    {
        await using var site = await Evening.BeginAsync(open: false);
        using var maker = await site.MakerAsync();
        await BeginAsync(maker, "alpine");
        var make = maker.Path;
        await TouchAsync(maker, ("celsius", "23"));
        await maker.GetAsync($"{make}/steps/1");
        await maker.PostAsync(maker.Form($"{make}/steps/1/correct", ("celsius", "32"), ("why", "digits swapped")));
        Assert.Equal($"{make}/record", maker.Path);
        Assert.Contains("32 °C", maker.Text, StringComparison.Ordinal);
        Assert.Matches(@"was \d\d:\d\d; 23 °C, corrected \d\d:\d\d: digits swapped", maker.Text);
        await maker.GetAsync($"{make}/steps/9");
        Assert.Equal(HttpStatusCode.NotFound, maker.Answer.StatusCode);
    }

    [Fact]
    public async Task A_meter_s_file_is_read_by_its_names_drawn_and_its_columns_are_remembered()
    {
        await using var site = await Evening.BeginAsync(open: false);
        using var maker = await site.MakerAsync();
        await BeginAsync(maker, "alpine");
        var make = maker.Path;
        await maker.GetAsync($"{make}/meter");
        await maker.UploadAsync(maker.Form($"{make}/meter", ("kind", "pH")), "file", "curve.csv", "a,b\n0,6.60\n30,6.58\n60,6.41\n");
        Assert.Equal(HttpStatusCode.UnprocessableEntity, maker.Answer.StatusCode);
        Assert.Contains("Which column holds the time? There are a, b.", maker.Text, StringComparison.Ordinal);
        await maker.UploadAsync(maker.Form($"{make}/meter", ("kind", "pH"), ("time", "a"), ("date", ""), ("value", "b")), "file", "curve.csv", "a,b\n0,6.60\n30,6.58\n60,6.41\n");
        Assert.Equal($"{make}/record", maker.Path);
        Assert.Contains("curve.csv: 3 readings of pH", maker.Text, StringComparison.Ordinal);
        Assert.Contains("Line: the meter.", maker.Text, StringComparison.Ordinal);
        await maker.GetAsync($"{make}/meter");
        await maker.UploadAsync(maker.Form($"{make}/meter", ("kind", "pH")), "file", "next.csv", "a,b\n90,6.30\n120,6.21\n");
        Assert.Contains("next.csv: 2 readings of pH", maker.Text, StringComparison.Ordinal);
    }

    // By hand, pH falls 0.08 an hour from 6.66 after 60 min: 6.60 after 105 min. With a meter's error of 0.03 Fieller's band runs from 72 to 267 min; times are told to five minutes.
    [Fact]
    public async Task The_vat_day_and_the_record_say_when_the_next_pH_is_met_and_say_so_where_it_does_not_fall()
    {
        await using var site = await Evening.BeginAsync(open: false);
        using var maker = await site.MakerAsync();
        var now = DateTimeOffset.Now;
        var began = now.AddTicks(-(now.Ticks % TimeSpan.FromMinutes(5).Ticks));
        await maker.GetAsync("/recipes/alpine/sheet?milk=12&fat=3,6&treatment=Raw");
        await maker.PostAsync(maker.Form("/recipes/alpine/makes", ("name", "House"), ("begins", Clock(began))));
        var make = maker.Path;
        Assert.DoesNotContain("At this pace", maker.Text, StringComparison.Ordinal);
        await maker.GetAsync($"{make}/meter");
        await maker.UploadAsync(maker.Form($"{make}/meter", ("kind", "pH")), "file", "curve.csv", "minutes,pH\n0,6.74\n30,6.70\n60,6.66\n");
        string At(int minutes) => @"(\d\d/\d\d )?" + began.AddMinutes(minutes).ToString("HH:mm", System.Globalization.CultureInfo.InvariantCulture);
        var said = $@"At this pace pH 6,60 \(Let it ripen\) is met about {At(105)}, between {At(70)} and {At(265)}\.";
        Assert.Matches(said, maker.Text);
        Assert.Contains("least-squares line through the last readings", maker.Text, StringComparison.Ordinal);
        await maker.GetAsync(make);
        Assert.Matches(said, maker.Text);

        await maker.GetAsync($"{make}/meter");
        await maker.UploadAsync(maker.Form($"{make}/meter", ("kind", "pH")), "file", "flat.csv", "minutes,pH\n40,6.70\n60,6.71\n80,6.70\n");
        Assert.Contains("The last readings do not fall clearly: when pH 6,60 (Let it ripen) is met cannot be foretold yet.", maker.Text, StringComparison.Ordinal);
        await maker.GetAsync(make);
        Assert.Contains("The last readings do not fall clearly", maker.Text, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Things_on_the_shelf_have_histories_and_a_checked_meter_ends_the_remark()
    {
        await using var site = await Evening.BeginAsync(open: false);
        using var maker = await site.MakerAsync();
        await BeginAsync(maker, "alpine");
        var make = maker.Path;
        await TouchAsync(maker);
        await TouchAsync(maker);
        await TouchAsync(maker, ("pH", "6,6"));
        await maker.GetAsync($"{make}/record");
        Assert.Contains("no check of a pH meter is written within a day before", maker.Text, StringComparison.Ordinal);

        await maker.GetAsync("/shelf");
        Assert.Contains("The shelf is empty.", maker.Text, StringComparison.Ordinal);
        await maker.PostAsync(maker.Form("/shelf", ("kind", "PhMeter"), ("name", " "), ("expires", "30/02/2026")));
        Assert.Contains("“30/02/2026” is no day of the calendar", maker.Text, StringComparison.Ordinal);
        await maker.PostAsync(maker.Form("/shelf", ("kind", "PhMeter"), ("name", "Small meter"), ("expires", "")));
        Assert.Contains("Not checked within a day", maker.Text, StringComparison.Ordinal);
        await maker.PostAsync(maker.Form("/shelf/", ("deed", "Checked"), ("note", "7,00 as 7,02")));
        Assert.DoesNotContain("Not checked within a day", maker.Text, StringComparison.Ordinal);
        await maker.GetAsync($"{make}/record");
        Assert.DoesNotContain("no check of a pH meter", maker.Text, StringComparison.Ordinal);

        await maker.GetAsync("/shelf");
        await maker.PostAsync(maker.Form("/shelf", ("kind", "Brine"), ("name", "Brine of May"), ("expires", "")));
        await maker.PostAsync(maker.Form("/shelf/", ("deed", "Used"), ("wheels", "3, 4"), ("raw", "yes")));
        Assert.Contains("used, wheels 3, 4 (raw milk)", maker.Text, StringComparison.Ordinal);
        Assert.Contains("boil it before wheels of other milk go in", maker.Text, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_used_recipe_that_ships_becomes_the_maker_s_own_and_a_change_begins_its_second_version()
    {
        await using var site = await Evening.BeginAsync(open: false);
        using var maker = await site.MakerAsync();
        await BeginAsync(maker, "tomme");
        await maker.GetAsync("/recipes");
        var own = Regex.Match(maker.Html, "href=\"(?<path>/recipes/[0-9a-f-]{36})\"", RegexOptions.None, TimeSpan.FromSeconds(1)).Groups["path"].Value;
        await maker.GetAsync($"{own}/edit");
        await maker.PostAsync(maker.Form(own, ("name", "Tomme, slower"), ("style", "tomme"), ("milk", "cow"), ("do", "save"), ("about", ""),
            ("s2-what", "culture"), ("s2-per", "% of milk"), ("s3-what", "calcium chloride"), ("s3-per", "g/L")));
        Assert.Equal(own, maker.Path);
        Assert.Contains("Version 2", maker.Text, StringComparison.Ordinal);
        Assert.Contains("used by a make", maker.Text, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_vat_is_split_at_a_step_and_each_part_goes_its_own_way_to_its_wheel()
    {
        await using var site = await Evening.BeginAsync(open: false);
        using var maker = await site.MakerAsync();
        await maker.GetAsync("/recipes/alpine/sheet?milk=24&fat=3,2&treatment=Pasteurised&wheels=2");
        var began = DateTimeOffset.Now.AddHours(-30);
        await maker.PostAsync(maker.Form("/recipes/alpine/makes", ("name", "Split"), ("begins", Clock(began))));
        var make = maker.Path;
        var at = began;
        for (var touch = 1; touch <= 4; touch++) await TouchAsync(maker, ("when", Clock(at = at.AddMinutes(20))));
        await maker.GetAsync($"{make}/split");
        Assert.Contains("Not now. The milk is setting: a gel cannot be divided.", maker.Text, StringComparison.Ordinal);
        await maker.GetAsync(make);
        for (var touch = 5; touch <= 7; touch++) await TouchAsync(maker, ("when", Clock(at = at.AddMinutes(20))));
        Assert.Contains("Cook the curd", Shown(maker), StringComparison.Ordinal);

        await maker.GetAsync($"{make}/split");
        await maker.PostAsync(maker.Form($"{make}/split", ("name-1", "hot"), ("name-2", "mild"), ("what-2-1", "7 celsius"), ("value-2-1", "480")));
        Assert.Equal(HttpStatusCode.UnprocessableEntity, maker.Answer.StatusCode);
        Assert.Contains("Temperature is 480 °C; it must be at least -1 and at most 100 °C", maker.Text, StringComparison.Ordinal);
        await maker.PostAsync(maker.Form($"{make}/split", ("name-1", "hot"), ("name-2", "mild"), ("what-2-1", "7 celsius"), ("value-2-1", "48"), ("what-2-2", "9 left-out")));
        Assert.Equal(make, maker.Path);
        Assert.Contains("Split: hot, mild", maker.Text, StringComparison.Ordinal);

        await maker.GetAsync($"{make}?part=2");
        Assert.Contains("48 °C", Shown(maker), StringComparison.Ordinal);
        await TouchAsync(maker, ("when", Clock(at.AddMinutes(60))), ("celsius", "51"));
        Assert.Contains("Cook the curd: 51 °C, 3 °C above the aim of 48 °C.", maker.Text, StringComparison.Ordinal);
        Assert.Contains("Stir at the top", Shown(maker), StringComparison.Ordinal);
        await maker.GetAsync($"{make}?part=1");
        Assert.Contains("52 °C", Shown(maker), StringComparison.Ordinal);
        foreach (var lane in new[] { 1, 2 })
        {
            await maker.GetAsync($"{make}?part={lane}");
            var when = at.AddMinutes(61);
            while (!Shown(maker).Contains("data-step=\"end\"", StringComparison.Ordinal)) await TouchAsync(maker, ("when", Clock(when = when.AddMinutes(20))));
        }

        Assert.Contains("All steps are done.", Shown(maker), StringComparison.Ordinal);
        await maker.GetAsync($"{make}/record");
        Assert.Contains("hot, 50 %: as the recipe; mild, 50 %: cook the curd 48 °C, let the curd settle left out", maker.Text, StringComparison.Ordinal);
        // Steps 7 to 17 once a part; the mild part goes without one.
        Assert.Equal((11, 10), (Regex.Count(maker.Html, "class=\"quiet\">hot<", RegexOptions.None, TimeSpan.FromSeconds(1)), Regex.Count(maker.Html, "class=\"quiet\">mild<", RegexOptions.None, TimeSpan.FromSeconds(1))));
        await maker.GetAsync($"{make}/wheels");
        Assert.Contains("value=\"Split hot\"", maker.Html, StringComparison.Ordinal);
        await maker.PostAsync(maker.Form($"{make}/wheels", ("mass-1", "1,05"), ("part-1", "1"), ("mass-2", "1,09"), ("part-2", "2")));
        Assert.Contains("2 wheels.", maker.Text, StringComparison.Ordinal);
        await maker.GetAsync("/wheels/2");
        Assert.Contains("vat part mild", maker.Text, StringComparison.Ordinal);
        Assert.Contains("cook the curd: temperature aimed at 48 °C", maker.Text, StringComparison.Ordinal);
        await maker.GetAsync($"{make}/steps/7?part=2");
        await maker.PostAsync(maker.Form($"{make}/steps/7/correct", ("celsius", "48")));
        await maker.GetAsync("/wheels/2");
        Assert.DoesNotContain("51 °C", maker.Text, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_step_names_its_lot_and_the_lot_tells_where_it_went()
    {
        await using var site = await Evening.BeginAsync(open: false);
        using var maker = await site.MakerAsync();
        await maker.GetAsync("/shelf");
        await maker.PostAsync(maker.Form("/shelf", ("kind", "Culture"), ("name", "Old culture"), ("expires", "1/2/2020")));
        var lot = maker.Path;
        await maker.GetAsync("/shelf");
        await maker.PostAsync(maker.Form("/shelf", ("kind", "Brine"), ("name", "Brine of May"), ("expires", "")));
        var brine = maker.Path;
        await BeginAsync(maker, "alpine");
        var make = maker.Path;
        await TouchAsync(maker, ("celsius", "32"));
        Assert.Contains("Old culture, past its date", Shown(maker), StringComparison.Ordinal);
        Assert.DoesNotContain("selected", Shown(maker), StringComparison.Ordinal);
        await TouchAsync(maker, ("used", lot["/shelf/".Length..]));
        await maker.GetAsync($"{make}/record");
        Assert.Contains("thermometer not checked within 90 days", maker.Text, StringComparison.Ordinal);
        Assert.Contains("Old culture past its date", maker.Text, StringComparison.Ordinal);
        Assert.Contains("“Old culture”, used at step 2, was past its date.", maker.Text, StringComparison.Ordinal);
        await maker.GetAsync(lot);
        Assert.Contains("used, House , step 2", maker.Text, StringComparison.Ordinal);

        await maker.GetAsync(make);
        while (!Shown(maker).Contains("data-kind=\"brine\"", StringComparison.Ordinal)) await TouchAsync(maker);
        await TouchAsync(maker, ("used", brine["/shelf/".Length..]));
        await maker.GetAsync($"{make}/wheels");
        await maker.PostAsync(maker.Form($"{make}/wheels", ("mass-1", "1,05")));
        await maker.GetAsync(brine);
        Assert.Contains("salted no. 1", maker.Text, StringComparison.Ordinal);
        Assert.Contains("Raw-milk wheels went through it since it was last boiled", maker.Text, StringComparison.Ordinal);
        await maker.GetAsync("/wheels/1");
        Assert.Contains("brine Brine of May", maker.Text, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("metric", @"\d\.\d|\d C\b|°F|\d (gal|lb|psi)\b", "40 °C, 8 °C above the aim of 32 °C", "40")]
    [InlineData("us", @"\d,\d|°C|\d (kPa|kg)\b", "104 °F, 14.4 °F above the aim of 89.6 °F", "104")]
    public async Task Every_page_of_making_writes_numbers_and_units_in_one_way(string units, string strange, string otherwise, string typed)
    {
        await using var site = await Evening.BeginAsync(open: false);
        using var maker = await site.MakerAsync();
        await maker.GetAsync("/recipes/alpine");
        await maker.PostAsync(maker.Form("/units", ("units", units)));
        await maker.GetAsync("/recipes/tomme/sheet?milk=6.5&fat=3,6&treatment=Raw");
        await maker.PostAsync(maker.Form("/recipes/tomme/makes", ("name", "House")));
        var make = maker.Path;
        await TouchAsync(maker, ("celsius", typed));
        Assert.Contains(otherwise, maker.Text, StringComparison.Ordinal);
        OneWay();
        await TouchAsync(maker);
        await TouchAsync(maker, ("celsius", "400"));
        Assert.Equal(HttpStatusCode.UnprocessableEntity, maker.Answer.StatusCode);
        OneWay();
        foreach (var path in new[] { "/recipes", "/recipes/alpine", "/recipes/alpine-with-propionic/sheet?milk=6.5&treatment=Pasteurised", "/recipes/tomme/sheet?milk=-3&treatment=Raw", "/recipes/compare?r=alpine&r=tomme&r=cheddared", "/makes", make, $"{make}/record", $"{make}/split", $"{make}/steps/1", $"{make}/wheels" })
        {
            await maker.GetAsync(path);
            OneWay();
        }

        await maker.PostAsync(maker.Form($"{make}/wheels", ("mass-1", "1.06")));
        OneWay();
        await maker.GetAsync("/wheels/1");
        OneWay();

        // Workings keep the units of their source, a law its section; the unit key names both systems.
        void OneWay()
        {
            var told = Regex.Replace(maker.Html, "<div class=\"working\">.*?</details>|<caption>.*?</caption>|<(?:form|p)[^>]*unit-choice.*?</(?:form|p)>|\\([^)]*CFR[^)]*\\)|data-[a-z]+=\"[^\"]*\"|<head>.*?</head>", " ", RegexOptions.Singleline, TimeSpan.FromSeconds(5));
            told = WebUtility.HtmlDecode(Regex.Replace(told, "<[^>]+>", " ", RegexOptions.None, TimeSpan.FromSeconds(5)));
            var found = Regex.Match(told, strange, RegexOptions.None, TimeSpan.FromSeconds(5));
            Assert.False(found.Success, $"{maker.Path}: …{told[Math.Max(0, found.Index - 60)..Math.Min(told.Length, found.Index + 40)]}…");
        }
    }

    private static async Task BeginAsync(Phone maker, string recipe)
    {
        await maker.GetAsync($"/recipes/{recipe}/sheet?milk=12&fat=3,6&treatment=Raw");
        await maker.PostAsync(maker.Form($"/recipes/{recipe}/makes", ("name", "House")));
        Assert.StartsWith("/makes/", maker.Path, StringComparison.Ordinal);
    }

    /// <summary>The section of the step in hand: the one that is not hidden.</summary>
    private static string Shown(Phone maker) => WebUtility.HtmlDecode(Regex.Matches(Regex.Replace(maker.Html, "<div class=\"vat-lane\"[^>]* hidden[^>]*>.*?</div>\\s*(?=<div class=\"vat-lane\"|<p class=\"vat-state\")", "", RegexOptions.Singleline, TimeSpan.FromSeconds(2)), "<section class=\"vat-step\"(?<rest>.*?)</section>", RegexOptions.Singleline, TimeSpan.FromSeconds(1))
        .Select(match => match.Value).Single(section => !section[..section.IndexOf('>', StringComparison.Ordinal)].Contains(" hidden", StringComparison.Ordinal)));

    private static Task<Phone> TouchAsync(Phone maker, params (string Name, string Value)[] given)
    {
        var shown = Shown(maker);
        var fields = Regex.Matches(shown, "<input type=\"hidden\" name=\"(?<name>[^\"]+)\" value=\"(?<value>[^\"]*)\"", RegexOptions.None, TimeSpan.FromSeconds(1))
            .Select(match => KeyValuePair.Create(match.Groups["name"].Value, WebUtility.HtmlDecode(match.Groups["value"].Value)))
            .Where(field => given.All(one => one.Name != field.Key)).Concat(given.Select(field => KeyValuePair.Create(field.Name, field.Value))).ToList();
        var action = Regex.Match(shown, "action=\"(?<to>[^\"]+)\"", RegexOptions.None, TimeSpan.FromSeconds(1)).Groups["to"].Value;
        return maker.PostAsync((action, fields));
    }

    private static string Clock(DateTimeOffset at) => at.ToString("yyyy-MM-dd HH:mm", System.Globalization.CultureInfo.InvariantCulture);
}
