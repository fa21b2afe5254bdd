using System.Collections.Immutable;
using Trier.Statistics.Distributions;
using Trier.Statistics.Randomness;
using Trier.Statistics.Rankings;

namespace Trier.Statistics.ChoiceModels;

/// <summary>The posterior of a Bayesian Plackett-Luce model.</summary>
/// <param name="ChanceFavourite">Per item the chance that its worth is the highest.</param>
/// <param name="FavouriteShare">Per item the posterior mean of w/sum w: the chance that a random judge puts it first.</param>
/// <param name="LogWorths">Per item the posterior mean log-worth, centred to sum 0.</param>
/// <param name="LogWorthIntervals">Per item the central 90 % of the centred log-worth.</param>
/// <param name="Spread">Posterior mean of s, the standard deviation of log-worths; under a gamma prior, which has no s, the prior's own.</param>
/// <param name="EffectiveSize">The least effective sample size over centred log-worths and favourite indicators.</param>
/// <param name="RHat">The largest split R-hat over the same.</param>
/// <param name="Draws">Draws kept over all chains.</param>
public sealed record WorthPosterior(
    ImmutableArray<double> ChanceFavourite, ImmutableArray<double> FavouriteShare, ImmutableArray<double> LogWorths,
    ImmutableArray<Interval> LogWorthIntervals, double Spread, double EffectiveSize, double RHat, int Draws)
{
    /// <summary>True where at least 2,000 effective draws and R-hat at most 1.01 were reached.</summary>
    public bool Mixed => EffectiveSize >= 2000 && RHat <= 1.01;
}

/// <summary>How long to sample.</summary>
/// <param name="Chains">Independent chains, at least 2.</param>
/// <param name="Discarded">Steps thrown away at the start of each.</param>
/// <param name="Kept">Steps kept of each.</param>
public sealed record SamplingEffort(int Chains, int Discarded, int Kept)
{
    /// <summary>Four chains of 1,000 and 10,000 steps.</summary>
    public static SamplingEffort Usual { get; } = new(4, 1_000, 10_000);
}

/// <summary>
/// Plackett-Luce with log-worths normal(0, s^2) and s half-normal with a stated scale: with 0.8 two items typically stand 1.5 : 1 and one pair in ten beyond 6 : 1. A tied
/// group counts as the sum over its orders, so that a tie is no evidence inside it; partial orders as served; members of a joined voice weigh one over its
/// size. Sampled by elliptical slices for the log-worths and slices for s, once with the worths held and once with worths/s held. A posterior is calibrated over its prior, not at one truth: under one fixed
/// 2 : 1 favourite it is too modest.
/// Sources: model [Luce1959], [Plackett1975]; samplers [MurrayAdamsMacKay2010], [Neal2003], [YuMeng2011].
/// </summary>
public static class BayesianPlackettLuce
{
    /// <summary>The scale of the half-normal prior of s.</summary>
    public const double UsualScale = 0.8;

    /// <summary>Samples the posterior.</summary>
    /// <param name="set">Ballots over at least 2 items; pieces that no ballot joins are joined by the prior alone.</param>
    /// <param name="seed">Where chance comes from.</param>
    /// <param name="scale">Scale of the prior of s, above 0.</param>
    /// <param name="effort">How long; <see cref="SamplingEffort.Usual"/> if null.</param>
    /// <returns>Refused for one item, or a tie of more than 14 items above others. Look at <see cref="WorthPosterior.Mixed"/>.</returns>
    public static Answer<WorthPosterior> Sample(RankingSet set, Seed seed, double scale = UsualScale, SamplingEffort? effort = null)
    {
        ArgumentNullException.ThrowIfNull(set);
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(scale);
        effort ??= SamplingEffort.Usual;
        if (set.Items < 2) return new Refusal(RefusalKind.TooFewItems, "There is one item: nothing can be compared.");
        var likelihood = OrderLikelihood.Of(set);
        if (!likelihood.Stands) return likelihood.Refusal!;
        var chains = new WorthChain[effort.Chains];
        Parallel.For(0, effort.Chains, i =>
        {
            chains[i] = new WorthChain(likelihood.Value.Fork(), scale, seed.Child(i).Generator());
            chains[i].Run(effort.Discarded, effort.Kept);
        });
        return WorthDraws.Summary([.. chains.Select(chain => chain.Draws)], set.Items, chains.Average(chain => chain.MeanSpread));
    }
}
