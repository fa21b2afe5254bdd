using CsCheck;
using Trier.Statistics.Counting;
using Trier.Statistics.Distributions;
using Trier.Statistics.Randomness;
using Trier.Statistics.Rankings;
using Trier.Statistics.RankTests;

namespace Trier.Statistics.Tests.RankTests;

public sealed class PairsTests
{
    private const int Draws = 200_000;

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

    [Fact]
    public void Gaps_that_are_too_fine_to_add_up_are_counted_sign_by_sign() =>
        Gen.Select(Gen.Long[-400_000_000_000, 400_000_000_000].Array[13], Gen.Long[-3, 3].Array[1]).Sample((fine, coarse) =>
        {
            var gaps = fine.Concat(coarse).ToArray();
            var observed = Math.Abs(gaps.Sum());
            var hits = 0;
            for (var signs = 0; signs < 1 << gaps.Length; signs++)
            {
                if (Math.Abs(gaps.Select((gap, i) => (signs & (1 << i)) == 0 ? gap : -gap).Sum()) >= observed) hits++;
            }

            Assert.Equal((double)hits / (1 << gaps.Length), SignFlip.P(gaps.Select(gap => (gap, 1L))), 1e-12);
        }, iter: 20);

    /// <summary>Against 200,000 drawn flips, whose own error is 0.0005 where p is near 0.05.</summary>
    [Theory]
    [InlineData(60)]
    [InlineData(200)]
    [InlineData(500)]
    public void Many_voices_with_gaps_that_are_too_fine_are_tested_on_a_coarser_step(int voices)
    {
        var random = new Seed(417).Generator();
        var gaps = Enumerable.Range(0, voices).Select(_ => 1 + (long)(random.NextDouble() * 1e12)).ToArray();
        var lead = (long)(1.9 * Math.Sqrt(gaps.Sum(gap => (double)gap * gap)));
        var signed = new long[voices];
        var sum = 0L;
        foreach (var (i, gap) in gaps.Index().Reverse()) sum += signed[i] = sum < lead ? gap : -gap;
        var hits = 0;
        for (var draw = 0; draw < Draws; draw++)
        {
            var drawn = 0L;
            foreach (var gap in gaps) drawn += random.NextDouble() < 0.5 ? gap : -gap;
            if (Math.Abs(drawn) >= Math.Abs(sum)) hits++;
        }

        var p = SignFlip.P(signed.Select(gap => (gap, 1L)));
        Assert.InRange(p, 0.01, 0.3);
        Assert.Equal((double)hits / Draws, p, 0.003);
    }

    [Fact]
    public void Points_on_plates_of_many_lengths_with_ties_are_compared_without_end_of_numbers_or_of_time()
    {
        const int wheels = 24;
        var random = new Seed(1).Generator();
        var rows = Enumerable.Range(0, 500).Select(_ =>
        {
            var served = Enumerable.Range(0, wheels).OrderBy(_ => random.NextDouble()).Take(5 + random.NextInt(4)).ToList();
            return new RankingRow(Ranking.Create(wheels, served.GroupBy(_ => random.NextInt(6))));
        });
        var set = RankingSet.Create(wheels, rows.ToList());
        var points = CountingRule.PlacePoints([.. Enumerable.Range(0, wheels).Select(place => 1_000_000 / (place + 1))]);
        var scores = ScoreSet.FromRankings(set, points);
        Assert.True(scores.Denominator > int.MaxValue);
        Assert.Single(Standing.Of(scores).Pieces);
        Assert.Equal(wheels * (wheels - 1) / 2, Pairs.Compare(scores, 0.01).Length);
    }

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
