using System.Net;
using System.Text.RegularExpressions;
using Trier.Tests.Web.Ballots;

namespace Trier.Tests.Web.Makes;

/// <summary>What hardly can be, what holds wheels back, and what was written wrong and is put right.</summary>
public sealed partial class VatDayPagesTests
{
    [Fact]
    public async Task A_reading_that_hardly_can_be_is_asked_about_once_and_kept_when_it_comes_again()
    {
        await using var site = await Evening.BeginAsync(open: false);
        using var maker = await site.MakerAsync();
        await BeginAsync(maker, "alpine");
        var make = maker.Path;
        await TouchAsync(maker, ("celsius", "75"));
        Assert.Equal(HttpStatusCode.UnprocessableEntity, maker.Answer.StatusCode);
        Assert.Contains("Temperature is 75 °C, where 20 to 45 °C is usual at this step: is the thermometer right? Touch again to keep it.", maker.Text, StringComparison.Ordinal);
        await TouchAsync(maker, ("celsius", "32"));
        await TouchAsync(maker);
        await TouchAsync(maker, ("pH", "5,0"));
        Assert.Equal(HttpStatusCode.UnprocessableEntity, maker.Answer.StatusCode);
        Assert.Contains("pH 5,00 is far below the aim of 6,6: such milk may already be curdling. Check the meter, and add no rennet before it is checked. Touch again to keep it.", maker.Text, StringComparison.Ordinal);
        // Another odd value is another question; the same one again is kept, and what is said of it is plain.
        await TouchAsync(maker, ("pH", "14"));
        Assert.Contains("pH 14,00 is outside what milk and curd show, about 4,4 to 7,2: is the meter right? Touch again to keep it.", maker.Text, StringComparison.Ordinal);
        await TouchAsync(maker, ("pH", "5,0"));
        Assert.Contains("Touch again to keep it.", maker.Text, StringComparison.Ordinal);
        Assert.Contains("name=\"sure-pH\" value=\"5,0\"", Shown(maker), StringComparison.Ordinal);
        await TouchAsync(maker, ("pH", "5,0"));
        Assert.Equal(make, maker.Path);
        Assert.Contains("add no rennet before it is checked.", maker.Text, StringComparison.Ordinal);
        Assert.Contains("Add the rennet", Shown(maker), StringComparison.Ordinal);
        await maker.GetAsync($"{make}/steps/3");
        await maker.PostAsync(maker.Form($"{make}/steps/3/correct", ("pH", "13")));
        Assert.Equal(HttpStatusCode.UnprocessableEntity, maker.Answer.StatusCode);
        await maker.PostAsync(maker.Form($"{make}/steps/3/correct", ("pH", "13")));
        Assert.Equal($"{make}/record", maker.Path);
    }

    [Fact]
    public async Task Acid_that_came_too_slowly_is_said_at_the_vat_in_the_record_and_of_every_wheel()
    {
        await using var site = await Evening.BeginAsync(open: false);
        using var maker = await site.MakerAsync();
        await maker.GetAsync("/recipes/alpine/sheet?milk=12&fat=3,6&treatment=Raw");
        var began = DateTimeOffset.Now.AddHours(-30);
        await maker.PostAsync(maker.Form("/recipes/alpine/makes", ("name", "Slow"), ("begins", Clock(began))));
        var make = maker.Path;
        var at = began;
        while (!Shown(maker).Contains("Press overnight", StringComparison.Ordinal)) await TouchAsync(maker, ("when", Clock(at = at.AddMinutes(20))));
        const string Words = "Hold back. 25 hours after the start the pH is 6,20, above 5,5: hold these wheels back, do not serve them (common practice, no source).";
        Assert.DoesNotContain("Hold back.", maker.Text, StringComparison.Ordinal);
        await TouchAsync(maker, ("when", Clock(began.AddHours(25).AddMinutes(1))), ("pH", "6,20"));
        Assert.Contains(Words, maker.Text, StringComparison.Ordinal);
        await TouchAsync(maker);
        Assert.Contains(Words, maker.Text, StringComparison.Ordinal);
        await maker.GetAsync($"{make}/record");
        Assert.Contains(Words, maker.Text, StringComparison.Ordinal);
        await maker.GetAsync($"{make}/wheels");
        await maker.PostAsync(maker.Form($"{make}/wheels", ("name-1", "Slow a"), ("mass-1", "1,1")));
        Assert.Contains(Words, maker.Text, StringComparison.Ordinal);
        await maker.GetAsync("/wheels/1");
        Assert.Contains(Words, maker.Text, StringComparison.Ordinal);

        await maker.GetAsync($"/trials/{site.Trial.Value}");
        var known = Regex.Match(maker.Html, "<option value=\"(?<id>[0-9a-f-]{36})\">Slow a", RegexOptions.None, TimeSpan.FromSeconds(1)).Groups["id"].Value;
        await maker.PostAsync(maker.Form($"/trials/{site.Trial.Value}/wheels", ("known", known)));
        Assert.Equal("pH 6,20 25 hours after the start, above 5,5", (await site.TastingAsync()).Book.Entries.Single(entry => entry.Name == "Slow a").Facts["hold back"]);
    }

