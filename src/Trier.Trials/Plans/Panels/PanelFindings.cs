using System.Collections.Immutable;
using Trier.Statistics.Power;

namespace Trier.Trials.Plans.Panels;

/// <summary>Which panel is simulated: one recipe is preferred to each other, its wheels alike, by people of one taste.</summary>
/// <param name="WheelsPerRecipe">How many wheels there are of each recipe; the favourite is taken to be one of those with the fewest, the hardest case.</param>
/// <param name="Preference">How many people prefer a wheel of the favourite to one of another recipe, for each that does not.</param>
/// <param name="Rule">The rule that names the leader.</param>
public sealed record PanelAsk(ImmutableArray<int> WheelsPerRecipe, double Preference, CountingRule Rule)
{
    /// <summary>Wheels on the plate.</summary>
    public int Wheels => WheelsPerRecipe.Sum();

    /// <summary>Asks after an outline's own plate.</summary>
    /// <param name="outline">The outline.</param>
    public static PanelAsk Of(TrialOutline outline) => new(outline.WheelsPerRecipe, outline.Preference, outline.Rule);

    /// <summary>The crowd: worth t for every wheel of the favourite, 1 for all others; of one recipe alone, one wheel is the favourite.</summary>
    internal PanelModel Model()
    {
        if (WheelsPerRecipe.Length == 1) return PanelModel.Favourite(Wheels, Preference);
        var fewest = WheelsPerRecipe.IndexOf(WheelsPerRecipe.Min());
        return PanelModel.Of(WheelsPerRecipe.SelectMany((count, recipe) => Enumerable.Repeat(recipe == fewest ? Preference : 1, count)));
    }
}

/// <summary>What panels of one size conclude.</summary>
/// <param name="Tasters">How many voices.</param>
/// <param name="Right">The leader, alone, is the favourite (any of its wheels).</param>
/// <param name="Shown">It is shown above some or all others: levels 5 and 6 with the right leader.</param>
/// <param name="Wrong">Another wheel is shown above some or all others.</param>
public sealed record PanelPoint(int Tasters, Simulated Right, Simulated Shown, Simulated Wrong);

/// <summary>Panels of several sizes under one preference.</summary>
/// <param name="Preference">The preference.</param>
/// <param name="Points">By rising size.</param>
public sealed record PanelCurve(double Preference, ImmutableArray<PanelPoint> Points);

/// <summary>One way to hold the trial.</summary>
/// <param name="Name">What it is called: "As planned".</param>
/// <param name="What">What is on the plate, in words.</param>
/// <param name="WheelsPerRecipe">Wheels of each recipe.</param>
/// <param name="VatDays">Vats to be made.</param>
/// <param name="Says">What it could tell beside which wheel is liked, one sentence.</param>
public sealed record PlanOption(string Name, string What, ImmutableArray<int> WheelsPerRecipe, int VatDays, string Says);

/// <summary>One way and what it could show.</summary>
/// <param name="Option">The way.</param>
/// <param name="Points">By rising size, under the difference worth finding.</param>
public sealed record OptionFinding(PlanOption Option, ImmutableArray<PanelPoint> Points);

/// <summary>What panels could show, found by simulation: worked out once and kept.</summary>
/// <param name="Panels">Panels drawn for each figure.</param>
/// <param name="Curves">The plate as planned, under several preferences, rising.</param>
/// <param name="Options">Two or three ways to hold the trial, the planned one first.</param>
/// <param name="SmallestPreference">The preference that the expected number of tasters would show 8 times in 10; null where none is, or the rule is another than average place.</param>
public sealed record PanelFindings(int Panels, ImmutableArray<PanelCurve> Curves, ImmutableArray<OptionFinding> Options, double? SmallestPreference)
{
    /// <summary>The largest Monte Carlo error of any share, 0 to 1: where one panel in two hits.</summary>
    public double LargestError => Math.Sqrt(0.25 / Panels);
}
