using Trier.Tests.Web.Ballots;
using Trier.Trials.Tastings.Steps;
using Trier.Web.Verdicts.Publishing;

namespace Trier.Tests.Web.Publishing;

/// <summary>Publishing on the real site: nothing before the maker says so, a page for anyone after it, versions that stay.</summary>
public sealed class PublishPageTests
{
    [Fact]
    public async Task A_verdict_is_published_put_right_and_both_versions_stay_for_anyone_to_read()
    {
        await using var evening = await Evening.BeginAsync();
        var codes = await evening.ServedAsync("Ada");
        await evening.ActAsync<OpenTasting>(open => open.Close(evening.Trials.Now));
        var (stranger, maker) = (evening.NewPhone(), await evening.MakerAsync());
        var live = $"/published/{evening.Trial.Value}";
        await evening.ActAsync<ClosedTasting>(closed => closed.Reveal(evening.Trials.Now));
        Assert.Equal(System.Net.HttpStatusCode.NotFound, (await stranger.FetchAsync(live)).StatusCode);
        await maker.GetAsync($"/trials/{evening.Trial.Value}/publish");
        Assert.Contains("Nobody agreed to be named.", maker.Text, StringComparison.Ordinal);
        await maker.PostAsync(maker.Form($"/trials/{evening.Trial.Value}/publish"));
        Assert.Contains("Version 1 stands since", maker.Text, StringComparison.Ordinal);
        await stranger.GetAsync(live);
        Assert.Contains("version 1 of", stranger.Text, StringComparison.Ordinal);
        Assert.DoesNotContain("Ada", stranger.Text, StringComparison.Ordinal);
        Assert.Contains("default-src 'none'", stranger.Answer.Headers.GetValues("Content-Security-Policy").Single(), StringComparison.Ordinal);

        var order = string.Join(" > ", codes);
        await maker.PostAsync(maker.Form($"/trials/{evening.Trial.Value}/publish/mend", ("taster", (await evening.TasterAsync("Ada")).Id.Value.ToString()), ("places", order), ("reason", "the paper was lost"), ("witness", "")));
        Assert.Contains("Say who else looked at it.", maker.Text, StringComparison.Ordinal);
        Assert.Contains(order.Replace(">", "&gt;", StringComparison.Ordinal), maker.Html, StringComparison.Ordinal);
        await maker.PostAsync(maker.Form($"/trials/{evening.Trial.Value}/publish/mend", ("taster", (await evening.TasterAsync("Ada")).Id.Value.ToString()), ("places", order), ("reason", "the paper was lost"), ("witness", "Bruno")));
        await maker.PostAsync(maker.Form($"/trials/{evening.Trial.Value}/publish"));
        Assert.Contains("1 ballot was put right.", maker.Text, StringComparison.Ordinal);
        await stranger.GetAsync(live);
        Assert.Contains("version 2 of", stranger.Text, StringComparison.Ordinal);
        Assert.Contains("1 ballot was put right.", stranger.Text, StringComparison.Ordinal);
        Assert.DoesNotContain("the paper was lost", stranger.Text, StringComparison.Ordinal);
        await stranger.GetAsync(live + "/1");
        Assert.Contains("version 1 of", stranger.Text, StringComparison.Ordinal);
        var bundle = await stranger.FetchAsync(live + "/2/bundle.zip");
        Assert.Equal("application/zip", bundle.Content.Headers.ContentType!.MediaType);
        Assert.Equal(System.Net.HttpStatusCode.NotFound, (await stranger.FetchAsync(live + "/3")).StatusCode);
    }

    [Theory]
    [InlineData("593 > 417 = 862 > 238")]
    [InlineData("593, 417=862 ; 238")]
    [InlineData("593 417 = 862 238")]
    public void An_order_is_read_as_people_write_it(string text) =>
        Assert.Equal("593 > 417 = 862 > 238", PlacesText.Write(PlacesText.Read(text).Value));

    [Theory]
    [InlineData("", "at least two codes")]
    [InlineData("593 > 593", "twice")]
    [InlineData("593 > best", "is no code")]
    public void A_wrong_order_is_refused_in_a_sentence(string text, string said) =>
        Assert.Contains(said, Assert.Single(PlacesText.Read(text).Problems).Sentence, StringComparison.Ordinal);
}