    [Fact]
    public async Task A_weight_no_milk_yields_is_asked_about_and_a_wrong_one_corrected_later()
    {
        await using var site = await Evening.BeginAsync(open: false);
        using var maker = await site.MakerAsync();
        await BeginAsync(maker, "alpine");
        var make = maker.Path;
        await maker.GetAsync($"{make}/wheels");
        await maker.PostAsync(maker.Form($"{make}/wheels", ("name-1", "Heavy"), ("mass-1", "70")));
        Assert.Equal(HttpStatusCode.UnprocessableEntity, maker.Answer.StatusCode);
        Assert.Contains("These wheels weigh 70 kg together, more than a third of the 12,4 kg of milk they came from: is the weight right?", maker.Text, StringComparison.Ordinal);
        await maker.PostAsync(maker.Form($"{make}/wheels", ("name-1", "Heavy"), ("mass-1", "70")));
        Assert.Contains("One wheel.", maker.Text, StringComparison.Ordinal);
        await maker.GetAsync("/wheels/1");
        await maker.PostAsync(maker.Form("/wheels/1/weight", ("mass", "60")));
        Assert.Equal(HttpStatusCode.UnprocessableEntity, maker.Answer.StatusCode);
        await maker.PostAsync(maker.Form("/wheels/1/weight", ("mass", "1,05"), ("why", "a slip")));
        Assert.Equal("/wheels/1", maker.Path);
        Assert.Contains("size 1,05 kg", maker.Text, StringComparison.Ordinal);
        Assert.Matches("weight was 70 kg, corrected .*: a slip", maker.Text);
        await maker.PostAsync(maker.Form("/wheels/1/weight", ("mass", "1,05")));
        Assert.Contains("This says what stands already", maker.Text, StringComparison.Ordinal);
    }

    [Fact]
    public async Task The_moment_of_the_rennet_is_corrected_and_both_stand_in_the_record()
    {
        await using var site = await Evening.BeginAsync(open: false);
        using var maker = await site.MakerAsync();
        await maker.GetAsync("/recipes/alpine/sheet?milk=12&fat=3,6&treatment=Raw");
        var began = DateTimeOffset.Now.AddHours(-5);
        await maker.PostAsync(maker.Form("/recipes/alpine/makes", ("name", "Rennet"), ("begins", Clock(began))));
        var make = maker.Path;
        var at = began;
        for (var touch = 1; touch <= 5; touch++) await TouchAsync(maker, ("when", Clock(at = at.AddMinutes(20))));
        Assert.Contains("Cut the curd", Shown(maker), StringComparison.Ordinal);
        await maker.GetAsync($"{make}/steps/4");
        await maker.PostAsync(maker.Form($"{make}/steps/4/correct", ("started", at.AddMinutes(-13).ToString("HH:mm", System.Globalization.CultureInfo.InvariantCulture))));
        Assert.Equal($"{make}/record", maker.Path);
        Assert.Contains("flocculation after 13 min", maker.Text, StringComparison.Ordinal);
        Assert.Contains("flocculation after 20 min, corrected", maker.Text, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Labels_that_no_phone_could_follow_say_so_before_they_are_printed()
    {
        await using var site = await Evening.BeginAsync(open: false);
        using var maker = await site.MakerAsync();
        await BeginAsync(maker, "alpine");
        var make = maker.Path;
        await maker.GetAsync($"{make}/wheels");
        await maker.PostAsync(maker.Form($"{make}/wheels", ("name-1", "Here")));
        await maker.GetAsync($"{make}/labels");
        Assert.Contains("a phone will not reach it. Start Trier with trier serve --lan", maker.Text, StringComparison.Ordinal);
        await maker.GetAsync($"/trials/{site.Trial.Value}/poster");
        Assert.Contains("a phone will not reach it", maker.Text, StringComparison.Ordinal);
        Assert.False(Trier.Web.Hosting.PhoneAddress.IsOnlyHere("http://192.168.1.4:8417"));
    }
}
