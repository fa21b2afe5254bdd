using Trier.Statistics.Counting;
using Trier.Statistics.Power;
using Trier.Statistics.Randomness;
using Trier.Statistics.Rankings;
using Trier.Statistics.RankTests;

namespace Trier.Benchmarks;

/// <summary>The pieces of work that are held against R and SciPy, each made ready so that only the work is timed.</summary>
internal static class Works
{
    public static Action FriedmanTable(int judges, int items)
    {
        var generator = new Seed(7).Generator();
        var table = Enumerable.Range(0, judges * items).Select(_ => generator.NextNormal()).ToArray();
        return () => FriedmanMatrix.Of(table, items);
    }

    public static Action Permutations(int judges, int items, int draws)
    {
        var generator = new Seed(7).Generator();
        var orders = Enumerable.Range(0, judges).Select(_ =>
        {
            var places = Enumerable.Range(1, items).ToArray();
            generator.Shuffle<int>(places);
            return new RankingRow(Ranking.FromPlaces([.. places.Select(place => (double?)place)]));
        });
        var ballots = WholeBallots.Of(VoiceTable.Of(ScoreSet.FromRankings(RankingSet.Create(items, orders), CountingRule.AveragePlace)));
        return () => PackedShuffles.For(ballots, lowerIsBetter: true)!.Draw(draws, generator);
    }

    public static Action Simulation(int panels, int judges, int items)
    {
        var model = PanelModel.Favourite(items, 2);
        return () => FriedmanSimulation.Run(model, judges, panels, new Seed(7));
    }

    public static Action NullDistribution(int judges, int items) => () => Friedman.NullDistribution(items, judges);

    public static Action TiedExact(int judges, int items)
    {
        var ballots = ExactFriedman.Tied(judges, items);
        return () => ShuffleConvolution.UpperTail(ballots);
    }

    public static Action ServingPlan(int tasters, int items) => () => Statistics.Designs.ServingPlan.For(items, tasters, items, new Seed(7));

    public static Action ServingPlanWithRepeat(int tasters, int items) => () => Statistics.Designs.ServingPlan.For(items, tasters, items, new Seed(7), (0, 1));
}
