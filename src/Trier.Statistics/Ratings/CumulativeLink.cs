using Trier.Statistics.Distributions;

namespace Trier.Statistics.Ratings;

/// <summary>The scale on which ratings are cut.</summary>
public enum CumulativeLink
{
    /// <summary>Log-odds: the proportional odds model.</summary>
    Logit,

    /// <summary>Standard normal.</summary>
    Probit,
}

/// <summary>The distribution behind a link.</summary>
internal static class LinkFunctions
{
    /// <summary>P(below), the density and its slope.</summary>
    public static (double Below, double Density, double Slope) At(CumulativeLink link, double eta)
    {
        if (link == CumulativeLink.Probit)
        {
            var density = Math.Exp(-eta * eta / 2) / Math.Sqrt(2 * Math.PI);
            return (Tails.Normal(-eta), density, -eta * density);
        }

        // Written with the smaller exponential, so that neither tail overflows.
        var e = Math.Exp(-Math.Abs(eta));
        var tail = e / (1 + e);
        var body = tail / (1 + e);
        return eta >= 0 ? (1 - tail, body, body * ((2 * tail) - 1)) : (tail, body, body * (1 - (2 * tail)));
    }

    public static double Quantile(CumulativeLink link, double below) =>
        link == CumulativeLink.Probit ? -Tails.NormalQuantile(below) : Math.Log(below / (1 - below));
}
