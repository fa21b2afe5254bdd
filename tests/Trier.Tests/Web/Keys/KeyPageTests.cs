using System.Text;
using System.Text.RegularExpressions;
using Trier.Publishing.Keys;
using Trier.Tests.Web.Ballots;
using Trier.Trials.Tastings.Commitments;
using Trier.Trials.Tastings.Steps;

namespace Trier.Tests.Web.Keys;

/// <summary>The words of a sealed key over HTTP: read aloud, chained, checked by anyone after the reveal and never before.</summary>
public sealed partial class KeyPageTests
{
    [Fact]
    public async Task A_key_sealed_on_the_page_is_known_by_words_that_anyone_can_check_after_the_reveal_alone()
    {
        await using var evening = await Evening.BeginAsync(open: false);
        var trial = $"/trials/{evening.Trial.Value}";
        var page = $"/key/{evening.Trial.Value}";
        var stranger = evening.NewPhone();
        await stranger.GetAsync(page);
        Assert.Equal(System.Net.HttpStatusCode.NotFound, stranger.Answer.StatusCode);

        var maker = await evening.MakerAsync();
        await maker.GetAsync(trial);
        await maker.PostAsync(maker.Form($"{trial}/seal"));
        Assert.Contains("Read these five words aloud", maker.Text, StringComparison.Ordinal);
        var words = Words().Match(maker.Html).Groups["are"].Value;
        Assert.All(words.Split(' '), word => Assert.Contains(word, WordList.Words));
        Assert.Equal(5, words.Split(' ').Length);

        await stranger.GetAsync(page);
        Assert.Contains(words, stranger.Text, StringComparison.Ordinal);
        Assert.All(Evening.Names, name => Assert.DoesNotContain(name, stranger.Html, StringComparison.Ordinal));
        Assert.Equal(System.Net.HttpStatusCode.NotFound, (await stranger.FetchAsync($"{page}/key.json")).StatusCode);

        await evening.ActAsync<SealedTasting>(ready => ready.Open(evening.Trials.Now));
        await evening.ActAsync<OpenTasting>(open => open.Close(evening.Trials.Now));
        await stranger.GetAsync(page);
        Assert.All(Evening.Names, name => Assert.DoesNotContain(name, stranger.Html, StringComparison.Ordinal));
        await evening.ActAsync<ClosedTasting>(closed => closed.Reveal(evening.Trials.Now));

        await stranger.GetAsync(page);
        Assert.Contains("The list fits its words.", stranger.Text, StringComparison.Ordinal);
        Assert.Contains("It is the list the verdict was reached with.", stranger.Text, StringComparison.Ordinal);
        Assert.All(Evening.Names, name => Assert.Contains(name, stranger.Text, StringComparison.Ordinal));
        var (tasting, commitments) = KeyFile.Read(await (await stranger.FetchAsync($"{page}/key.json")).Content.ReadAsByteArrayAsync(TestContext.Current.CancellationToken)).Value;
        Assert.Equal(evening.Trial, tasting);
        Assert.Equal(words, commitments.Single().Words);
        Assert.True(CommitmentCheck.Of(tasting, commitments).Holds);
    }

    [Fact]
    public async Task A_withdrawal_before_the_first_plate_gives_new_words_that_follow_on_the_old()
    {
        await using var evening = await Evening.BeginAsync(open: false);
        var trial = $"/trials/{evening.Trial.Value}";
        var maker = await evening.MakerAsync();
        await maker.GetAsync(trial);
        await maker.PostAsync(maker.Form($"{trial}/seal"));
        var first = Words().Match(maker.Html).Groups["are"].Value;
        var wheel = (await evening.TastingAsync()).Book.Entries[3].Wheel.Value;
        await maker.GetAsync($"{trial}/wheels/{wheel}");
        await maker.PostAsync(maker.Form($"{trial}/withdraw", ("reason", "cracked")));
        var second = Words().Match(maker.Html).Groups["are"].Value;
        Assert.NotEqual(first, second);
        Assert.Contains("follow on the words of key 1, which are void", maker.Text, StringComparison.Ordinal);
        var commitments = (await evening.TastingAsync()).Book.Commitments;
        Assert.Equal([first, second], commitments.Select(one => one.Words));
        Assert.Equal($"previous {first}", commitments[1].Lines[3]);
        Assert.True(CommitmentCheck.Of(evening.Trial, commitments).Holds);
    }

    [GeneratedRegex("five-words lead\"><b>(?<are>[a-z ]+)</b>", RegexOptions.None, 1000)]
    private static partial Regex Words();
}
