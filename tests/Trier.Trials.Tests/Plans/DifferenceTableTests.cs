using Trier.Statistics.Designs;
using Trier.Trials.Makes;
using Trier.Trials.Plans;
using Trier.Trials.Plans.Differences;
using Trier.Trials.Plans.Factors;
using static Trier.Trials.Tests.Plans.Outlines;

namespace Trier.Trials.Tests.Plans;

public sealed class DifferenceTableTests
{
    private static readonly DifferenceTable Demo = DifferenceTable.Of(Outlines.Demo.Wheels, Day);

    [Fact]
    public void The_demo_s_ages_fall_into_bands_of_fourteen_days()
    {
        var age = Demo.Columns.Single(column => column.Kind == FactorKind.Age);
        Assert.Equal([168, 161, 154, 147, 140, 553], age.Numbers.Select(number => number!.Value));
        // From the youngest: 140 to 153, 154 to 167, 168 to 181, 553.
        Assert.Equal(["band 3", "band 2", "band 2", "band 1", "band 1", "band 4"], age.Levels.Select(level => level!));
        Assert.Equal("553 days", age.Values[5]);
    }

    [Fact]
    public void What_differs_from_the_recipe_made_most_often_is_boxed()
    {
        Assert.Equal("House", Demo.Wheels[Demo.Reference].Name);
        var age = Demo.Columns.IndexOf(Demo.Columns.Single(column => column.Kind == FactorKind.Age));
        // Two weeks and more from House's 168 days.
        Assert.Equal([false, false, true, true, true, true], Enumerable.Range(0, 6).Select(wheel => Demo.Differs(age, wheel)));
        Assert.Equal(["recipe", "age", "lysozyme", "milk", "milk year"], Demo.Columns.Select(column => column.Name));
        // The lightest, 1.66 kg, and the heaviest, 1.99 kg, are within a fifth.
        Assert.Equal(["heat treatment", "size"], Demo.Alike.Select(column => column.Name));
    }

    [Fact]
    public void What_came_with_the_old_wheel_hangs_on_one_cord()
    {
        var cord = Assert.Single(Demo.Cords);
        Assert.Equal(["age", "lysozyme", "milk", "milk year"], cord.Columns.Select(column => Demo.Columns[column].Name));
        Assert.Equal([5], cord.Wheels);
        Assert.Equal("Age, lysozyme, milk and milk year all change at once in Old Hot, and in no other wheel: no tasting of these wheels can take them apart.", DifferenceWords.Of(Demo, cord));
    }

    [Fact]
    public void Recipe_and_age_of_the_demo_move_together_and_what_does_not_tie_is_named()
    {
        var told = Demo.Told.Single(told => Demo.Columns[told.Column].Kind == FactorKind.Age);
        Assert.Equal((Telling.Together, 1), (told.Telling, told.Shared));
        Assert.Equal([[0, 3, 4], [1, 2, 5]], told.Groups.Select(group => group.ToArray()));
        Assert.Equal(["Short brine", "Thistle"], Demo.LoneRecipes.Order(StringComparer.Ordinal));
        Assert.Contains("Recipe and age move together: no wheel ties House, Short brine and House 2 to Thistle, Hot and Old Hot; what parts them may be the one or the other. Only if age works in a straight line can the two be told apart.", DifferenceWords.Knots(Demo));
        // One cord, age against recipe, two recipes with one wheel each.
        Assert.Equal(3, Demo.Knots);
        Assert.Equal("Six wheels, five differences, three knots.", DifferenceWords.Heading(Demo));
    }

    [Fact]
    public void Two_recipes_twice_over_two_milks_are_told_apart_and_say_so()
    {
        var table = Table(("lot 1", "a"), ("lot 2", "a"), ("lot 1", "b"), ("lot 2", "b"));
        Assert.Empty(table.Cords);
        Assert.Equal(Telling.Apart, Assert.Single(table.Told).Telling);
        Assert.Equal((0, 1), (table.RecipeShared!.Value, table.LeftOver!.Value));
        Assert.Equal(0, table.Knots);
        Assert.Contains("Taken one at a time, milk can be told from the recipe.", DifferenceWords.CanBeSaid(table));
    }

    [Fact]
    public void A_fully_confounded_pair_is_one_cord_with_the_recipe()
    {
        var table = Table(("lot 1", "a"), ("lot 1", "a"), ("lot 2", "b"), ("lot 2", "b"));
        Assert.Equal(Telling.Together, Assert.Single(table.Told).Telling);
        Assert.Equal([0, 1], Assert.Single(table.Cords).Columns);
        Assert.Contains("b can lead as a whole; no part of it can be named as the cause.", DifferenceWords.Of(table, table.Cords[0]), StringComparison.Ordinal);
        Assert.Contains("Recipe and milk move together: no wheel ties W1 and W2 to W3 and W4; what parts them may be the one or the other.", DifferenceWords.Knots(table));
    }

