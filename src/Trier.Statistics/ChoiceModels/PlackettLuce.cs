using System.Collections.Immutable;
using Trier.Statistics.Rankings;

namespace Trier.Statistics.ChoiceModels;

/// <summary>A maximum likelihood fit of the Plackett-Luce model.</summary>
/// <param name="LogWorths">Per item, the first item 0.</param>
/// <param name="StandardErrors">Per item of the difference to the first, from the observed information; the first 0.</param>
/// <param name="Worths">The worths, summing to 1.</param>
/// <param name="LogLikelihood">Of the ballots, at the estimate; ghost comparisons are not in it.</param>
/// <param name="Rankings">Ballots that placed an item above another.</param>
/// <param name="Iterations">Newton steps taken.</param>
/// <param name="LargestResidual">The largest difference between how often an item was chosen and how often the fit expects it: how well the equations are solved.</param>
/// <param name="Covariance">Of the log-worths, with the errors of differences and quasi-variances.</param>
public sealed record PlackettLuceFit(
    ImmutableArray<double> LogWorths, ImmutableArray<double> StandardErrors, ImmutableArray<double> Worths,
    double LogLikelihood, double Rankings, int Iterations, double LargestResidual, WorthCovariance Covariance);

/// <summary>
/// Plackett-Luce by maximum likelihood: the next item is i with chance w_i over the sum of the worths left. With ballots of two items it is the Bradley-Terry
/// model. A tied group counts as the sum over its orders, so that a tie is no evidence inside it; items not served are left out of the ballot's choices. A finite estimate exists only where every split of the items
/// has a placing each way (Ford's condition); otherwise the fit is refused, unless ghost comparisons are asked for. Newton's method on the log-worths with halved
/// steps, from equal worths. Sources: [Luce1959], [Plackett1975]; existence [Ford1957], [Hunter2004].
/// </summary>
public static class PlackettLuce
{
    private const double Solved = 1e-9;

    /// <summary>Fits the worths.</summary>
    /// <param name="set">Ballots over at least 2 items; every ballot counts by itself.</param>
    /// <param name="ghosts">
    /// A weak prior: as if every pair had been compared this many more times, half won each way. 0 for none; 0.1 keeps every worth finite and hardly moves a
    /// panel of ten.
    /// </param>
    /// <returns>Refused for one item, a tie of more than 12 items above others, without ghosts for disconnected or separated items, and where the equations are not solved.</returns>
    public static Answer<PlackettLuceFit> Fit(RankingSet set, double ghosts = 0)
    {
        ArgumentNullException.ThrowIfNull(set);
        var choices = ChoiceCounts.Of(set);
        return choices.Stands ? Fit(choices.Value, ghosts) : choices.Refusal!;
    }

    /// <summary>Fits the worths to choices added up before.</summary>
    /// <param name="choices">The choices.</param>
    /// <param name="ghosts">As in the other overload.</param>
    public static Answer<PlackettLuceFit> Fit(ChoiceCounts choices, double ghosts = 0)
    {
        ArgumentNullException.ThrowIfNull(choices);
        ArgumentOutOfRangeException.ThrowIfNegative(ghosts);
        if (choices.Items < 2) return new Refusal(RefusalKind.TooFewItems, "There is one item: nothing can be compared.");
        if (ghosts == 0 && choices.Obstacle is { } obstacle) return obstacle;
        var model = new WorthEquations(choices, ghosts);
        var theta = new double[choices.Items - 1];
        var ascent = NewtonAscent.Climb(model, theta, Solved * Math.Max(1, choices.Ballots));
        if (!ascent.Solved) return new Refusal(RefusalKind.NotConverged, "The likelihood equations were not solved.");
        if (SymmetricMatrix.Factor(model.Information) is null) return new Refusal(RefusalKind.NotConverged, "The information at the solution is singular.");
        var covariance = new WorthCovariance(SymmetricMatrix.Inverse(model.Information));
        var errors = new double[choices.Items];
        for (var i = 1; i < errors.Length; i++) errors[i] = Math.Sqrt(covariance[i, i]);
        return new PlackettLuceFit(
            [0, .. theta], [.. errors], Shares(theta), model.Log, choices.Ballots, ascent.Steps, ascent.Residual, covariance);
    }

    /// <summary>Worths summing to 1 from log-worths, the first 0 and not among them.</summary>
    internal static ImmutableArray<double> Shares(ReadOnlySpan<double> afterFirst)
    {
        var highest = 0.0;
        foreach (var value in afterFirst) highest = Math.Max(highest, value);
        var total = Math.Exp(-highest);
        foreach (var value in afterFirst) total += Math.Exp(value - highest);
        var shares = ImmutableArray.CreateBuilder<double>(afterFirst.Length + 1);
        shares.Add(Math.Exp(-highest) / total);
        foreach (var value in afterFirst) shares.Add(Math.Exp(value - highest) / total);
        return shares.MoveToImmutable();
    }
}
