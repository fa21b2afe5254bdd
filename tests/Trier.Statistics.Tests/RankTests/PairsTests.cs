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
