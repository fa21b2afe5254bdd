using Trier.Trials.Makes.Days;
using Trier.Trials.Makes.Recipes;
using Trier.Trials.Tests.Makes.Recipes;

namespace Trier.Trials.Tests.Makes.Days;

public sealed class DoubtTests
{
    private static Step Of(StepKind kind) => Drafts.Recipe.Steps.First(step => step.Kind == kind);

    private static string? Question(StepKind kind, Target target, double reading) => Doubt.Of(Of(kind), target).FirstOrDefault(doubt => doubt.Holds(reading))?.Question;

    [Fact]
    public void A_ph_no_milk_or_curd_shows_is_asked_about()
    {
        Assert.Equal("pH {v} is outside what milk and curd show, about 4.4 to 7.2: is the meter right? Touch again to keep it.", Question(StepKind.Press, Target.Ph, 14));
        Assert.NotNull(Question(StepKind.Press, Target.Ph, 4.39));
        Assert.Null(Question(StepKind.Press, Target.Ph, 4.4));
        Assert.Null(Question(StepKind.Press, Target.Ph, 7.2));
    }

    [Fact]
    public void Milk_far_too_sour_before_the_rennet_is_asked_about_and_told_not_to_rennet()
    {
        var aim = Of(StepKind.Ripen)[Target.Ph]!.Value;
        Assert.Contains("such milk may already be curdling. Check the meter, and add no rennet before it is checked.", Question(StepKind.Ripen, Target.Ph, 5.0), StringComparison.Ordinal);
        Assert.Null(Question(StepKind.Ripen, Target.Ph, aim - 0.5));
        Assert.StartsWith("pH {v} is outside", Question(StepKind.Ripen, Target.Ph, 4.0), StringComparison.Ordinal);
        Assert.Null(Question(StepKind.Press, Target.Ph, 5.0));
    }

    [Fact]
    public void A_temperature_no_such_step_has_is_asked_about_but_never_the_recipe_s_own_aim()
    {
        Assert.Contains("{v}, where 20 to 45 °C is usual at this step", Question(StepKind.Heat, Target.Celsius, 75), StringComparison.Ordinal);
        Assert.Null(Question(StepKind.Heat, Target.Celsius, 33));
        var hot = Drafts.With(0, Drafts.Step("heat", ("celsius", 63))).Read().Steps[0];
        Assert.DoesNotContain(Doubt.Of(hot, Target.Celsius), doubt => doubt.Holds(63));
    }
}
