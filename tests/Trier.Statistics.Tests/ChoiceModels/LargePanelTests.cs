using Trier.Statistics.ChoiceModels;
using Trier.Statistics.Randomness;
using Trier.Statistics.Rankings;

namespace Trier.Statistics.Tests.ChoiceModels;

/// <summary>Thousands of judges who prefer nothing: the spread is near 0, where a chain must neither stall nor run away.</summary>
public class LargePanelTests
{
    [Fact]
    public void A_chain_that_starts_far_from_six_thousand_even_ballots_comes_to_an_end()
    {
        var generator = new Seed(3).Generator();
        var orders = Enumerable.Range(0, 6_000).Select(_ =>
        {
            var order = new[] { 0, 1, 2, 3, 4 };
            generator.Shuffle(order.AsSpan());
            return Ranking.Create(5, order.Select(item => new[] { item }), []);
        });
        var posterior = BayesianPlackettLuce.Sample(RankingSet.Create(orders), new Seed(2), effort: new SamplingEffort(2, 200, 2_000)).Value;
        Assert.Equal(1, posterior.ChanceFavourite.Sum(), 1e-9);
        Assert.All(posterior.FavouriteShare, share => Assert.Equal(0.2, share, 0.03));
    }
}
