using Trier.Publishing.Recipes;
using Trier.Trials.Makes.Recipes;
using Trier.Trials.Makes.Sheets;

namespace Trier.Publishing.Tests.Recipes;

/// <summary>Recipes that ship must come to what they say.</summary>
public sealed class ShippedFiguresTests
{
    public static TheoryData<string> Names => [.. ShippedRecipes.All.Select(shipped => shipped.Key)];

    [Theory]
    [MemberData(nameof(Names))]
    public void Water_that_is_added_brings_the_vat_to_the_temperature_the_next_step_aims_at(string name)
    {
        var recipe = ShippedRecipes.Named(name)!;
        var (parts, celsius, waters) = (100.0, 0.0, 0);
        for (var i = 0; i < recipe.Steps.Length; i++)
        {
            var step = recipe.Steps[i];
            if (step.Kind == StepKind.Drain && step[Target.PercentOfMilk] is { } drawn) parts -= drawn.Value;
            if (step.Addition?.Kind == AdditionKind.Water && step[Target.Celsius] is { } warm)
            {
                var water = step[Target.Dose]!.Value;
                celsius = ((parts * celsius) + (water * warm.Value)) / (parts + water);
                parts += water;
                waters++;
                var next = recipe.Steps.Skip(i + 1).First(later => later[Target.Celsius] is not null)[Target.Celsius]!.Value;
                Assert.InRange(celsius, next - 1, next + 1);
            }
            else
            {
                celsius = step[Target.Celsius]?.Value ?? celsius;
            }
        }

        Assert.Equal(name == "washed-curd" ? 1 : 0, waters);
    }

    // The usual vats of a kitchen: 12 and 20 litres of average milk, one wheel in the recipe's own mould.
    [Theory]
    [MemberData(nameof(Names))]
    public void The_planned_time_in_brine_brings_the_salt_that_is_aimed_at(string name)
    {
        var recipe = ShippedRecipes.Named(name)!;
        foreach (var litres in new[] { 12.0, 20 })
        {
            var sheet = MakeSheet.Of(recipe, Vat.Read(new() { Litres = litres }, recipe.Milk).Value);
            Assert.All(sheet.Steps.Where(step => step.Step.Kind == StepKind.Brine), step =>
            {
                var salt = Assert.Single(step.Figures, figure => figure.Name == "Salt after the planned time");
                Assert.InRange(recipe[Target.SaltPercent]!.Value, salt.Low!.Value, salt.High!.Value);
                Assert.DoesNotContain(step.Notes, note => note.Contains("aimed at", StringComparison.Ordinal));
            });
        }
    }
}
