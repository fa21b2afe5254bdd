using System.Collections.Immutable;
using Trier.Statistics.Randomness;
using Trier.Statistics.Rankings;
using Trier.Statistics.RankTests;

namespace Trier.Statistics.ChoiceModels;

/// <summary>One class of a mixture.</summary>
/// <param name="Share">Of the voices.</param>
/// <param name="Worths">Summing to 1.</param>
public sealed record ChoiceClass(double Share, ImmutableArray<double> Worths);

/// <summary>Two classes fitted beside one.</summary>
/// <param name="Classes">The larger class first. Which voice belongs where is not told: no single ballot says that well.</param>
/// <param name="OneClass">The worths of the one-class fit.</param>
/// <param name="LogLikelihood">Of the two classes.</param>
/// <param name="OneClassLogLikelihood">Of the one.</param>
/// <param name="LikelihoodRatio">Twice the difference, at least 0.</param>
public sealed record TwoClassFit(
    ImmutableArray<ChoiceClass> Classes, ImmutableArray<double> OneClass, double LogLikelihood, double OneClassLogLikelihood, double LikelihoodRatio);

/// <summary>One class held against two.</summary>
/// <param name="Fit">Both fits.</param>
/// <param name="P">The chance of a likelihood ratio as large on panels drawn from the fitted one class.</param>
/// <param name="Critical">The ratio that 5 % of those panels exceed.</param>
/// <param name="Parted">True where p is at most 0.01.</param>
public sealed record TwoClassTest(TwoClassFit Fit, PValue P, double Critical, bool Parted);

/// <summary>
/// Camps by model: each voice belongs to one of two classes with worths of their own and orders by Plackett-Luce. Fitted by expectation and maximisation from ten random starts with a weak prior of ghost comparisons in each class, which keeps a class of a few voices
/// finite. The likelihood ratio has no chi-square distribution (with 5 items its 95 % point is near 15, not 11.1), so it is held against panels drawn from the fitted one class, with the same ties and items served. It is weak: of panels of 40 with two mirrored halves, 12 % are found at 0.01
/// where worths run 4:1 from end to end and 87 % where they run 9:1 (of 14: 4 and 25 %; at 0.05 30 and 94 %, 14 and 50 %; 300 simulated panels each). It never assigns a person to a class.
/// Sources: [DempsterEtAl1977]; bootstrap of the ratio [McLachlan1987]; model [Plackett1975].
/// </summary>
public static class TwoClasses
{
    /// <summary>The fewest voices of a test.</summary>
    public const int FewestVoices = 20;

    /// <summary>The most items.</summary>
    public const int MostItems = 16;

    /// <summary>Ghost comparisons of each pair in each class.</summary>
    public const double UsualGhosts = 0.1;

    private const double Mention = 0.01;

    /// <summary>Fits one and two classes.</summary>
    /// <param name="set">Ballots over 2 to 16 items; a joined voice is one voice, its members weighing one over its size.</param>
    /// <param name="seed">Where the starts come from.</param>
    /// <param name="ghosts">Ghost comparisons of each pair in each class, above 0.</param>
    /// <returns>Refused for one item, more than 16, a tie of more than 12 above others, fewer than 4 voices, and where the fit does not settle.</returns>
    public static Answer<TwoClassFit> Fit(RankingSet set, Seed seed, double ghosts = UsualGhosts)
    {
        ArgumentNullException.ThrowIfNull(set);
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(ghosts);
        if (set.Items < 2) return new Refusal(RefusalKind.TooFewItems, "There is one item: nothing can be compared.");
        if (set.Items > MostItems) return new Refusal(RefusalKind.TooManyItems, $"Two classes are fitted for up to {MostItems} items; there are {set.Items}.");
        if (set.Rows.SelectMany(row => row.Ranking.Groups).Any(group => group.Length > ChoiceCounts.LargestTie))
            return new Refusal(RefusalKind.TooManyItems, $"A ballot ties more than {ChoiceCounts.LargestTie} items.");
        var voices = VoicePanel.Gather(set);
        if (voices.Sum(voice => voice.Count) < 4) return new Refusal(RefusalKind.TooFewBallots, "Two classes need four voices that place one item above another.");
        return Fit(set.Items, voices, seed.Child("starts"), ghosts);
    }

    /// <summary>Tests one class against two.</summary>
    /// <param name="set">Ballots over 2 to 16 items, at least 20 voices.</param>
    /// <param name="seed">Where chance comes from.</param>
    /// <param name="panels">How many panels are drawn; 999 by default.</param>
    /// <param name="ghosts">Ghost comparisons of each pair in each class, above 0.</param>
    /// <returns>Refused with fewer than 20 voices, and as the fit is.</returns>
    public static Answer<TwoClassTest> Test(RankingSet set, Seed seed, int panels = 999, double ghosts = UsualGhosts)
    {
        ArgumentNullException.ThrowIfNull(set);
        ArgumentOutOfRangeException.ThrowIfLessThan(panels, 1);
        if (set.Voices < FewestVoices)
            return new Refusal(RefusalKind.TooFewBallots, $"Camps by model need {FewestVoices} voices; there are {set.Voices}.");
        var fit = Fit(set, seed, ghosts);
        if (!fit.Stands) return fit.Refusal!;
        var pattern = VoicePanel.Gather(set);
        double[] worths = [.. fit.Value.OneClass];
        var ratios = new double[panels];
        Parallel.For(0, panels, panel =>
        {
            var own = seed.Child("panels").Child(panel);
            var drawn = Fit(set.Items, VoicePanel.Draw(pattern, worths, own.Child("votes").Generator()), own.Child("starts"), ghosts);
            ratios[panel] = drawn.Stands ? drawn.Value.LikelihoodRatio : double.PositiveInfinity;
        });
        var p = PValue.Drawn(ratios.LongCount(ratio => ratio >= fit.Value.LikelihoodRatio), panels);
        Array.Sort(ratios);
        return new TwoClassTest(fit.Value, p, ratios[Math.Min(panels - 1, (int)Math.Ceiling(0.95 * panels) - 1)], p.Value <= Mention);
    }

    private static Answer<TwoClassFit> Fit(int items, List<(Ranking[] Ballots, int Count)> voices, Seed starts, double ghosts)
    {
        var climb = new TwoClassClimb(VoicePanel.Of(items, voices), ghosts);
        var (log, around, solved) = climb.One();
        if (!solved) return new Refusal(RefusalKind.NotConverged, "The likelihood equations of one class were not solved.");
        var two = climb.Two(around, starts.Generator());
        if (!two.Settled) return new Refusal(RefusalKind.NotConverged, "The two classes did not settle.");
        ChoiceClass[] classes = [new(two.Share, PlackettLuce.Shares(two.First)), new(1 - two.Share, PlackettLuce.Shares(two.Second))];
        return new TwoClassFit(
            [.. classes.OrderByDescending(one => one.Share)], PlackettLuce.Shares(around), two.Log, log, Math.Max(0, 2 * (two.Log - log)));
    }
}
