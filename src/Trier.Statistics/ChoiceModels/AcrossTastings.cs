using System.Collections.Immutable;
using Trier.Statistics.Distributions;
using Trier.Statistics.Randomness;
using Trier.Statistics.Rankings;

namespace Trier.Statistics.ChoiceModels;

/// <summary>One wheel as it was served at one tasting; the items of the ballots.</summary>
/// <param name="Recipe">Number of its recipe, from 0.</param>
/// <param name="Wheel">Number of the wheel, from 0 over all tastings: the same wheel served twice keeps it.</param>
/// <param name="AgeDays">Its age on the day; null where not known, and then the average stands in.</param>
public sealed record Served(int Recipe, int Wheel, double? AgeDays)
{
    /// <summary>Number of the make it came from, from any start: wheels of one vat share it. Null where every wheel is a make of its own.</summary>
    public int? Make { get; init; }
}

/// <summary>One recipe over all tastings.</summary>
/// <param name="Wheels">Wheels that were tasted.</param>
/// <param name="Makes">Makes they came from.</param>
/// <param name="LogWorth">Posterior mean of its log-worth at average age, all recipes centred to sum 0.</param>
/// <param name="Interval">Its central 90 %.</param>
/// <param name="ChanceBest">Chance that it is the best of the recipes with two makes or more; null with one make, or where no other has two.</param>
/// <param name="ChanceNext">Chance that its next make would be liked above the next makes of the others with two or more; null likewise.</param>
public sealed record RecipeWorth(int Wheels, int Makes, double LogWorth, Interval Interval, double? ChanceBest, double? ChanceNext);

/// <summary>One wheel over all tastings.</summary>
/// <param name="Recipe">Its recipe.</param>
/// <param name="LogWorth">Posterior mean log-worth at average age, on the recipes' scale.</param>
/// <param name="Interval">Its central 90 %.</param>
public sealed record WheelWorth(int Recipe, double LogWorth, Interval Interval);

/// <summary>The posterior over several tastings.</summary>
/// <param name="Recipes">By number.</param>
/// <param name="Wheels">By number.</param>
/// <param name="AgePer30Days">Posterior mean change of log-worth for 30 days more; null where no two ages differ.</param>
/// <param name="AgeInterval">Its central 90 %; null likewise.</param>
/// <param name="WheelSpread">Posterior mean of tau, how far wheels of one recipe stand apart in log-worth.</param>
/// <param name="WheelSpreadInterval">Its central 90 %.</param>
/// <param name="EffectiveSize">The least effective sample size of all that is told.</param>
/// <param name="RHat">The largest split R-hat of the same.</param>
/// <param name="Draws">Draws kept over all chains.</param>
public sealed record AcrossPosterior(
    ImmutableArray<RecipeWorth> Recipes, ImmutableArray<WheelWorth> Wheels, double? AgePer30Days, Interval? AgeInterval,
    double WheelSpread, Interval WheelSpreadInterval, double EffectiveSize, double RHat, int Draws)
{
    /// <summary>True where at least 1,000 effective draws and R-hat at most 1.01 were reached.</summary>
    public bool Mixed => EffectiveSize >= 1000 && RHat <= 1.01;
}

/// <summary>
/// Several tastings together: log-worth of a wheel = recipe + b age + u(wheel), ballots by Plackett and Luce. Recipes are normal(0, s^2) with s half-normal of scale 0.8; u normal(0, tau^2) with tau
/// half-normal of scale 0.5; b, for 30 days, normal(0, 0.25^2). A tasting has no effect of its own: it cancels within every ballot and cannot be estimated. One person is one voice over all tastings.
/// Sources: model [Luce1959], [Plackett1975]; samplers [MurrayAdamsMacKay2010], [Neal2003], [YuMeng2011].
/// </summary>
public static class AcrossTastings
{
    /// <summary>Scale of the half-normal prior of s, the recipes' spread.</summary>
    public const double RecipeScale = 0.8;

    /// <summary>Scale of the half-normal prior of tau, the spread of wheels of one recipe.</summary>
    public const double WheelScale = 0.5;

    /// <summary>Standard deviation of the prior of b for 30 days.</summary>
    public const double AgeScale = 0.25;

