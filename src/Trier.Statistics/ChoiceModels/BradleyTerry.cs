using System.Collections.Immutable;
using Trier.Statistics.Distributions;
using Trier.Statistics.Rankings;

namespace Trier.Statistics.ChoiceModels;

/// <summary>How a pair of items did against each other.</summary>
/// <param name="First">The item shown first; which one is first matters only to an order effect.</param>
/// <param name="Second">The other.</param>
/// <param name="FirstWins">Times the first was preferred, 0 or more; halves allowed.</param>
/// <param name="SecondWins">Times the second was preferred.</param>
/// <param name="Ties">Times neither was.</param>
public sealed record PairCount(int First, int Second, double FirstWins, double SecondWins, double Ties = 0);

/// <summary>What to do with ties.</summary>
public enum TieModel
{
    /// <summary>Davidson's model: a tie has a chance of its own.</summary>
    Davidson,

    /// <summary>Half a win for each; not a model of how ties come about.</summary>
    Halves,
}

/// <summary>A maximum likelihood fit of the Bradley-Terry or Davidson model.</summary>
/// <param name="LogWorths">Per item, the first item 0.</param>
/// <param name="StandardErrors">Per item of the difference to the first; the first 0.</param>
/// <param name="Worths">Summing to 1.</param>
/// <param name="LogTie">Log of the tie parameter nu, the odds of a tie against a win between equals halved; null where ties are not modelled or none was given.</param>
/// <param name="OrderEffect">Log-odds in favour of the first shown; null where not asked for.</param>
/// <param name="LogLikelihood">Of the answers in the order they came.</param>
/// <param name="LogLikelihoodOfCounts">The same with the number of orders counted in, as regression software prints it.</param>
/// <param name="Aic">-2 LogLikelihoodOfCounts + 2 parameters.</param>
/// <param name="Deviance">Against each row's own shares.</param>
/// <param name="NullDeviance">The same with equal worths, no order effect and, where modelled, one tie share.</param>
/// <param name="DegreesOfFreedom">Of the deviance.</param>
/// <param name="Iterations">Newton steps taken.</param>
/// <param name="LargestResidual">The largest difference between a counted sum and what the fit expects of it.</param>
/// <param name="Covariance">Of the log-worths.</param>
public sealed record BradleyTerryFit(
    ImmutableArray<double> LogWorths, ImmutableArray<double> StandardErrors, ImmutableArray<double> Worths, Estimate? LogTie, Estimate? OrderEffect,
    double LogLikelihood, double LogLikelihoodOfCounts, double Aic, double Deviance, double NullDeviance, int DegreesOfFreedom,
    int Iterations, double LargestResidual, WorthCovariance Covariance);

/// <summary>A number and its standard error.</summary>
/// <param name="Value">The estimate.</param>
/// <param name="Error">Its standard error.</param>
public sealed record Estimate(double Value, double Error);

/// <summary>
/// Paired comparisons by maximum likelihood. Without ties P(i over j) = a_i/(a_i + a_j); with Davidson's ties P(i over j) = a_i/D, P(tie) = nu sqrt(a_i a_j)/D, D = a_i + a_j + nu sqrt(a_i a_j). An order effect multiplies
/// the worth of the item shown first in a win (not in a tie). Newton's method on log-worths, log nu and the effect; standard errors from the information, which is the same observed and expected.
/// Sources: [BradleyTerry1952], [Davidson1970], [DavidsonBeaver1977]; existence [Ford1957], with ties and order effects by difference constraints.
/// </summary>
public static class BradleyTerry
{
    private const double Solved = 1e-9;

    // On the log-odds scale; answers that have a finite estimate come nowhere near.
    private const double LargestError = 100;

