using System.Collections.Immutable;
using Trier.Statistics.Distributions;

namespace Trier.Statistics.Ratings;

/// <summary>A parameter of a rating model with both its standard errors, which differ.</summary>
/// <param name="Value">The estimate.</param>
/// <param name="ObservedError">From the observed information, as most software for ordinal models prints it.</param>
/// <param name="ExpectedError">From the expected information, as software for general linear models prints it.</param>
public sealed record RatingEstimate(double Value, double ObservedError, double ExpectedError);

/// <summary>A chi-square test.</summary>
/// <param name="Statistic">The statistic.</param>
/// <param name="DegreesOfFreedom">Its degrees of freedom.</param>
/// <param name="P">Upper tail; a large-sample approximation.</param>
public sealed record ChiSquareTest(double Statistic, int DegreesOfFreedom, double P)
{
    internal static ChiSquareTest Of(double statistic, int freedom) => new(statistic, freedom, Tails.ChiSquare(statistic, freedom));
}

/// <summary>A maximum likelihood fit of ratings.</summary>
/// <param name="Link">The scale.</param>
/// <param name="Ratings">The ratings given, rising.</param>
/// <param name="Thresholds">Per rating but the last the cut above it at covariates 0.</param>
/// <param name="Effects">Per covariate its effect; above 0 means rated higher.</param>
/// <param name="LogLikelihood">At the estimate.</param>
/// <param name="NullLogLikelihood">Without any covariate.</param>
/// <param name="Parameters">Thresholds and effects.</param>
/// <param name="Count">How many ratings.</param>
/// <param name="Iterations">Newton steps taken.</param>
/// <param name="LargestResidual">The largest gradient entry: how well the equations are solved.</param>
public sealed record RatingFit(
    CumulativeLink Link, ImmutableArray<int> Ratings, ImmutableArray<RatingEstimate> Thresholds, ImmutableArray<RatingEstimate> Effects,
    double LogLikelihood, double NullLogLikelihood, int Parameters, double Count, int Iterations, double LargestResidual)
{
    /// <summary>-2 LogLikelihood + 2 Parameters.</summary>
    public double Aic => (-2 * LogLikelihood) + (2 * Parameters);

    /// <summary>-2 LogLikelihood + Parameters log Count.</summary>
    public double Bic => (-2 * LogLikelihood) + (Parameters * Math.Log(Count));

    /// <summary>The likelihood-ratio test of all effects together.</summary>
    public ChiSquareTest LikelihoodRatio => ChiSquareTest.Of(Math.Max(0, 2 * (LogLikelihood - NullLogLikelihood)), Parameters - Thresholds.Length);

    /// <summary>The likelihood-ratio test of what this fit has more than a fit it contains, on the same ratings.</summary>
    /// <param name="smaller">The fit with fewer parameters.</param>
    /// <exception cref="ArgumentException">The other has as many parameters or more, or other ratings.</exception>
    public ChiSquareTest Against(RatingFit smaller)
    {
        ArgumentNullException.ThrowIfNull(smaller);
        if (smaller.Parameters >= Parameters || !smaller.Count.Equals(Count) || smaller.Link != Link)
            throw new ArgumentException("The other fit is not a smaller one of the same ratings.", nameof(smaller));
        return ChiSquareTest.Of(Math.Max(0, 2 * (LogLikelihood - smaller.LogLikelihood)), Parameters - smaller.Parameters);
    }

    /// <summary>The fitted chance of each rating, in the order of <see cref="Ratings"/>.</summary>
    /// <param name="covariates">One a covariate.</param>
    public ImmutableArray<double> Chances(ReadOnlySpan<double> covariates)
    {
        if (covariates.Length != Effects.Length) throw new ArgumentException($"There are {covariates.Length} covariates for {Effects.Length} effects.", nameof(covariates));
        var chances = new double[Ratings.Length];
        var below = 0.0;
        for (var j = 0; j < chances.Length; j++)
        {
            var eta = j < Thresholds.Length ? Thresholds[j].Value : double.PositiveInfinity;
            for (var p = 0; p < covariates.Length && j < Thresholds.Length; p++) eta -= covariates[p] * Effects[p].Value;
            var next = j < Thresholds.Length ? LinkFunctions.At(Link, eta).Below : 1;
            chances[j] = next - below;
            below = next;
        }

        return [.. chances];
    }
}

/// <summary>
/// Ratings in ordered classes: logit P(Y at most j) = alpha_j - beta x, the same beta at every cut (proportional odds), or with a normal scale instead of log-odds. Fitted by Newton's method with halved steps on counts
/// gathered by covariates. Standard errors from the observed and from the expected information are named apart, because published tables use either.
/// Source: [McCullagh1980].
/// </summary>
public static class ProportionalOdds
{
    internal const double Solved = 1e-9;

    // Real data never come near this on the log-odds scale; a runaway estimate passes it long before its equations are solved.
    private const double LargestError = 100;

