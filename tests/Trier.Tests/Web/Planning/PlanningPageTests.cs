using System.Net;
using Trier.Statistics.Randomness;
using Trier.Tests.Web.Ballots;
using Trier.Trials.Common;
using Trier.Trials.Makes;
using Trier.Trials.Tastings.Steps;

namespace Trier.Tests.Web.Planning;

/// <summary>The planning page over HTTP, without script.</summary>
public sealed class PlanningPageTests
{
    [Fact]
    public async Task What_cannot_be_told_apart_and_what_the_company_can_show_stand_on_one_page()
    {
        await using var evening = await Evening.BeginAsync(open: false);
        var maker = await evening.MakerAsync();
        var path = $"/trials/{evening.Trial.Value}/planning";
        await WorkedOutAsync(maker, path);
        Assert.Contains("Four wheels, three differences", maker.Text, StringComparison.Ordinal);
        Assert.Contains("There is one make each of Amberholt recipe, Birkmoor recipe, Corrieglen recipe and Dunfennel recipe: recipe and vat day are one thing there.", maker.Text, StringComparison.Ordinal);
        Assert.Contains("With 4 wheels no two can be told apart by fewer than 7 tasters, even if all agree. 3 are too few for that.", maker.Text, StringComparison.Ordinal);
        Assert.Contains("3, expected", maker.Text, StringComparison.Ordinal);
        Assert.Contains("Two recipes, two makes each", maker.Text, StringComparison.Ordinal);

        await maker.PostAsync(maker.Form($"{path}\"", ("tasters", "24"), ("preference", "2,5"), ("age", "150")));
        await WorkedOutAsync(maker, path);
        Assert.Contains("24, expected", maker.Text, StringComparison.Ordinal);
        Assert.Contains("right, 2,5 to 1", maker.Text, StringComparison.Ordinal);
        Assert.Equal((150, 24, 2.5), (await evening.TastingAsync()).Book.Plan.Aims is { } aims ? (aims.AgeDays!.Value, aims.Tasters!.Value, aims.Preference!.Value) : default);
        // 150 days before the second of May 2026, the last of four vats within a fortnight.
        Assert.Contains("03/12/2025 150 days", maker.Text, StringComparison.Ordinal);
    }

    [Fact]
    public async Task What_cannot_be_planned_with_is_told_field_by_field_and_nothing_is_kept()
    {
        await using var evening = await Evening.BeginAsync(open: false);
        var maker = await evening.MakerAsync();
        var path = $"/trials/{evening.Trial.Value}/planning";
        await maker.GetAsync(path);
        await maker.PostAsync(maker.Form($"{path}\"", ("tasters", "1"), ("preference", "much"), ("age", "1,5")));
        Assert.Equal(HttpStatusCode.UnprocessableEntity, maker.Answer.StatusCode);
        Assert.Contains("The planner works from 2 to 200 tasters.", maker.Text, StringComparison.Ordinal);
        Assert.Contains("“much” is no number.", maker.Text, StringComparison.Ordinal);
        Assert.Contains("Write a whole number.", maker.Text, StringComparison.Ordinal);
        Assert.Null((await evening.TastingAsync()).Book.Plan.Aims);
    }

    [Fact]
    public async Task A_second_make_of_a_recipe_is_entered_with_one_press_and_the_plan_keeps_its_aims()
    {
        await using var evening = await Evening.BeginAsync(open: false);
        var maker = await evening.MakerAsync();
        var path = $"/trials/{evening.Trial.Value}/planning";
        await maker.GetAsync(path);
        await maker.PostAsync(maker.Form($"{path}\"", ("tasters", "12"), ("preference", ""), ("age", "")));
        await maker.PostAsync(maker.Form($"{path}/again"));
        var book = (await evening.TastingAsync()).Book;
        var added = book.Entries[^1];
        Assert.Equal(2, book.Entries.Count(entry => entry.Facts.Recipe == added.Facts.Recipe));
        Assert.EndsWith(" 2", added.Name, StringComparison.Ordinal);
        await maker.GetAsync($"/trials/{evening.Trial.Value}/plan");
        await maker.PostAsync(maker.Form($"/trials/{evening.Trial.Value}/plan\"", ("title", "Five tommes")));
        book = (await evening.TastingAsync()).Book;
        Assert.Equal(("Five tommes", 12), (book.Plan.Title, book.Plan.Aims!.Tasters!.Value));
    }

    [Fact]
    public async Task After_sealing_the_page_can_be_read_and_not_changed()
    {
        await using var evening = await Evening.BeginAsync(open: true);
        var maker = await evening.MakerAsync();
        var path = $"/trials/{evening.Trial.Value}/planning";
        await maker.GetAsync(path);
        Assert.DoesNotContain("Work it out", maker.Text, StringComparison.Ordinal);
        Assert.Equal(HttpStatusCode.OK, maker.Answer.StatusCode);
    }

    [Fact]
    public async Task One_act_makes_the_trial_that_follows_from_a_verdict()
    {
        await using var evening = await Evening.BeginAsync(open: true);
        await evening.ActAsync<OpenTasting>(open => open.Close(evening.Trials.Now));
        await evening.ActAsync<ClosedTasting>(closed => closed.Reveal(evening.Trials.Now));
        var maker = await evening.MakerAsync();
        await maker.GetAsync($"/trials/{evening.Trial.Value}/verdict");
        await maker.PostAsync(maker.Form($"/trials/{evening.Trial.Value}/follow-up"));
        var next = new TrialId(Guid.Parse(maker.Path.Split('/')[2]));
        Assert.NotEqual(evening.Trial, next);
        var draft = Assert.IsType<DraftTasting>(await evening.Trials.FindAsync(next, TestContext.Current.CancellationToken));
        Assert.Equal(evening.Trial, draft.Book.Plan.Aims!.Follows);
        Assert.Equal(4, draft.Book.Entries.Length);
        Assert.Equal(2, draft.Book.Entries.Select(entry => entry.Facts.Recipe).Distinct().Count());
        Assert.Equal(draft.Book.Entries[0].Wheel, draft.Book.Repeat);
        Assert.Contains("It follows an earlier trial", maker.Text, StringComparison.Ordinal);
        Assert.Contains("There were too few answers to judge, so the two that came first are asked again.", maker.Text, StringComparison.Ordinal);
    }

    private static async Task WorkedOutAsync(Phone maker, string path)
    {
        for (var look = 0; look < 60; look++)
        {
            await maker.GetAsync(path);
            if (!maker.Text.Contains("Panels are being simulated", StringComparison.Ordinal)) return;
        }

        Assert.Fail("The panels were not worked out.");
    }
}
