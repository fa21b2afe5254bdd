using System.Collections.Immutable;
using Trier.Statistics.ChoiceModels;
using Trier.Statistics.Counting;
using Trier.Statistics.Power;
using Trier.Statistics.Randomness;
using Trier.Statistics.Rankings;
using Trier.Statistics.RankTests;
using Trier.Statistics.Ratings;

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

    /// <summary>Two columns of team names and two of wins, as R's package holds the season.</summary>
    public static Action BradleyTerryGames(string file)
    {
        var rows = File.ReadLines(file).Skip(1).Select(line => line.Replace("\"", "", StringComparison.Ordinal).Split(',')).ToList();
        var names = rows.SelectMany(row => row.Take(2)).Distinct().Order(StringComparer.Ordinal).ToList();
        var pairs = rows.Select(row => new PairCount(names.IndexOf(row[0]), names.IndexOf(row[1]), Number(row[2]), Number(row[3]))).ToImmutableArray();
        return () => Stands(BradleyTerry.Fit(names.Count, pairs));
    }

    public static Action Cheese(string file)
    {
        var rows = File.ReadLines(file).Skip(1).Select(line => line.Split(',')).Where(row => Number(row[2]) > 0)
            .Select(row => new RatingRow([.. Enumerable.Range(2, 3).Select(level => (int)Number(row[0]) == level ? 1.0 : 0)], (int)Number(row[1]), Number(row[2]))).ToList();
        return () => Stands(ProportionalOdds.Fit(RatingTable.Create(rows)));
    }

    /// <summary>Orders of whole numbers from 0, best first, one a line; adding them up is part of the work.</summary>
    public static Action PlackettLuceOrders(string file)
    {
        var orders = File.ReadLines(file).SelectMany(line => line.Split(',').Select(cell => (int)Number(cell))).ToArray();
        var items = orders.Max() + 1;
        return () => Stands(PlackettLuce.Fit(ChoiceCounts.FromOrders(items, orders)));
    }

    public static int[] DrawnOrders(int count, int items)
    {
        var generator = new Seed(9).Generator();
        var orders = new int[count * items];
        for (var order = 0; order < count; order++)
        {
            var times = Enumerable.Range(0, items).Select(i => generator.NextExponential() / Math.Exp(1.5 * i / items)).ToArray();
            var row = Enumerable.Range(0, items).ToArray();
            Array.Sort(times, row);
            row.CopyTo(orders, order * items);
        }

        return orders;
    }

    private static double Number(string cell) => double.Parse(cell, System.Globalization.CultureInfo.InvariantCulture);

    private static void Stands<T>(Trier.Statistics.Answer<T> answer)
        where T : notnull
    {
        if (!answer.Stands) throw new InvalidOperationException(answer.Refusal!.Sentence);
    }

    public static Action ServingPlan(int tasters, int items) => () => Statistics.Designs.ServingPlan.For(items, tasters, items, new Seed(7));

    public static Action ServingPlanWithRepeat(int tasters, int items) => () => Statistics.Designs.ServingPlan.For(items, tasters, items, new Seed(7), (0, 1));
}