    /// <summary>Fits ballots that served two items each.</summary>
    /// <param name="set">The ballots; which item was shown first is not known.</param>
    /// <param name="ties">What to do with ties.</param>
    /// <param name="ghosts">As in <see cref="Fit(int, ImmutableArray{PairCount}, TieModel, bool, double)"/>.</param>
    /// <returns>Refused where a ballot served more than two items: pairs cut from one order are not independent.</returns>
    public static Answer<BradleyTerryFit> Fit(RankingSet set, TieModel ties = TieModel.Davidson, double ghosts = 0)
    {
        ArgumentNullException.ThrowIfNull(set);
        if (set.Rows.Any(row => row.Ranking.Served.Length > 2))
            return new Refusal(RefusalKind.WrongDesign, "Some ballot served more than two items: pairs cut from one order are not independent, fit Plackett-Luce instead.");
        var counts = new SortedDictionary<(int First, int Second), (double Wins, double Losses, double Ties)>();
        foreach (var (ranking, count, _) in set.Rows)
        {
            if (ranking.Served.Length < 2) continue;
            var (a, b) = (ranking.Served[0], ranking.Served[1]);
            var doubled = ranking.DoubledMidranks();
            var sum = counts.GetValueOrDefault((a, b));
            counts[(a, b)] = doubled[a].CompareTo(doubled[b]) switch
            {
                < 0 => sum with { Wins = sum.Wins + count },
                > 0 => sum with { Losses = sum.Losses + count },
                _ => sum with { Ties = sum.Ties + count },
            };
        }

        return Fit(set.Items, [.. counts.Select(pair => new PairCount(pair.Key.First, pair.Key.Second, pair.Value.Wins, pair.Value.Losses, pair.Value.Ties))], ties, false, ghosts);
    }

    /// <summary>Fits pairs.</summary>
    /// <param name="items">How many items, at least 2.</param>
    /// <param name="pairs">The counts; a pair may stand in several rows.</param>
    /// <param name="ties">What to do with ties.</param>
    /// <param name="orderEffect">Whether the item shown first may have an advantage.</param>
    /// <param name="ghosts">A weak prior: as if every pair had been compared this many more times, half won each way; 0 for none.</param>
    /// <returns>
    /// Refused for one item, no answer, answers that all tie, without ghosts for disconnected or separated items, and where the equations are not
    /// solved. Without any tie the tie parameter is left out.
    /// </returns>
    /// <exception cref="ArgumentException">A row names an item out of range or one item twice, or counts less than 0.</exception>
    public static Answer<BradleyTerryFit> Fit(
        int items, ImmutableArray<PairCount> pairs, TieModel ties = TieModel.Davidson, bool orderEffect = false, double ghosts = 0)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(ghosts);
        if (pairs.IsDefault) throw new ArgumentException("There are no rows.", nameof(pairs));
        foreach (var row in pairs)
        {
            if (row.First == row.Second || Math.Min(row.First, row.Second) < 0 || Math.Max(row.First, row.Second) >= items)
                throw new ArgumentException($"A row compares {row.First} with {row.Second}: two different ones of {items} items are needed.", nameof(pairs));
            if (!(Math.Min(row.FirstWins, Math.Min(row.SecondWins, row.Ties)) >= 0))
                throw new ArgumentException($"The row of {row.First} and {row.Second} counts less than nothing.", nameof(pairs));
        }

        if (items < 2) return new Refusal(RefusalKind.TooFewItems, "There is one item: nothing can be compared.");
        var rows = ties == TieModel.Halves ? Halved(pairs) : [.. pairs];
        double wins = 0, tied = 0;
        foreach (var row in rows)
        {
            wins += row.FirstWins + row.SecondWins;
            tied += row.Ties;
        }

