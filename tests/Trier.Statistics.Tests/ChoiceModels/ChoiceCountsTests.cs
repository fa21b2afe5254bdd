using CsCheck;
using Trier.Statistics.ChoiceModels;
using Trier.Statistics.Randomness;
using Trier.Statistics.Rankings;
using Trier.Statistics.Tests.Checks;

namespace Trier.Statistics.Tests.ChoiceModels;

/// <summary>The added-up choices against the ballot-by-ballot likelihood, which is separate code, and against differences of it.</summary>
public sealed class ChoiceCountsTests
{
    private static readonly Gen<(RankingSet Set, double[] Theta)> TiedPanels =
        from items in Gen.Int[3, 5]
        from places in Gen.Int[0, 4].Array[items].Array[1, 6]
        from theta in Gen.Double[-2, 2].Array[items - 1]
        select (RankingSet.Create(places.Select(row => Ranking.FromPlaces([.. row.Select(place => place == 0 ? (double?)null : place)]))), theta);

    [Fact]
    public void Log_likelihood_gradient_and_information_are_those_of_the_ballots() =>
        TiedPanels.Sample(
            sample =>
            {
                var (set, theta) = sample;
                var slow = OrderLikelihood.Of(set).Value;
                var model = new WorthEquations(ChoiceCounts.Of(set).Value, 0);
                double Log(double[] point) => slow.Log([0, .. point]);
                double[] Moved(int a, double step) => [.. theta.Select((value, i) => i == a ? value + step : value)];
                Assert.Equal(Log(theta), model.Evaluate(theta), 1e-9);
                var gradient = model.Gradient.ToArray();
                var information = (double[,])model.Information.Clone();
                const double step = 1e-4;
                for (var a = 0; a < theta.Length; a++)
                {
                    Assert.Equal((Log(Moved(a, step)) - Log(Moved(a, -step))) / (2 * step), gradient[a], 1e-5);
                    model.Evaluate(Moved(a, step));
                    var up = model.Gradient.ToArray();
                    model.Evaluate(Moved(a, -step));
                    for (var b = 0; b < theta.Length; b++) Assert.Equal((model.Gradient[b] - up[b]) / (2 * step), information[a, b], 1e-5);
                }
            },
            iter: 300, threads: 1);

    [Fact]
    public void Kept_orders_give_what_counted_sets_give()
    {
        // Seventeen items keep their orders; the last twelve of them are never served here, and ghosts hold them.
        var generator = new Seed(5).Generator();
        var orders = Enumerable.Range(0, 30).Select(_ =>
        {
            int[] order = [0, 1, 2, 3, 4];
            generator.Shuffle<int>(order);
            return order;
        }).ToArray();
        var few = new WorthEquations(ChoiceCounts.Of(RankingSet.Create(orders.Select(order => Ranking.FromOrder(5, order)))).Value, 0);
        var many = new WorthEquations(ChoiceCounts.Of(RankingSet.Create(orders.Select(order => Ranking.FromOrder(17, order)))).Value, 0);
        double[] theta = [0.4, -0.3, 1.2, 0.1];
        Assert.Equal(few.Evaluate(theta), many.Evaluate([.. theta, .. new double[12]]), 1e-10);
        for (var a = 0; a < 4; a++)
        {
            Assert.Equal(few.Gradient[a], many.Gradient[a], 1e-10);
            for (var b = 0; b < 4; b++) Assert.Equal(few.Information[a, b], many.Information[a, b], 1e-10);
        }
    }

    [Fact]
    public void Flat_orders_are_the_same_ballots_on_any_number_of_cores()
    {
        var set = CheckData.Scores("pl_salad_ranks.csv");
        int[] flat = [.. set.Rows.SelectMany(row => row.Ranking.Groups.Select(group => group[0]))];
        var one = PlackettLuce.Fit(set).Value;
        var other = PlackettLuce.Fit(ChoiceCounts.FromOrders(4, flat)).Value;
        Assert.Equal(one.LogWorths, other.LogWorths);
        Assert.Equal(one.LogLikelihood, other.LogLikelihood);
        Assert.Throws<ArgumentException>(() => ChoiceCounts.FromOrders(4, new[] { 0, 1, 2, 2 }));
        Assert.Throws<ArgumentException>(() => ChoiceCounts.FromOrders(4, new[] { 0, 1, 2 }));
    }

    [Fact]
    public void A_ballot_that_ties_everything_changes_no_estimate()
    {
        var set = CheckData.Inline([1, 2, 3], [2, 1, 3], [1, 3, 2], [3, 1, 2]);
        var tied = RankingSet.Create(3, set.Rows.Add(new RankingRow(Ranking.FromPlaces([1, 1, 1]), 5)));
        Assert.Equal(PlackettLuce.Fit(set).Value.LogWorths, PlackettLuce.Fit(tied).Value.LogWorths);
    }

    [Fact]
    public void Relabelling_items_moves_the_worths_with_them()
    {
        var set = Demo.Set(Demo.Wheels, completeOnly: false);
        int[] turn = [4, 2, 0, 1, 3];
        var fit = PlackettLuce.Fit(set, ghosts: 0.1).Value;
        var turned = PlackettLuce.Fit(set.Restrict(turn), ghosts: 0.1).Value;
        for (var i = 0; i < 5; i++) Assert.Equal(fit.Worths[turn[i]], turned.Worths[i], 1e-8);
    }
}
