using System.Collections.Immutable;
using Trier.Statistics.Distributions;

namespace Trier.Statistics.Ratings;

/// <summary>Which information a test uses; the answers differ.</summary>
public enum InformationKind
{
    /// <summary>Expected under the model.</summary>
    Expected,

    /// <summary>Observed.</summary>
    Observed,
}

/// <summary>
/// Score and Wald tests around the proportional odds model, all large-sample approximations. Source: [McCullagh1980]; that published tables use either information is seen by
/// the values in this library's tests.
/// </summary>
public static class RatingTests
{
    /// <summary>The score test that no covariate matters: U' I^-1 U with effects 0 and the expected information.</summary>
    /// <param name="table">The ratings.</param>
    /// <param name="link">The scale.</param>
    public static Answer<ChiSquareTest> NoEffect(RatingTable table, CumulativeLink link = CumulativeLink.Logit)
    {
        ArgumentNullException.ThrowIfNull(table);
        if (table.Ratings.Length < 2) return new Refusal(RefusalKind.NoInformation, "All ratings are the same.");
        if (table.Covariates == 0) return new Refusal(RefusalKind.WrongDesign, "There is no covariate to test.");
        var model = new CumulativeEquations(table, link, new bool[table.Covariates]) { Expected = true };
        model.Evaluate(model.Start());
        return ChiSquareTest.Of(SymmetricMatrix.InverseForm(model.Information, model.Gradient), table.Covariates);
    }

    /// <summary>The Wald test that no covariate matters: the effects over their covariance.</summary>
    /// <param name="table">The ratings.</param>
    /// <param name="information">Which information.</param>
    /// <param name="link">The scale.</param>
    public static Answer<ChiSquareTest> Wald(RatingTable table, InformationKind information, CumulativeLink link = CumulativeLink.Logit)
    {
        var fit = ProportionalOdds.Fit(table, link);
        if (!fit.Stands) return fit.Refusal!;
        var model = At(table, fit.Value, link, new bool[table.Covariates], information);
        var inverse = SymmetricMatrix.Inverse(model.Information);
        var effects = new double[table.Covariates];
        var covariance = new double[effects.Length, effects.Length];
        for (var p = 0; p < effects.Length; p++)
        {
            effects[p] = fit.Value.Effects[p].Value;
            for (var q = 0; q < effects.Length; q++) covariance[p, q] = inverse[model.Cuts + p, model.Cuts + q];
        }

        return ChiSquareTest.Of(SymmetricMatrix.InverseForm(covariance, effects), effects.Length);
    }

    /// <summary>
    /// The score test that every covariate acts alike at every cut. With the observed information, cuts that lie between two ratings nobody in a group gave carry none and drop out.
    /// </summary>
    /// <param name="table">The ratings.</param>
    /// <param name="information">Which information; the two can differ a good deal.</param>
    /// <param name="link">The scale.</param>
    public static Answer<ChiSquareTest> SameAtEveryCut(RatingTable table, InformationKind information, CumulativeLink link = CumulativeLink.Logit)
    {
        var fit = ProportionalOdds.Fit(table, link);
        if (!fit.Stands) return fit.Refusal!;
        if (fit.Value.Thresholds.Length < 2) return new Refusal(RefusalKind.WrongDesign, "Two ratings have one cut: there is nothing to compare.");
        var byCut = new bool[table.Covariates];
        Array.Fill(byCut, true);
        var model = At(table, fit.Value, link, byCut, information);
        return ChiSquareTest.Of(SymmetricMatrix.InverseForm(model.Information, model.Gradient), table.Covariates * (model.Cuts - 1));
    }

    /// <summary>
    /// The likelihood-ratio test that one covariate acts alike at every cut. Where some cut parts the ratings without overlap its own effect runs away, but the likelihood still has a limit, which is what is compared.
    /// </summary>
    /// <param name="table">The ratings.</param>
    /// <param name="covariate">Which one.</param>
    /// <param name="link">The scale.</param>
    public static Answer<ChiSquareTest> SameAtEveryCut(RatingTable table, int covariate, CumulativeLink link = CumulativeLink.Logit)
    {
        var fit = ProportionalOdds.Fit(table, link);
        if (!fit.Stands) return fit.Refusal!;
        ArgumentOutOfRangeException.ThrowIfNegative(covariate);
        ArgumentOutOfRangeException.ThrowIfGreaterThanOrEqual(covariate, table.Covariates);
        if (fit.Value.Thresholds.Length < 2) return new Refusal(RefusalKind.WrongDesign, "Two ratings have one cut: there is nothing to compare.");
        var byCut = new bool[table.Covariates];
        byCut[covariate] = true;
        var model = new CumulativeEquations(table, link, byCut);
        var ascent = NewtonAscent.Climb(model, model.Start(), ProportionalOdds.Solved * table.Count);
        if (!ascent.Solved) return new Refusal(RefusalKind.NotConverged, "The likelihood equations were not solved.");
        return ChiSquareTest.Of(Math.Max(0, 2 * (ascent.Log - fit.Value.LogLikelihood)), model.Cuts - 1);
    }

    /// <summary>Deviance and Pearson's X2 of a fit against each pattern's own shares.</summary>
    /// <param name="table">The ratings.</param>
    /// <param name="fit">A fit of them.</param>
    public static (ChiSquareTest Deviance, ChiSquareTest Pearson) GoodnessOfFit(RatingTable table, RatingFit fit)
    {
        ArgumentNullException.ThrowIfNull(table);
        ArgumentNullException.ThrowIfNull(fit);
        double deviance = 0, pearson = 0;
        foreach (var (covariates, counts) in table.Patterns)
        {
            var total = counts.Sum();
            var chances = fit.Chances(covariates);
            for (var c = 0; c < counts.Length; c++)
            {
                if (counts[c] > 0) deviance += 2 * counts[c] * Math.Log(counts[c] / (total * chances[c]));
                pearson += Math.Pow(counts[c] - (total * chances[c]), 2) / (total * chances[c]);
            }
        }

        var freedom = (table.Patterns.Length * (table.Ratings.Length - 1)) - fit.Parameters;
        return (ChiSquareTest.Of(deviance, freedom), ChiSquareTest.Of(pearson, freedom));
    }

    private static CumulativeEquations At(RatingTable table, RatingFit fit, CumulativeLink link, bool[] byCut, InformationKind information)
    {
        var model = new CumulativeEquations(table, link, byCut) { Expected = information == InformationKind.Expected };
        var cuts = fit.Thresholds.Length;
        ImmutableArray<double> point =
        [
            .. fit.Thresholds.Select(cut => cut.Value),
            .. fit.Effects.SelectMany((effect, p) => Enumerable.Repeat(effect.Value, byCut[p] ? cuts : 1)),
        ];
        model.Evaluate(point.AsSpan());
        return model;
    }
}