        if (wins + tied == 0) return new Refusal(RefusalKind.TooFewBallots, "No pair was compared.");
        if (wins == 0) return new Refusal(RefusalKind.NoInformation, "Every answer is a tie.");
        if (PairObstacle.Of(items, rows, tied > 0, orderEffect, ghosts > 0) is { } obstacle) return obstacle;
        var model = new PairEquations(items, rows, tied > 0, orderEffect, ghosts);
        var point = model.Start(tied / wins);
        var ascent = NewtonAscent.Climb(model, point, Solved * Math.Max(1, wins + tied));
        if (SymmetricMatrix.Factor(model.Information) is null || Runaway(model))
            return new Refusal(RefusalKind.Separated, "Ties, order of showing and worths together explain some answers without exception, so no finite estimate exists.");
        if (!ascent.Solved) return new Refusal(RefusalKind.NotConverged, "The likelihood equations were not solved.");
        return Result(items, rows, model, point, ascent);
    }

    /// <summary>Ties and an order effect together can run away in ways that neither does alone; the information is then all but singular.</summary>
    private static bool Runaway(PairEquations model)
    {
        if (model.TieAt is null || model.OrderAt is null) return false;
        var inverse = SymmetricMatrix.Inverse(model.Information);
        for (var i = 0; i < inverse.GetLength(0); i++)
        {
            if (!(inverse[i, i] < LargestError * LargestError)) return true;
        }

        return false;
    }

    private static BradleyTerryFit Result(int items, PairCount[] rows, PairEquations model, double[] point, Ascent ascent)
    {
        var inverse = SymmetricMatrix.Inverse(model.Information);
        var worths = new double[items - 1, items - 1];
        var errors = new double[items];
        for (var i = 0; i < items - 1; i++)
        {
            errors[i + 1] = Math.Sqrt(inverse[i, i]);
            for (var j = 0; j < items - 1; j++) worths[i, j] = inverse[i, j];
        }

        Estimate? At(int? parameter) => parameter is { } p ? new Estimate(point[p], Math.Sqrt(inverse[p, p])) : null;
        var (saturated, orders, free) = PairDeviance.Of(rows, model.HasTies);
        var ofCounts = model.Log + orders;
        return new BradleyTerryFit(
            [0, .. point.AsSpan(0, items - 1)], [.. errors], PlackettLuce.Shares(point.AsSpan(0, items - 1)), At(model.TieAt), At(model.OrderAt),
            model.Log, ofCounts, (-2 * ofCounts) + (2 * point.Length), 2 * (saturated - model.Log), 2 * (saturated - PairDeviance.NullLog(rows, model.HasTies)),
            free - point.Length, ascent.Steps, ascent.Residual, new WorthCovariance(worths));
    }

    private static PairCount[] Halved(ImmutableArray<PairCount> pairs)
    {
        var rows = pairs.ToArray();
        for (var r = 0; r < rows.Length; r++)
        {
            var half = rows[r].Ties / 2;
            if (half > 0) rows[r] = new PairCount(rows[r].First, rows[r].Second, rows[r].FirstWins + half, rows[r].SecondWins + half);
        }

        return rows;
    }
}

/// <summary>What a fit is held against.</summary>
internal static class PairDeviance
{
    private static readonly double[] Small = [.. Enumerable.Range(0, 256).Select(n => Tails.LogGamma(n + 1))];

    /// <summary>Log-likelihood of each row's own shares, log number of orders of the answers, and how many shares are free.</summary>
    public static (double Saturated, double Orders, int Free) Of(PairCount[] rows, bool withTies)
    {
        double saturated = 0, orders = 0;
        var free = 0;
        foreach (var row in rows)
        {
            var n = row.FirstWins + row.SecondWins + row.Ties;
            if (n == 0) continue;
            free += withTies ? 2 : 1;
            saturated += Part(row.FirstWins, n) + Part(row.SecondWins, n) + Part(row.Ties, n);
            orders += LogFactorial(n) - LogFactorial(row.FirstWins) - LogFactorial(row.SecondWins) - LogFactorial(row.Ties);
        }

        return (saturated, orders, free);
    }

    public static double NullLog(PairCount[] rows, bool withTies)
    {
        double wins = 0, ties = 0;
        foreach (var row in rows)
        {
            wins += row.FirstWins + row.SecondWins;
            ties += row.Ties;
        }

        var log = withTies ? Part(wins, wins + ties) + Part(ties, wins + ties) : 0;
        return log - (wins * Math.Log(2));
    }

    private static double Part(double count, double n) => count == 0 ? 0 : count * Math.Log(count / n);

    private static double LogFactorial(double n) =>
        n < Small.Length && n == Math.Floor(n) ? Small[(int)n] : Tails.LogGamma(n + 1);
}
