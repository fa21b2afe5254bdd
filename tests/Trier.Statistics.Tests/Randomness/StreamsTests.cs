using Trier.Statistics.Randomness;

namespace Trier.Statistics.Tests.Randomness;

public sealed class StreamsTests
{
    [Theory]
    [InlineData(2)]
    [InlineData(5)]
    [InlineData(null)]
    public void Any_number_of_threads_gives_the_same_bits_as_one(int? threads)
    {
        static ulong[] Part(int part, Generator generator) => [.. Enumerable.Range(0, 50 + part).Select(_ => generator.NextUInt64())];
        var one = Streams.Run(33, new Seed(7), Part, threads: 1).SelectMany(part => part);
        Assert.Equal(one, Streams.Run(33, new Seed(7), Part, threads).SelectMany(part => part));
    }

    [Fact]
    public void A_part_draws_from_its_own_child_whatever_the_others_do()
    {
        var found = Streams.Run(4, new Seed(7), (part, generator) => Enumerable.Range(0, part == 2 ? 1000 : 1).Select(_ => generator.NextDouble()).Last());
        Assert.Equal(new Seed(7).Child(3).Generator().NextDouble(), found[3]);
        Assert.Equal(4, found.Distinct().Count());
    }

    [Fact]
    public void Shares_differ_by_at_most_one_and_add_up()
    {
        var shares = Enumerable.Range(0, 16).Select(part => Streams.Share(99_999, 16, part)).ToArray();
        Assert.Equal(99_999, shares.Sum());
        Assert.Equal(1, shares.Max() - shares.Min());
    }

    [Fact]
    public void Each_lane_of_the_wide_streams_is_a_stream_of_the_generator()
    {
        var source = new Seed(11).Generator();
        var words = new ulong[400];
        new WideXoshiro(source).Fill(words);
        var again = new Seed(11).Generator();
        var state = Enumerable.Range(0, 16).Select(_ => again.NextUInt64()).ToArray();
        for (var lane = 0; lane < 4; lane++)
        {
            var alone = new Generator(state[lane], state[4 + lane], state[8 + lane], state[12 + lane]);
            for (var step = 0; step < 100; step++) Assert.Equal(alone.NextUInt64(), words[(4 * step) + lane]);
        }
    }

    [Theory]
    [InlineData(120)]
    [InlineData(7)]
    [InlineData(1)]
    public void Wide_numbers_below_a_bound_are_equally_likely(int bound)
    {
        var numbers = new uint[80_000];
        new WideXoshiro(new Seed(3).Generator()).FillBelow(numbers, (uint)bound);
        var counts = new double[bound];
        foreach (var number in numbers) counts[number]++;
        var expected = 80_000.0 / bound;
        var chiSquare = counts.Sum(n => (n - expected) * (n - expected) / expected);
        Assert.True(bound == 1 || Statistics.Distributions.Tails.ChiSquare(chiSquare, bound - 1) > 1e-4, $"chi-square {chiSquare}");
    }

    /// <summary>Half of all products of so large a bound are rejected: without that, numbers divisible by three would come twice as often.</summary>
    [Fact]
    public void Words_that_would_favour_some_numbers_are_drawn_again()
    {
        const uint bound = 3u << 30;
        var numbers = new uint[80_000];
        new WideXoshiro(new Seed(3).Generator()).FillBelow(numbers, bound);
        Assert.All(numbers, number => Assert.InRange(number, 0u, bound - 1));
        Assert.InRange(numbers.Count(number => number % 3 == 0) / 80_000.0, (1.0 / 3) - 0.0067, (1.0 / 3) + 0.0067);
    }
}
