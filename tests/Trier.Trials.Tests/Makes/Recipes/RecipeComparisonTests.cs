using System.Collections.Immutable;
using CsCheck;
using Trier.Trials.Makes.Recipes;

namespace Trier.Trials.Tests.Makes.Recipes;

public sealed class RecipeComparisonTests
{
    private static readonly Recipe Warmer = (Drafts.With(5, Drafts.Step("cook", ("celsius", 41), ("minutes", 30))) with { Name = "Warmer" }).Read();

    [Fact]
    public void One_changed_aim_is_one_difference_told_in_words()
    {
        var compared = RecipeComparison.Of([Drafts.Recipe, Warmer]);
        Assert.Equal(1, compared.Differences);
        Assert.Equal("One thing differs: a trial can ask what it does.", compared.InWords());
        var line = Assert.Single(compared.Rows.SelectMany(row => row.Lines), line => line.Differs);
        Assert.Equal("Temperature: 37 °C in House tomme, 41 °C in Warmer; 4 °C apart.", line.Sentence);
    }

    [Fact]
    public void A_gap_inside_the_tolerance_says_so()
    {
        var close = (Drafts.With(5, Drafts.Step("cook", ("celsius", 37.5), ("minutes", 30))) with { Name = "Close" }).Read();
        var line = Assert.Single(RecipeComparison.Of([Drafts.Recipe, close]).Rows.SelectMany(row => row.Lines), line => line.Differs);
        Assert.EndsWith("0.5 °C apart, no more than the tolerance.", line.Sentence, StringComparison.Ordinal);
    }

    [Fact]
    public void A_step_only_one_recipe_has_is_one_difference_and_the_rest_stay_aligned()
    {
        var washed = (Drafts.Plain with { Name = "Washed", Steps = Drafts.Plain.Steps.Insert(5, Drafts.Step("drain", ("percentOfMilk", 30), ("minutes", 8))) }).Read();
        var compared = RecipeComparison.Of([Drafts.Recipe, washed]);
        Assert.Equal(1, compared.Differences);
        Assert.Equal("Draw the whey: in Washed, not in House tomme.", Assert.Single(compared.Rows.SelectMany(row => row.Lines), line => line.Differs).Sentence);
        Assert.Equal(12, compared.Rows.Length);
    }

    [Fact]
    public void Doses_in_different_units_are_not_subtracted()
    {
        var packet = (Drafts.With(1, new() { Kind = "add", What = "culture", Called = "mesophilic", Per = "g/L", Aims = [new("dose", 0.02)] }) with { Name = "Packet" }).Read();
        var lines = RecipeComparison.Of([Drafts.Recipe, packet]).Rows.SelectMany(row => row.Lines).Where(line => line.Differs).ToList();
        Assert.Equal(["Counted in", "Dose"], lines.Select(line => line.Name));
        Assert.DoesNotContain("apart", lines[1].Sentence, StringComparison.Ordinal);
    }

    [Fact]
    public void Three_recipes_stand_side_by_side_and_equal_names_are_told_apart()
    {
        var compared = RecipeComparison.Of([Drafts.Recipe, Warmer, Drafts.Recipe]);
        Assert.Equal(["House tomme (1)", "Warmer", "House tomme (3)"], compared.Names);
        Assert.Equal("Temperature: 37 °C in House tomme (1) and House tomme (3), 41 °C in Warmer; 4 °C apart.", Assert.Single(compared.Rows.SelectMany(row => row.Lines), line => line.Differs).Sentence);
    }

    [Fact]
    public void Every_step_stands_in_exactly_one_row_in_its_own_order_and_a_recipe_never_differs_from_itself()
    {
        var steps = Gen.Int[0, Drafts.Plain.Steps.Length - 1].Array[1, 14];
        Gen.Select(steps, steps, steps).Sample((one, two, three) =>
        {
            ImmutableArray<Recipe> recipes = [.. new[] { one, two, three }.Select((picked, i) => Recipe.Stored(Drafts.Plain with { Name = $"R{i}", Steps = [.. picked.Select(index => Drafts.Plain.Steps[index])] }))];
            var compared = RecipeComparison.Of(recipes);
            for (var i = 0; i < 3; i++) Assert.Equal(recipes[i].Steps, compared.Rows.Select(row => row.Steps[i]).OfType<Step>());
            Assert.Equal(0, RecipeComparison.Of([recipes[0], recipes[0]]).Differences);
            Assert.Equal(RecipeComparison.Of([recipes[0], recipes[1]]).Differences, RecipeComparison.Of([recipes[1], recipes[0]]).Differences);
        });
    }
}
