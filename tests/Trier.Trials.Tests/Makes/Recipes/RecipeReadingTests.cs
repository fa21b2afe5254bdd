using Trier.Trials.Makes.Recipes;

namespace Trier.Trials.Tests.Makes.Recipes;

public sealed class RecipeReadingTests
{
    [Fact]
    public void A_whole_draft_becomes_a_recipe_and_comes_back_as_the_same_draft()
    {
        var read = Recipe.Read(Drafts.Plain);
        Assert.True(read.Ok, string.Join(" ", read.Problems.Select(problem => problem.Sentence)));
        Assert.Empty(read.Value.Questions);
        Assert.Equal(read.Value.Recipe, read.Value.Recipe.ToDraft().Read());
        Assert.Equal(TimeSpan.FromMinutes(42), read.Value.Recipe.Steps[3].Takes);
        Assert.Equal(TimeSpan.FromMinutes(15), read.Value.Recipe.Steps[4].Takes);
    }

    [Theory]
    [InlineData("heat", "celsius", 130, "Temperature is 130 °C; it must be at least -1 and at most 100 °C (usual: 20 to 45 °C).")]
    [InlineData("ripen", "pH", 15, "pH is 15; it must be at least 0 and at most 14 (usual: 6.3 to 6.8).")]
    [InlineData("renneting", "flocMinutes", 0, "Flocculation time is 0 min; it must be above 0 and at most 300 min (usual: 8 to 25 min).")]
    [InlineData("brine", "brinePercent", 60, "Strength of the brine is 60 %; it must be above 0 and at most 26.5 % (usual: 16 to 23 %).")]
    public void Impossible_values_get_one_sentence_with_field_and_range(string kind, string key, double value, string sentence)
    {
        var index = Drafts.Plain.Steps.Select(step => step.Kind).ToList().IndexOf(kind);
        var step = Drafts.Plain.Steps[index];
        var bent = step with { Aims = [.. step.Aims.Where(aim => aim.Key != key), new AimDraft(key, value)] };
        var problem = Assert.Single(Recipe.Read(Drafts.With(index, bent)).Problems);
        Assert.Equal(($"steps[{index + 1}].{key}", sentence), (problem.Field, problem.Sentence));
    }

    [Fact]
    public void All_faults_are_told_at_once()
    {
        var draft = Drafts.Plain with
        {
            Name = " ",
            Style = "cheese",
            Milk = "yak",
            Cheese = [],
            Steps = [Drafts.Step("fly"), Drafts.Step("press", ("kilopascals", -1)), Drafts.Step("cut", ("millimetres", double.NaN), ("smell", 1)), new() { Kind = "add", What = "gold", Per = "cups" }],
        };
        Assert.Equal(
            ["name", "style", "milk", "cheese.moisturePercent", "steps[1].kind", "steps[2].kilopascals", "steps[2].minutes", "steps[3].smell", "steps[3].millimetres", "steps[4].what", "steps[4].per", "steps[4].dose"],
            Recipe.Read(draft).Problems.Select(problem => problem.Field));
    }

    [Fact]
    public void Possible_but_unusual_values_are_asked_about_and_not_refused()
    {
        var read = Recipe.Read(Drafts.With(5, Drafts.Step("cook", ("celsius", 62), ("minutes", 30))));
        var question = Assert.Single(read.Value.Questions);
        Assert.Equal("Temperature is 62 °C, where 33 to 58 °C is usual: is that right?", question.Sentence);
    }

    [Fact]
    public void An_order_that_makes_no_cheese_is_asked_about()
    {
        var steps = Drafts.Plain.Steps;
        var swapped = Drafts.Plain with { Steps = steps.SetItem(3, steps[4]).SetItem(4, steps[3]) };
        Assert.Contains(Recipe.Read(swapped).Value.Questions, question => question.Sentence == "The curd is cut before rennet is added: are the two swapped?");
        var unsalted = Drafts.Plain with { Steps = steps.RemoveAt(8) };
        Assert.Contains(Recipe.Read(unsalted).Value.Questions, question => question.Sentence.StartsWith("No step salts the cheese", StringComparison.Ordinal));
        var rising = Drafts.With(6, Drafts.Step("hoop", ("pH", 6.9)));
        Assert.Contains(Recipe.Read(rising).Value.Questions, question => question.Sentence == "pH is 6.9 here and 6.5 at an earlier step; in the vat it falls: is that right?");
    }

    [Fact]
    public void Something_else_that_is_added_must_be_named_since_guests_may_have_to_be_told()
    {
        var step = new StepDraft { Kind = "add", What = "something else", Per = "g/L", Aims = [new("dose", 1)] };
        Assert.Equal("steps[2].called", Assert.Single(Recipe.Read(Drafts.With(1, step)).Problems).Field);
    }

    [Fact]
    public void A_stored_recipe_stays_readable_when_ranges_narrow()
    {
        var beyond = Drafts.With(0, Drafts.Step("heat", ("celsius", 300)));
        Assert.False(Recipe.Read(beyond).Ok);
        Assert.Equal(300, Recipe.Stored(beyond).Steps[0][Target.Celsius]!.Value);
    }

    [Fact]
    public void A_tolerance_holds_the_aim_and_the_usual_one_stands_in_for_a_missing_one()
    {
        var own = new Aim(Target.Celsius, 52, 0.5);
        Assert.True(own.Meets(52.5));
        Assert.False(own.Meets(52.6));
        Assert.True(new Aim(Target.Minutes, 60).Meets(69));
        Assert.False(new Aim(Target.Minutes, 60).Meets(70));
        Assert.Equal("52 °C (give or take 0.5)", own.InWords());
        Assert.Equal("14 h", new Aim(Target.Minutes, 840).InWords());
    }

    [Fact]
    public void A_used_version_is_frozen_and_an_unused_one_is_written_over()
    {
        var other = (Drafts.Plain with { Name = "House tomme, warmer" }).Read();
        RecipeLine Line(bool used) => new(new(Guid.Empty), [new(3, Drafts.Recipe, DateTimeOffset.UnixEpoch, used)]);
        Assert.Equal(4, Line(used: true).NumberFor(other));
        Assert.Equal(3, Line(used: false).NumberFor(other));
        Assert.Null(Line(used: true).NumberFor(Drafts.Recipe));
    }
}
