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
}
