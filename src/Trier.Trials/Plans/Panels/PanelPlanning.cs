using System.Collections.Immutable;
using System.Globalization;
using Trier.Statistics.Power;
using Trier.Statistics.Randomness;
using Trier.Statistics.RankTests;
using Trier.Trials.Verdicts.Counting;
using Rule = Trier.Statistics.Counting.CountingRule;

namespace Trier.Trials.Plans.Panels;

/// <summary>How many tasters it takes, by simulation through the verdict's own rule: gate, sign flips, Shaffer's steps, level.</summary>
public static class PanelPlanning
{
    /// <summary>Changes whenever the same question could get another figure.</summary>
    public const string MethodsVersion = "1";

    /// <summary>More wheels than this are not simulated.</summary>
    public const int MostWheels = 7;

    /// <summary>The numbers of tasters people really have.</summary>
    public static ImmutableArray<int> UsualSizes { get; } = [8, 14, 24, 40, 60];

    /// <summary>Preferences shown beside the one worth finding.</summary>
    public static ImmutableArray<double> UsualPreferences { get; } = [1.5, 2, 3];

    /// <summary>Panels a figure: an error of at most 1.1 points.</summary>
    public const int UsualPanels = PanelPower.UsualPanels;

    /// <summary>Where chance comes from: one number for every plan, so that the same question has the same answer everywhere.</summary>
    public static Seed Seed { get; } = new(2025_08_30);

    /// <summary>The fewest voices, all agreeing, with which any two of so many wheels can be shown to differ.</summary>
    /// <param name="wheels">2 or more.</param>
    public static int SmallestPanel(int wheels) => Shaffer.SmallestPanel(wheels);

    /// <summary>Whether an outline can be simulated.</summary>
    /// <param name="outline">The outline.</param>
    public static bool Can(TrialOutline outline) => outline.Wheels.Length is >= 2 and <= MostWheels;

    /// <summary>Works everything out.</summary>
    /// <param name="outline">2 to 7 wheels.</param>
    /// <param name="panels">Panels a figure, at least 1.</param>
    /// <param name="progress">Told the share done, from 0 to 1; null for nobody.</param>
    /// <param name="cancellation">Stops between two figures.</param>
    /// <exception cref="OperationCanceledException">It was stopped.</exception>
    public static PanelFindings Find(TrialOutline outline, int panels, Action<double>? progress, CancellationToken cancellation)
    {
        ArgumentNullException.ThrowIfNull(outline);
        if (!Can(outline)) throw new ArgumentException($"There are {outline.Wheels.Length} wheels: 2 to {MostWheels} are simulated.", nameof(outline));
        var ask = PanelAsk.Of(outline);
        ImmutableArray<int> sizes = [.. UsualSizes.Append(outline.Tasters).Distinct().Order()];
        ImmutableArray<double> preferences = [.. UsualPreferences.Append(outline.Preference).Distinct().Order()];
        var options = Options.Of(outline);
        ImmutableArray<PanelAsk> asks = [.. preferences.Select(preference => ask with { Preference = preference }), .. options.Select(option => ask with { WheelsPerRecipe = option.WheelsPerRecipe })];
        var found = new Dictionary<(string, double, int), PanelPoint>();
        for (var at = 0; at < sizes.Length; at++)
        {
            // Plates of as many wheels share the distribution under no difference, which takes most of the work.
            foreach (var plate in asks.GroupBy(asked => asked.Wheels))
            {
                cancellation.ThrowIfCancellationRequested();
                ImmutableArray<PanelAsk> these = [.. plate.DistinctBy(Key)];
                foreach (var (asked, point) in these.Zip(Points(these, sizes[at], panels))) found[(Key(asked), asked.Preference, sizes[at])] = point;
            }

            progress?.Invoke((at + 1) / (double)(sizes.Length + 1));
        }

        ImmutableArray<PanelPoint> Of(PanelAsk asked) => [.. sizes.Select(size => found[(Key(asked), asked.Preference, size)])];
        ImmutableArray<PanelCurve> curves = [.. preferences.Select(preference => new PanelCurve(preference, Of(ask with { Preference = preference })))];
        ImmutableArray<OptionFinding> compared = [.. options.Select(option => new OptionFinding(option, Of(ask with { WheelsPerRecipe = option.WheelsPerRecipe })))];
        cancellation.ThrowIfCancellationRequested();
        double? reach = null;
        if (Counted(outline.Rule, outline.Wheels.Length) == Rule.AveragePlace && PanelPower.SmallestPreference(outline.Wheels.Length, outline.Tasters, Seed.Child("reach"), panels: panels) is { Stands: true } smallest) reach = smallest.Value;
        progress?.Invoke(1);
        return new(panels, curves, compared, reach);
    }

    /// <summary>Panels of one size.</summary>
    /// <param name="ask">2 to 7 wheels.</param>
    /// <param name="tasters">At least 2.</param>
    /// <param name="panels">At least 1.</param>
    public static PanelPoint Point(PanelAsk ask, int tasters, int panels) => Points([ask], tasters, panels)[0];

    private static ImmutableArray<PanelPoint> Points(ImmutableArray<PanelAsk> asks, int tasters, int panels)
    {
        var wheels = asks[0].Wheels;
        var found = PanelPower.Simulate(
            [.. asks.Select(ask => (ask.Model(), Seed.Child(Key(ask)).Child(tasters)))], tasters, Seed.Child("null").Child(wheels).Child(tasters), panels, Counted(asks[0].Rule, wheels));
        return [.. found.Select(outcome => new PanelPoint(tasters, outcome.LeaderRight, outcome.ShownRight, outcome.ShownWrong))];
    }

    private static string Key(PanelAsk ask) => string.Create(CultureInfo.InvariantCulture, $"{string.Join(' ', ask.WheelsPerRecipe)} at {ask.Preference:R}");

    /// <summary>Average liking is not simulated, for ballots of places say nothing of it: average place stands in.</summary>
    /// <param name="rule">The planned rule.</param>
    public static bool StandsIn(CountingRule rule) => rule is CountingRule.MeanLiking;

    private static Rule Counted(CountingRule rule, int wheels) => rule switch
    {
        CountingRule.Firsts => Rule.Firsts,
        CountingRule.PlacePoints points when Falls(Rules.WholeWeights(points.Weights, wheels)) => Rule.PlacePoints(Rules.WholeWeights(points.Weights, wheels)),
        _ => Rule.AveragePlace,
    };

    private static bool Falls(ImmutableArray<int> weights) => weights[0] > weights[^1];
}
