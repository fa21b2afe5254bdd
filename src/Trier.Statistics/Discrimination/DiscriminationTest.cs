using Trier.Statistics.Distributions;

namespace Trier.Statistics.Discrimination;

/// <summary>How the samples are presented.</summary>
public enum Presentation
{
    /// <summary>Three samples, two alike: find the odd one. By luck 1/3.</summary>
    Triangle,

    /// <summary>A reference and two samples: find the one like it. By luck 1/2.</summary>
    DuoTrio,

    /// <summary>Two samples: which has more of a named quality. By luck 1/2.</summary>
    PairedDirectional,

    /// <summary>Three samples: which has most of a named quality. By luck 1/3.</summary>
    ThreeDirectional,
}

/// <summary>
/// Discrimination tests: least correct answers, exact p, power, panel size, and d' under the equal-variance normal model. Right answers are binomial by luck.
/// Source of the psychometric functions: [Ennis1993].
/// </summary>
public static class DiscriminationTest
{
    private const int Steps = 2000;
    private const double Reach = 10;
    private const double LargestDistance = 20;

    /// <summary>The chance of a right answer by luck.</summary>
    /// <param name="presentation">How the samples are presented.</param>
    public static double Luck(Presentation presentation) =>
        presentation is Presentation.Triangle or Presentation.ThreeDirectional ? 1.0 / 3 : 0.5;

    /// <summary>One-sided exact p: the chance of that many right answers or more by luck.</summary>
    /// <param name="presentation">How the samples are presented.</param>
    /// <param name="correct">Right answers.</param>
    /// <param name="answers">All answers.</param>
    public static double P(Presentation presentation, long correct, long answers) => Tails.BinomialAtLeast(correct, answers, Luck(presentation));

    /// <summary>The least number of right answers whose one-sided p is at most <paramref name="alpha"/>; null where none is.</summary>
    /// <param name="presentation">How the samples are presented.</param>
    /// <param name="answers">At least 1.</param>
    /// <param name="alpha">Between 0 and 1.</param>
    public static int? LeastCorrect(Presentation presentation, int answers, double alpha) => Least(answers, Luck(presentation), alpha);

    /// <summary>The least number that prefers one of two samples whose two-sided p (doubled tail) is at most <paramref name="alpha"/>; null where none is.</summary>
    /// <param name="answers">At least 1.</param>
    /// <param name="alpha">Between 0 and 1.</param>
    public static int? LeastPreferring(int answers, double alpha) => Least(answers, 0.5, alpha / 2);

    /// <summary>The chance that the test succeeds when answers are right with a given chance.</summary>
    /// <param name="presentation">How the samples are presented.</param>
    /// <param name="answers">At least 1.</param>
    /// <param name="chanceCorrect">The true chance of a right answer.</param>
    /// <param name="alpha">Level of the test.</param>
    public static double Power(Presentation presentation, int answers, double chanceCorrect, double alpha) =>
        LeastCorrect(presentation, answers, alpha) is { } least ? Tails.BinomialAtLeast(least, answers, chanceCorrect) : 0;

    /// <summary>
    /// Panel sizes for a stated share of people who can tell: the smallest that reaches the power, and the smallest from which it never drops
    /// below again up to <paramref name="largest"/> (the binomial's saw-tooth makes them differ). Null where not reached.
    /// </summary>
    /// <param name="presentation">How the samples are presented.</param>
    /// <param name="discriminators">Share of people who can tell, between 0 and 1; the others guess.</param>
    /// <param name="alpha">Level of the test.</param>
    /// <param name="power">Power asked for.</param>
    /// <param name="largest">The largest panel looked at.</param>
    public static (int? Reaching, int? Lasting) PanelSize(Presentation presentation, double discriminators, double alpha, double power, int largest = 1000)
    {
        var chance = Luck(presentation) + (discriminators * (1 - Luck(presentation)));
        int? reaching = null, lasting = null;
        for (var n = 2; n <= largest; n++)
        {
            if (Power(presentation, n, chance, alpha) < power)
            {
                lasting = null;
                continue;
            }

            reaching ??= n;
            lasting ??= n;
        }

        return (reaching, lasting);
    }

    /// <summary>The chance of a right answer at a sensory distance d'.</summary>
    /// <param name="presentation">How the samples are presented.</param>
    /// <param name="distance">d', 0 or more.</param>
    public static double ChanceCorrect(Presentation presentation, double distance)
    {
        switch (presentation)
        {
            case Presentation.PairedDirectional:
                return Below(distance / Math.Sqrt(2));
            case Presentation.DuoTrio:
                double two = Below(distance / Math.Sqrt(2)), six = Below(distance / Math.Sqrt(6));
                return 1 - two - six + (2 * two * six);
            case Presentation.ThreeDirectional:
                return Integral(-Reach, Reach, z => Below(z + distance) * Below(z + distance) * Density(z));
            default:
                var shift = distance * Math.Sqrt(2.0 / 3);
                return 2 * Integral(0, Reach, z => (Below(shift - (z * Math.Sqrt(3))) + Below(-shift - (z * Math.Sqrt(3)))) * Density(z));
        }
    }

    /// <summary>d' and its standard error by the delta method.</summary>
    /// <param name="presentation">How the samples are presented.</param>
    /// <param name="correct">Right answers.</param>
    /// <param name="answers">All answers, at least 1.</param>
    /// <returns>d' is 0 with no error where answers are no better than luck; refused where all are right, for then d' is unbounded.</returns>
    public static Answer<(double Distance, double? Error)> Distance(Presentation presentation, int correct, int answers)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(answers, 1);
        var share = (double)correct / answers;
        if (correct >= answers) return new Refusal(RefusalKind.Separated, "Every answer was right: the distance has no upper bound.");
        if (share <= Luck(presentation)) return (0.0, (double?)null);
        double low = 0, high = LargestDistance;
        for (var i = 0; i < 100; i++)
        {
            var middle = (low + high) / 2;
            if (ChanceCorrect(presentation, middle) < share) low = middle;
            else high = middle;
        }

        const double h = 1e-4;
        var slope = (ChanceCorrect(presentation, low + h) - ChanceCorrect(presentation, Math.Max(0, low - h))) / (low + h - Math.Max(0, low - h));
        return (low, (double?)(Math.Sqrt(share * (1 - share) / answers) / slope));
    }

    private static int? Least(int answers, double chance, double alpha)
    {
        // A p that equals the level but for rounding counts as reaching it. The tail falls as x rises, so the place is halved in on.
        int low = 0, high = answers + 1;
        while (low < high)
        {
            var middle = (low + high) / 2;
            if (Tails.BinomialAtLeast(middle, answers, chance) <= alpha * (1 + 1e-12)) high = middle;
            else low = middle + 1;
        }

        return low > answers ? null : low;
    }

    private static double Below(double z) => Tails.Normal(-z);

    private static double Density(double z) => Math.Exp(-z * z / 2) / Math.Sqrt(2 * Math.PI);

    private static double Integral(double from, double to, Func<double, double> function)
    {
        // Simpson's rule; the integrands are smooth and vanish at 10, so 2,000 steps leave an error below 1e-12.
        var h = (to - from) / Steps;
        var sum = function(from) + function(to);
        for (var i = 1; i < Steps; i++) sum += function(from + (i * h)) * (i % 2 == 0 ? 2 : 4);
        return sum * h / 3;
    }
}
