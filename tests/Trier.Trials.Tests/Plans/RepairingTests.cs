using Trier.Trials.Plans.Differences;
using Trier.Trials.Plans.Repairs;
using static Trier.Trials.Tests.Plans.Outlines;

namespace Trier.Trials.Tests.Plans;

public sealed class RepairingTests
{
    [Fact]
    public void For_the_demo_leaving_the_old_wheel_out_undoes_most_for_its_price()
    {
        var repairs = Repairing.Of(DifferenceTable.Of(Demo.Wheels, Day), Day);
        Assert.Equal((RepairKind.LeaveOut, "W6", "Leave Old Hot out, for a tasting of its own"), (repairs[0].Kind, repairs[0].Subject, repairs[0].Deed));
        Assert.True(repairs[0].Least);
        Assert.Single(repairs, repair => repair.Least);
        Assert.Contains(repairs, repair => repair is { Kind: RepairKind.MakeAgain, Subject: "Thistle", Deed: "Make Thistle a second time, on another day", Price: "One more vat day, and one more sample on every plate." });
        Assert.Contains(repairs, repair => repair.Kind == RepairKind.SameAge);
        Assert.Contains(repairs, repair => repair.Kind == RepairKind.KeepHalf);
        Assert.Equal(RepairKind.Anchor, repairs[^1].Kind);
        Assert.All(repairs.SkipLast(1), repair => Assert.True(repair.Loosens > 0));
        Assert.All(repairs, repair => Assert.EndsWith(".", repair.Price, StringComparison.Ordinal));
    }

    [Fact]
    public void Waiting_loosens_the_age_alone_and_the_wheel_compared_with_stays()
    {
        var table = DifferenceTable.Of(Demo.Wheels, Day);
        var half = Repairing.Of(table, Day).Single(repair => repair.Kind == RepairKind.KeepHalf);
        Assert.Equal("Then age is no longer tied to anything else.", half.Gain);
        Assert.DoesNotContain(Repairing.Of(DifferenceTable.Of(Demo.Wheels, null), null), repair => repair.Kind == RepairKind.KeepHalf);
        for (var first = 0; first < Demo.Wheels.Length; first++)
        {
            var turned = DifferenceTable.Of([.. Demo.Wheels.Skip(first), .. Demo.Wheels.Take(first)], Day);
            Assert.DoesNotContain(Repairing.Of(turned, Day), repair => repair.Kind == RepairKind.LeaveOut && repair.Subject == turned.Wheels[turned.Reference].Label);
        }
    }

    [Fact]
    public void Leaving_the_old_wheel_out_does_loosen_what_it_says()
    {
        var before = DifferenceTable.Of(Demo.Wheels, Day);
        var out6 = Repairing.Of(before, Day).Single(repair => repair.Kind == RepairKind.LeaveOut);
        var after = DifferenceTable.Of(Demo.Wheels.RemoveAt(5), Day);
        Assert.Empty(after.Cords);
        // The cord over four things is three ties; Hot then has one wheel, which is one more.
        Assert.Equal(before.LoneRecipes.Length + 1, after.LoneRecipes.Length);
        Assert.Equal(2, out6.Loosens);
    }

    [Fact]
    public void Recipes_each_from_a_milk_of_its_own_are_mended_by_one_milk()
    {
        var table = DifferenceTable.Of(Of(Wheel("A", "a", "2025-05-01", "lot 1"), Wheel("B", "b", "2025-05-01", "lot 2")).Wheels, Day);
        var split = Assert.Single(Repairing.Of(table, Day), repair => repair.Kind == RepairKind.SplitVat);
        Assert.Equal("Then milk is no longer tied to anything else.", split.Gain);
        Assert.Equal("Split one milk over all recipes on one day", split.Deed);
    }

    [Fact]
    public void That_a_lone_recipe_goes_with_its_wheel_is_no_gain()
    {
        var table = DifferenceTable.Of(Of(Wheel("A", "a", "2025-05-01"), Wheel("A2", "a", "2025-05-03"), Wheel("B", "b", "2025-05-02")).Wheels, Day);
        Assert.Equal(["b"], table.LoneRecipes);
        var repairs = Repairing.Of(table, Day);
        Assert.DoesNotContain(repairs, repair => repair.Kind == RepairKind.LeaveOut);
        Assert.Equal((RepairKind.MakeAgain, "b", true), (repairs[0].Kind, repairs[0].Subject, repairs[0].Least));
        // From one vat day as well: the second make is of another day.
        var oneDay = DifferenceTable.Of(Of(Wheel("A", "a", "2025-05-01"), Wheel("B", "b", "2025-05-01")).Wheels, Day);
        Assert.Equal(["a", "b"], Repairing.Of(oneDay, Day).Where(repair => repair.Kind == RepairKind.MakeAgain).Select(repair => repair.Subject!));
    }

    [Fact]
    public void Where_nothing_is_tied_only_the_anchor_is_offered()
    {
        var table = DifferenceTable.Of(Of(Wheel("A", "a", null, "1"), Wheel("A2", "a", null, "2"), Wheel("B", "b", null, "1"), Wheel("B2", "b", null, "2")).Wheels, Day);
        Assert.Equal(RepairKind.Anchor, Assert.Single(Repairing.Of(table, Day)).Kind);
    }
}