    /// <summary>Fits ratings.</summary>
    /// <param name="table">The ratings, at least two different ones.</param>
    /// <param name="link">The scale.</param>
    /// <returns>Refused where all ratings are the same, covariates repeat each other, or some covariate parts the ratings without overlap.</returns>
    public static Answer<RatingFit> Fit(RatingTable table, CumulativeLink link = CumulativeLink.Logit)
    {
        ArgumentNullException.ThrowIfNull(table);
        if (table.Count == 0) return new Refusal(RefusalKind.TooFewBallots, "There is no rating.");
        if (table.Ratings.Length < 2) return new Refusal(RefusalKind.NoInformation, "All ratings are the same.");
        if (Collinear(table)) return new Refusal(RefusalKind.WrongDesign, "One covariate is a mixture of the others or never varies.");
        var model = new CumulativeEquations(table, link, new bool[table.Covariates]);
        var point = model.Start();
        var ascent = NewtonAscent.Climb(model, point, Solved * table.Count);
        if (Errors(model) is not { } observed || observed.Max() > LargestError)
            return new Refusal(RefusalKind.Separated, "Some covariate parts the ratings without overlap, so no finite effect exists.");
        if (!ascent.Solved) return new Refusal(RefusalKind.NotConverged, "The likelihood equations were not solved.");
        model.Expected = true;
        model.Evaluate(point);
        var expected = Errors(model)!;
        RatingEstimate Estimate(int a) => new(point[a], observed[a], expected[a]);
        return new RatingFit(
            link, table.Ratings, [.. Enumerable.Range(0, model.Cuts).Select(Estimate)],
            [.. Enumerable.Range(model.Cuts, table.Covariates).Select(Estimate)],
            ascent.Log, NullLog(table), point.Length, table.Count, ascent.Steps, ascent.Residual);
    }

    /// <summary>
    /// The profile-likelihood interval of one effect: the values at which twice the loss of log-likelihood, the other parameters fitted anew, is the chi-square quantile on 1 degree of freedom. Better than value
    /// and error where the likelihood is skew.
    /// </summary>
    /// <param name="table">The ratings.</param>
    /// <param name="covariate">Which one.</param>
    /// <param name="level">Nominal cover.</param>
    /// <param name="link">The scale.</param>
    public static Answer<Interval> ProfileInterval(RatingTable table, int covariate, double level = 0.95, CumulativeLink link = CumulativeLink.Logit)
    {
        var fit = Fit(table, link);
        if (!fit.Stands) return fit.Refusal!;
        ArgumentOutOfRangeException.ThrowIfNegative(covariate);
        ArgumentOutOfRangeException.ThrowIfGreaterThanOrEqual(covariate, table.Covariates);
        var centre = fit.Value.Effects[covariate];
        var z = Tails.NormalQuantile((1 - level) / 2);
        var model = new CumulativeEquations(table, link, new bool[table.Covariates], covariate);
        double Root(double value)
        {
            model.HeldAt = value;
            var ascent = NewtonAscent.Climb(model, model.Start(), Solved * table.Count);
            return Math.Sqrt(Math.Max(0, 2 * (fit.Value.LogLikelihood - ascent.Log)));
        }

        double? End(int sign)
        {
            double near = 0, far = z * centre.ObservedError;
            for (var tries = 0; Root(centre.Value + (sign * far)) < z; tries++)
            {
                if (tries == 20) return null;
                (near, far) = (far, 2 * far);
            }

            while (far - near > 1e-9 * centre.ObservedError)
            {
                var middle = (near + far) / 2;
                if (Root(centre.Value + (sign * middle)) < z) near = middle;
                else far = middle;
            }

            return centre.Value + (sign * far);
        }

        return End(-1) is { } low && End(1) is { } high
            ? new Interval(low, high, level)
            : new Refusal(RefusalKind.NotConverged, "The likelihood stays too flat for an interval end.");
    }

    internal static double NullLog(RatingTable table)
    {
        var log = 0.0;
        for (var c = 0; c < table.Ratings.Length; c++)
        {
            var count = 0.0;
            foreach (var (_, counts) in table.Patterns) count += counts[c];
            log += count * Math.Log(count / table.Count);
        }

        return log;
    }

    private static double[]? Errors(CumulativeEquations model)
    {
        if (SymmetricMatrix.Factor(model.Information) is null) return null;
        var inverse = SymmetricMatrix.Inverse(model.Information);
        var errors = new double[inverse.GetLength(0)];
        for (var a = 0; a < errors.Length; a++) errors[a] = Math.Sqrt(inverse[a, a]);
        return errors;
    }

    private static bool Collinear(RatingTable table)
    {
        var n = table.Covariates;
        if (n == 0) return false;
        var means = new double[n];
        foreach (var (x, counts) in table.Patterns)
        {
            for (var p = 0; p < n; p++) means[p] += x[p] * counts.Sum() / table.Count;
        }

        var spread = new double[n, n];
        foreach (var (x, counts) in table.Patterns)
        {
            var weight = counts.Sum();
            for (var p = 0; p < n; p++)
            {
                for (var q = 0; q < n; q++) spread[p, q] += weight * (x[p] - means[p]) * (x[q] - means[q]);
            }
        }

        return SymmetricMatrix.Factor(spread) is not { } lower || Enumerable.Range(0, n).Any(p => lower[p, p] * lower[p, p] < 1e-10 * spread[p, p]);
    }
}