    /// <summary>Four chains of 2,000 and 20,000 steps.</summary>
    public static SamplingEffort UsualEffort { get; } = new(4, 2_000, 20_000);

    /// <summary>The recipes that ballots join, directly or through others: more than one piece cannot be compared.</summary>
    /// <param name="served">The items.</param>
    /// <param name="ballots">Ballots over them.</param>
    /// <returns>Pieces in the order of their lowest recipe, recipes in rising order; a recipe nobody compared is a piece of its own.</returns>
    public static ImmutableArray<ImmutableArray<int>> Pieces(ImmutableArray<Served> served, RankingSet ballots)
    {
        ArgumentNullException.ThrowIfNull(ballots);
        var recipes = Count(served, item => item.Recipe);
        var root = Enumerable.Range(0, recipes).ToArray();
        int Find(int recipe)
        {
            while (root[recipe] != recipe) recipe = root[recipe];
            return recipe;
        }

        foreach (var row in ballots.Rows.Where(row => !row.Ranking.IsAllTied))
        {
            var first = Find(served[row.Ranking.Served[0]].Recipe);
            foreach (var item in row.Ranking.Served)
            {
                var other = Find(served[item].Recipe);
                (root[Math.Max(first, other)], first) = (Math.Min(first, other), Math.Min(first, other));
            }
        }

        return [.. Enumerable.Range(0, recipes).GroupBy(Find).OrderBy(piece => piece.Key).Select(piece => piece.ToImmutableArray())];
    }

    /// <summary>Samples the posterior.</summary>
    /// <param name="served">The items of the ballots; recipes and wheels numbered without gaps, a wheel always of one recipe.</param>
    /// <param name="ballots">Ballots over them; rows of one person share a voice.</param>
    /// <param name="seed">Where chance comes from.</param>
    /// <param name="effort">How long; <see cref="UsualEffort"/> if null.</param>
    /// <returns>Refused with fewer than two recipes, where ballots fall into pieces, or for a tie of more than 14 items above others.</returns>
    /// <exception cref="ArgumentException">Items and ballots do not fit, or a number is missing.</exception>
    public static Answer<AcrossPosterior> Sample(ImmutableArray<Served> served, RankingSet ballots, Seed seed, SamplingEffort? effort = null)
    {
        ArgumentNullException.ThrowIfNull(ballots);
        if (served.IsDefaultOrEmpty || served.Length != ballots.Items) throw new ArgumentException($"The ballots are about {ballots.Items} items.", nameof(served));
        var recipes = Count(served, item => item.Recipe);
        var wheels = Count(served, item => item.Wheel);
        if (served.GroupBy(item => item.Wheel).Any(wheel => wheel.Select(item => item.Recipe).Distinct().Skip(1).Any())) throw new ArgumentException("A wheel is of one recipe.", nameof(served));
        if (recipes < 2) return new Refusal(RefusalKind.TooFewItems, "There is one recipe: nothing can be compared.");
        if (Pieces(served, ballots).Length > 1) return new Refusal(RefusalKind.Disconnected, "The recipes fall into pieces that no ballot compares.");
        var likelihood = OrderLikelihood.Of(ballots);
        if (!likelihood.Stands) return likelihood.Refusal!;
        effort ??= UsualEffort;
        var model = new AcrossModel(served, recipes, wheels);
        var chains = new AcrossChain[effort.Chains];
        Parallel.For(0, effort.Chains, i =>
        {
            chains[i] = new AcrossChain(model, likelihood.Value.Fork(), seed.Child(i).Generator());
            chains[i].Run(effort.Discarded, effort.Kept);
        });
        return AcrossSummary.Of(model, [.. chains.Select(chain => chain.Draws)], seed.Child("next").Generator());
    }

    private static int Count(ImmutableArray<Served> served, Func<Served, int> number)
    {
        var numbers = served.Select(number).Distinct().Order().ToList();
        for (var i = 0; i < numbers.Count; i++)
        {
            if (numbers[i] != i) throw new ArgumentException("Recipes and wheels are numbered from 0 without gaps.", nameof(served));
        }

        return numbers.Count;
    }
}