    [Fact]
    public void What_leaves_the_same_wheels_untied_is_one_knot()
    {
        var table = DifferenceTable.Of(Of(Wheel("A", "a", null, "lot 1", null, ("rind", "dry")), Wheel("A2", "a", null, "lot 1", null, ("rind", "dry")), Wheel("B", "b", null, "lot 2", null, ("rind", "washed"))).Wheels, Day);
        Assert.Contains("Recipe, rind and milk move together: no wheel ties A and A2 to B; what parts them may be any of these.", DifferenceWords.Knots(table));
        // The cord, the two things with the recipe, the recipe with one wheel.
        Assert.Equal(3, table.Knots);
    }

    [Fact]
    public void With_no_wheel_left_over_it_is_told_only_if_nothing_else_differs()
    {
        var table = Table(("lot 1", "a"), ("lot 2", "a"), ("lot 2", "b"));
        Assert.Equal(Telling.Saturated, Assert.Single(table.Told).Telling);
        Assert.Contains("Recipe and milk can be told apart only if nothing else differs: no wheel is left over.", DifferenceWords.Knots(table));
    }

    [Fact]
    public void Ages_that_nearly_follow_the_recipe_are_said_to()
    {
        // 60, 62, 90 and 92 days: bands part them wholly, and the number nearly: variance inflation 226.
        var table = DifferenceTable.Of(Of(Made("2025-07-01", "a"), Made("2025-06-29", "a"), Made("2025-06-01", "b"), Made("2025-05-30", "b")).Wheels, Day);
        var told = Assert.Single(table.Told);
        Assert.Equal(226, told.Inflation!.Value, 9);
        Assert.DoesNotContain("straight line", DifferenceWords.Knots(table)[^1], StringComparison.Ordinal);
        // 60 to 93 days with one wheel of each recipe in a band with the other's.
        var near = DifferenceTable.Of(Of(Made("2025-07-01", "a"), Made("2025-07-02", "a"), Made("2025-06-19", "b"), Made("2025-06-18", "b")).Wheels, Day);
        Assert.Equal(Telling.Same, Aliasing.Of(new Factor("recipe", near.Columns[0].Levels), [new Factor("age", ["1", "1", "1", "1"])]).Single().Telling);
    }

    [Fact]
    public void Two_wheels_of_one_vat_are_one_make()
    {
        var table = DifferenceTable.Of(Of(Made("2025-07-01", "a"), ("a too", Made("2025-07-01", "a").Facts), Made("2025-07-01", "b"), Made("2025-07-03", "b")).Wheels, Day);
        Assert.Equal(["a"], table.LoneRecipes);
        Assert.Contains("How far two wheels of one vat fall apart: a 2025-07-01 and a too are both a and of one day. That says nothing of the next make.", DifferenceWords.CanBeSaid(table));
        Assert.Contains("There is one make of a: its recipe and its vat day are one thing here.", DifferenceWords.Knots(table));
    }

    [Fact]
    public void What_is_not_written_down_is_left_out_and_named()
    {
        var table = DifferenceTable.Of(Of(Wheel("A", "a", null, null, null, ("rind", "washed")), Wheel("B", "b", null, null, null, ("rind", "dry")), Wheel("C", "b")).Wheels, Day);
        Assert.Empty(table.Cords);
        Assert.Null(table.RecipeShared);
        Assert.Contains("Rind is not written down for C, which is left out there.", DifferenceWords.CanBeSaid(table));
    }

    [Fact]
    public void A_late_cut_and_a_named_thing_of_one_s_own_are_differences_too()
    {
        var table = DifferenceTable.Of(Of(Wheel("A", "a", null, null, null, ("vat day, step 7, cut", "12 minutes late"), ("moon", "full")), Wheel("B", "b", null, null, null, ("moon", "new"))).Wheels, Day);
        Assert.Equal(["recipe", "step 7, cut", "moon"], table.Columns.Select(column => column.Name));
        Assert.Equal(["12 minutes late", "nothing noted"], table.Columns[1].Values.Select(value => value!));
        Assert.Equal(3, Assert.Single(table.Cords).Columns.Length);
    }

    [Fact]
    public void One_wheel_and_one_recipe_are_no_trouble()
    {
        Assert.Equal("One wheel, no differences, no knots.", DifferenceWords.Heading(DifferenceTable.Of(Of(Wheel("A", "a")).Wheels, null)));
        var days = DifferenceTable.Of(Of(Made("2025-07-01", "a"), Made("2025-05-01", "a")).Wheels, null);
        Assert.Equal("make date", Assert.Single(days.Columns).Name);
        Assert.Contains("All are a: the tasting compares days and wheels, not recipes.", DifferenceWords.CanBeSaid(days));
        Assert.Throws<ArgumentException>(() => DifferenceTable.Of([], Day));
    }

    private static (string Name, WheelFacts Facts) Made(string day, string recipe) => Wheel($"{recipe} {day}", recipe, day);

    private static DifferenceTable Table(params (string Lot, string Recipe)[] wheels) =>
        DifferenceTable.Of(Of([.. wheels.Select((wheel, i) => Wheel($"W{i + 1}", wheel.Recipe, null, wheel.Lot))]).Wheels, Day);
}
