using CsCheck;
using Trier.Statistics.Distributions;
using Trier.Statistics.RankTests;

namespace Trier.Statistics.Tests.RankTests;

public sealed class PairsTests
{
    [Theory]
    [InlineData(3, new[] { 1, 1, 1 })]
    [InlineData(4, new[] { 3, 3, 3, 3, 2, 1 })]
    [InlineData(5, new[] { 6, 6, 6, 6, 6, 4, 4, 3, 2, 1 })]
    public void Shaffers_divisors_are_those_of_the_method_page(int items, int[] divisors) => Assert.Equal(divisors, Shaffer.Divisors(items));

    [Fact]
    public void Six_items_step_through_the_possible_numbers() =>
        Assert.Equal([10, 10, 10, 10, 10, 10, 7, 7, 7, 6, 4, 4, 3, 2, 1], Shaffer.Divisors(6));

    [Theory]
    [InlineData(3, 6)]
    [InlineData(4, 7)]
    [InlineData(5, 8)]
    [InlineData(6, 9)]
    public void The_smallest_panels_are_those_of_the_method_page(int items, int panel) => Assert.Equal(panel, Shaffer.SmallestPanel(items));

    [Fact]
    public void Sign_flips_equal_the_enumeration_of_all_signs() =>
        Gen.Int[-5, 5].Array[1, 12].Sample(gaps =>
        {
            var observed = Math.Abs(gaps.Sum());
            var hits = 0;
            for (var signs = 0; signs < 1 << gaps.Length; signs++)
            {
                if (Math.Abs(gaps.Select((gap, i) => (signs & (1 << i)) == 0 ? gap : -gap).Sum()) >= observed) hits++;
            }

            Assert.Equal((double)hits / (1 << gaps.Length), SignFlip.P(gaps.Select(gap => ((long)gap, 1L))), 1e-12);
        });

    /// <summary>Equal gaps make it the sign test; values of R's binom.test.</summary>
    [Theory]
    [InlineData(10, 12, 0.03857421875)]
    [InlineData(9, 12, 0.1459960938)]
    [InlineData(18, 24, 0.02265584469)]
    [InlineData(26, 40, 0.08069046775)]
    public void With_equal_gaps_it_is_the_sign_test(long wins, long n, double p) =>
        Assert.Equal(p, SignFlip.P([(3, wins), (-3, n - wins)]), 1e-9);

    [Fact]
    public void A_large_panel_keeps_its_small_tail()
    {
        // 600 of 1000: twice the binomial upper tail, R: 2*pbinom(599, 1000, .5, lower.tail = FALSE) in other words.
        var p = SignFlip.P([(1, 600), (-1, 400)]);
        Assert.Equal(1, p / (2 * Tails.BinomialAtLeast(600, 1000, 0.5)), 1e-9);
    }

    /// <summary>20,000 voices with gaps of one size: the binomial tail, summed by the frequencies of its characteristic function.</summary>
    [Theory]
    [InlineData(10_000)]
    [InlineData(10_040)]
    [InlineData(10_200)]
    [InlineData(10_400)]
    public void A_crowd_of_thousands_is_summed_by_frequencies(long wins)
    {
        var exact = wins == 10_000 ? 1 : Math.Min(1, 2 * Tails.BinomialAtLeast(wins, 20_000, 0.5));
        Assert.Equal(exact, SignFlip.P([(1, wins), (-1, 20_000 - wins)]), 1e-11);
    }

    /// <summary>The same gaps by convolution of a few and, made ten thousand times finer by an extra voice, by frequencies: both within the other's reach.</summary>
    [Fact]
    public void Frequencies_agree_with_the_convolution_on_mixed_gaps()
    {
        (long, long)[] gaps = [(1, 300), (-1, 250), (2, 120), (-2, 90), (3, 60), (-3, 75), (5, 20), (-5, 31)];
        var convolved = SignFlip.P(gaps);
        // One more voice with the smallest gap among gaps a thousand times as large moves nothing but the path that is taken.
        var summed = SignFlip.P([.. gaps.Select(gap => (gap.Item1 * 1000, gap.Item2)), (1, 1)]);
        Assert.InRange(convolved, 0.01, 0.99);
        Assert.Equal(convolved, summed, 0.02);
    }

    [Fact]
    public void Where_the_tail_is_finer_than_rounding_a_bound_is_given() =>
        Assert.InRange(SignFlip.P([(1, 15_000), (-1, 5_000)]), 0, 1e-12);

    [Fact]
    public void Clopper_Pearson_and_Wilson_hold()
    {
        // R binom.test(682, 925): Conover (1971) p. 97; and binom.test(10, 12).
        var large = Interval.ExactShare(682, 925);
        Assert.Equal(0.7076682641, large.Low, 1e-8);
        Assert.Equal(0.7654065582, large.High, 1e-8);
        var small = Interval.ExactShare(10, 12);
        Assert.Equal(0.5158622513, small.Low, 1e-8);
        Assert.Equal(0.9791374745, small.High, 1e-8);

        // Wilson's ends solve (p - s)^2 = z^2 s (1 - s)/n.
        var wilson = Interval.OfShare(9, 12);
        var z = Tails.NormalQuantile(0.05);
        foreach (var end in new[] { wilson.Low, wilson.High })
            Assert.Equal(z * z * end * (1 - end) / 12, Math.Pow(0.75 - end, 2), 1e-12);
    }
}
