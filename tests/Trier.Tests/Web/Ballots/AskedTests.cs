using System.Text.RegularExpressions;
using Trier.Trials.Plans;
using Trier.Trials.Tastings;
using Trier.Trials.Tastings.Steps;

namespace Trier.Tests.Web.Ballots;

public class AskedTests
{
    private static readonly BallotPlan All = BallotPlan.Of(true, true, ["salt", "sourness"], ["nutty", "grassy", "sharp", "milky", "buttery", "smooth"], again: true).Value;

    [Fact]
    public async Task The_rest_is_asked_after_the_places_and_counted_in_the_verdict()
    {
        await using var evening = await Evening.BeginAsync(asked: All);
        using var phone = evening.NewPhone();
        var door = await evening.DoorAsync("Ada");
        var served = await evening.ServedAsync("Ada");
        await phone.GetAsync(door.Path);
        await phone.PressAsync();
        for (var i = 0; i < served.Length; i++)
        {
            Assert.DoesNotContain("nutty", phone.Text, StringComparison.Ordinal);
            await phone.PressAsync(("liking", "7"));
        }

        Assert.Equal($"{door.Path}/places", phone.Path);
        foreach (var code in served) await phone.PressAsync(("move", $"place:{code}"));
        await phone.PressAsync();
        for (var i = 0; i < served.Length; i++)
        {
            Assert.Equal($"{door.Path}/more/{i + 1}", phone.Path);
            Assert.Contains("The salt is", phone.Text, StringComparison.Ordinal);
            Assert.Contains("sourness:", phone.Text, StringComparison.Ordinal);
            await phone.PressAsync(("right-0", "1"), ("right-1", "-1"), ("word", "nutty"), ("word", "milky"), ("again", "yes"));
        }

        Assert.Equal($"{door.Path}/review", phone.Path);
        await phone.PressAsync();
        Assert.Equal($"{door.Path}/sent", phone.Path);
        var said = (await evening.BallotAsync("Ada")).Counted!.Content.Answers[served[0]];
        Assert.Equal((1, -1, true, 7), (said.Salt!.Value, said.Amount("sourness")!.Value, said.Again!.Value, said.Liking!.Value));
        Assert.Equal(["nutty", "milky"], said.Words);

        await evening.ActAsync<OpenTasting>(tasting => tasting.Close(evening.Trials.Now));
        await evening.ActAsync<ClosedTasting>(tasting => tasting.Reveal(evening.Trials.Now));
        using var maker = await evening.MakerAsync();
        await maker.GetAsync($"/trials/{evening.Trial.Value}/verdict");
        Assert.Contains("Was the sourness right?", maker.Text, StringComparison.Ordinal);
        Assert.Contains("Would you serve it again?", maker.Text, StringComparison.Ordinal);
        Assert.Contains("How many ticked each word", maker.Text, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Words_stand_in_another_order_for_each_taster_and_in_the_same_for_one()
    {
        await using var evening = await Evening.BeginAsync(asked: All);
        using var phone = evening.NewPhone();
        var orders = new List<string>();
        foreach (var name in new[] { "Ada", "Bruno", "Cleo" })
        {
            var own = new List<string>();
            for (var sample = 1; sample <= 4; sample++)
            {
                await phone.GetAsync($"{(await evening.DoorAsync(name)).Path}/more/{sample}");
                own.Add(string.Join(' ', Regex.Matches(phone.Html, "name=\"word\" value=\"(?<word>\\w+)\"", RegexOptions.None, TimeSpan.FromSeconds(1)).Select(match => match.Groups["word"].Value)));
            }

            orders.Add(Assert.Single(own.Distinct()));
        }

        Assert.Equal(3, orders.Distinct().Count());
        Assert.All(orders, order => Assert.Equal(6, order.Split(' ').Distinct().Count()));
    }

    [Fact]
    public async Task A_ballot_that_asks_for_places_alone_goes_straight_to_them()
    {
        await using var evening = await Evening.BeginAsync(asked: BallotPlan.Of(false, false, [], [], again: false).Value);
        using var phone = evening.NewPhone();
        var door = await evening.DoorAsync("Ada");
        await phone.GetAsync(door.Path);
        await phone.PressAsync();
        Assert.Equal($"{door.Path}/places", phone.Path);
        foreach (var code in await evening.ServedAsync("Ada")) await phone.PressAsync(("move", $"place:{code}"));
        await phone.PressAsync();
        await phone.PressAsync();
        Assert.Equal($"{door.Path}/sent", phone.Path);
    }

    [Fact]
    public async Task The_host_chooses_what_is_asked_and_sees_it_before_sealing()
    {
        await using var evening = await Evening.BeginAsync(open: false);
        using var maker = await evening.MakerAsync();
        await maker.GetAsync($"/trials/{evening.Trial.Value}/plan");
        await maker.PressAsync(("asks-salt", "yes"), ("asks-firmness", "yes"), ("right", "sourness"), ("words", "a, b, c, d, e, f, g, h, i, j, k, l, m"));
        Assert.Contains("At most 2 properties", maker.Text, StringComparison.Ordinal);
        Assert.Contains("there are 13", maker.Text, StringComparison.Ordinal);
        await maker.GetAsync($"/trials/{evening.Trial.Value}/plan");
        await maker.PressAsync(("asks-firmness", "yes"), ("right", "sourness"), ("words", "nutty, grassy"));
        Assert.Contains("The ballot asks a liking and a free line for each sample, then places, then the firmness, the sourness, 2 words to tick. About 3 minutes a taster", maker.Text, StringComparison.Ordinal);
        Assert.Equal(["firmness", "sourness"], (await evening.TastingAsync()).Book.Asked.Right);

        await maker.GetAsync($"/trials/{evening.Trial.Value}/ballot-preview");
        Assert.Equal(4, Regex.Count(maker.Html, "<iframe", RegexOptions.None, TimeSpan.FromSeconds(1)));
        foreach (var step in new[] { "first", "sample", "places", "rest", "paper", "large" })
        {
            await maker.GetAsync($"/trials/{evening.Trial.Value}/ballot-preview/{step}");
            Assert.Contains("Ada", maker.Text, StringComparison.Ordinal);
            Assert.Contains("frame-ancestors 'self'", Assert.Single(maker.Answer.Headers.GetValues("Content-Security-Policy")), StringComparison.Ordinal);
        }
    }

    [Fact]
    public void A_plan_without_a_word_about_the_ballot_asks_what_every_ballot_asked() =>
        Assert.Equal((true, true, false), (BallotPlan.Usual.Liking, BallotPlan.Usual.Remark, BallotPlan.Usual.AsksAfter));

    [Fact]
    public async Task A_junior_has_five_faces_fewer_steps_and_a_parents_yes()
    {
        await using var evening = await Evening.BeginAsync(asked: All);
        using var phone = evening.NewPhone();
        var door = await evening.DoorAsync("Ada");
        await phone.GetAsync(door.Path);
        await phone.PressAsync(("junior", "yes"));
        var ada = await evening.TasterAsync("Ada");
        Assert.True(ada.Junior);
        Assert.Contains((await evening.TastingAsync()).Book.Log, logged => logged.Event is Trials.Tastings.Events.TasterSignedIn { Junior: true } signed && signed.Taster == ada.Id);
        Assert.Equal(5, Regex.Count(phone.Html, "class=\"face\"", RegexOptions.None, TimeSpan.FromSeconds(1)));
        Assert.DoesNotContain("In a word", phone.Text, StringComparison.Ordinal);
        for (var i = 0; i < 4; i++) await phone.PressAsync(("liking", "9"));
        foreach (var code in await evening.ServedAsync("Ada")) await phone.PressAsync(("move", $"place:{code}"));
        await phone.PressAsync();
        Assert.Equal($"{door.Path}/review", phone.Path);
        Assert.Contains("I love it", phone.Text, StringComparison.Ordinal);
        await phone.PressAsync();
        Assert.Equal($"{door.Path}/sent", phone.Path);
    }

    [Fact]
    public async Task A_scribe_writes_the_whole_ballot_on_one_page()
    {
        await using var evening = await Evening.BeginAsync(asked: All);
        using var phone = evening.NewPhone();
        var door = await evening.DoorAsync("Cleo");
        var served = await evening.ServedAsync("Cleo");
        await phone.GetAsync($"{door.Path}/scribe");
        Assert.Contains("Writing for Cleo", phone.Text, StringComparison.Ordinal);
        await phone.PressAsync(("deed", "keep"), ($"liking-{served[0]}", "8"), ($"place-{served[0]}", "x"));
        Assert.Contains($"The place of {served[0]} is a whole number from 1 to 4.", phone.Text, StringComparison.Ordinal);
        Assert.Empty((await evening.BallotAsync("Cleo")).All);

        await phone.PressAsync(("deed", "keep"), ($"liking-{served[0]}", "8"), ($"place-{served[0]}", "2"));
        Assert.Contains("Places begin with 1 and leave none out", phone.Text, StringComparison.Ordinal);
        await phone.PressAsync(("deed", "keep"), ($"liking-{served[0]}", "8"), ($"place-{served[0]}", ""), ($"words-{served[0]}", "nutty"), ($"again-{served[0]}", "no"), ($"right-1-{served[0]}", "0"));
        Assert.Contains("Kept with the host.", phone.Text, StringComparison.Ordinal);
        Assert.Equal(BallotStage.Tasting, (await evening.BallotAsync("Cleo")).Current!.Stage);

        await phone.PressAsync(("deed", "send"), ($"place-{served[1]}", "1"), ($"place-{served[0]}", "2"));
        Assert.Equal($"{door.Path}/sent", phone.Path);
        var sent = (await evening.BallotAsync("Cleo")).Counted!;
        Assert.Equal((BallotSource.Scribe, BallotStage.Sent), (sent.Source, sent.Stage));
        Assert.Equal([[served[1]], [served[0]]], sent.Content.Places);
        var said = sent.Content.Answers[served[0]];
        Assert.Equal((8, false, 0), (said.Liking!.Value, said.Again!.Value, said.Amount("sourness")!.Value));
    }

    [Fact]
    public async Task Words_after_the_reveal_are_kept_as_that_and_no_ballot_moves()
    {
        await using var evening = await Evening.BeginAsync();
        using var phone = evening.NewPhone();
        await BallotWalkTests.WholeWalkAsync(evening, phone, "Ada");
        await evening.ActAsync<OpenTasting>(tasting => tasting.Close(evening.Trials.Now));
        await evening.ActAsync<ClosedTasting>(tasting => tasting.Reveal(evening.Trials.Now));
        var before = (await evening.BallotAsync("Ada")).All;
        var door = await evening.DoorAsync("Ada");
        await phone.GetAsync(door.Path);
        await phone.PressAsync(("words", " "));
        Assert.Contains("Write something first", phone.Text, StringComparison.Ordinal);
        await phone.PressAsync(("words", "I would put Birkmoor first now"));
        Assert.Contains("It is kept as said after the reveal; your ballot does not move.", phone.Text, StringComparison.Ordinal);
        Assert.Equal(before, (await evening.BallotAsync("Ada")).All);
        using var maker = await evening.MakerAsync();
        await maker.GetAsync($"/trials/{evening.Trial.Value}/verdict");
        Assert.Contains("I would put Birkmoor first now", maker.Text, StringComparison.Ordinal);

        await phone.PostAsync(phone.Form($"{door.Path}/agree", ("named", "yes")));
        Assert.Equal(new Agreed(true, false), (await evening.TasterAsync("Ada")).Agreed);
        await maker.GetAsync($"/trials/{evening.Trial.Value}/slips");
        Assert.Contains("For the one taster who agreed to be named.", maker.Text, StringComparison.Ordinal);
        Assert.All(Evening.Names, name => Assert.Contains(name, maker.Html, StringComparison.Ordinal));
        await phone.PostAsync(($"{door.Path}/agree", []));
        await maker.GetAsync($"/trials/{evening.Trial.Value}/slips");
        Assert.DoesNotContain("Ada", maker.Text, StringComparison.Ordinal);
    }
}
