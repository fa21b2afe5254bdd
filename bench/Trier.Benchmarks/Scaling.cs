using System.Globalization;
using Trier.Statistics.ChoiceModels;
using Trier.Statistics.Counting;
using Trier.Statistics.Power;
using Trier.Statistics.Randomness;
using Trier.Statistics.Rankings;
using Trier.Statistics.RankTests;

namespace Trier.Benchmarks;

/// <summary>Cost against size: each size doubled four times where the method goes so far, and the exponent, the slope of log time against log size by least squares.</summary>
internal static class Scaling
{
    private static readonly int[] SmallPanels = [6, 12, 24, 48, 96];
    private static readonly int[] Items = [2, 4, 8, 16, 32];

    public static void Print()
    {
        Console.WriteLine("| work | what is doubled | sizes | milliseconds | exponent |\n| --- | --- | --- | --- | --- |");
        Row("Friedman's statistic of a table, 5 items", "judges", [125, 250, 500, 1000, 2000], n => Works.FriedmanTable(n, 5));
        Row("the same, 500 judges", "items", [3, 6, 12, 24, 48], k => Works.FriedmanTable(500, k));
        Row("gate, 9,999 shuffles, 5 items", "voices", SmallPanels, n => Shuffled(n, 5));
        Row("the same, 12 voices", "items", Items, k => Shuffled(12, k));
        Row("exact null, untied, 4 items", "judges", [5, 10, 20, 40, 80], n => Works.NullDistribution(n, 4));
        Row("the same, 6 judges (counting goes to 6)", "items", [3, 4, 5, 6], k => Works.NullDistribution(6, k));
        Row("all pairs, sign flips and steps, 5 items", "voices", [10, 20, 40, 80, 160], n => AllPairs(n, 5));
        Row("the same, 12 voices", "items", Items, k => AllPairs(12, k));
        Row("2,000 simulated panels, 5 items", "voices", SmallPanels, n => Works.Simulation(2_000, n, 5));
        Row("the same, 12 voices (the table of orders ends at 7)", "items", [3, 4, 5, 6, 7], k => Works.Simulation(2_000, 12, k));
        Row("Plackett-Luce, adding up and fit, 10 items", "orders", [1000, 2000, 4000, 8000, 16_000], n => Fit(n, 10));
        Row("the same, 1,000 orders (from 17 items on orders are not added up)", "items", [4, 8, 16, 32, 64], k => Fit(1000, k));
        Row("serving plan, 8 samples", "tasters", [10, 20, 40, 80, 160], n => Works.ServingPlan(n, 8));
        Row("the same, 40 tasters", "samples", Items, k => Works.ServingPlan(40, k));
    }

    private static void Row(string work, string doubled, int[] sizes, Func<int, Action> make)
    {
        var times = sizes.Select(size => 1000 * Clock.Processor(make(size), 5)).ToArray();
        var (x, y) = (sizes.Select(size => Math.Log(size)).ToArray(), times.Select(time => Math.Log(time)).ToArray());
        var slope = x.Zip(y, (a, b) => (a - x.Average()) * (b - y.Average())).Sum() / x.Sum(a => (a - x.Average()) * (a - x.Average()));
        Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"| {work} | {doubled} | {string.Join(" ", sizes)} | {string.Join(" ", times.Select(time => time.ToString("G2", CultureInfo.InvariantCulture)))} | {slope:F1} |"));
    }

    private static RankingSet Panel(int judges, int items)
    {
        var generator = new Seed(4).Generator();
        return RankingSet.Create(items, Enumerable.Range(0, judges).Select(_ =>
        {
            var places = Enumerable.Range(1, items).ToArray();
            generator.Shuffle<int>(places);
            return new RankingRow(Ranking.FromPlaces([.. places.Select(place => (double?)place)]));
        }));
    }

    private static Action Shuffled(int judges, int items)
    {
        var set = Panel(judges, items);
        return () => Gate.Test(set, new Seed(1), new Effort(0, 9_999, 9_999, double.MaxValue));
    }

    private static Action AllPairs(int judges, int items)
    {
        var scores = ScoreSet.FromRankings(Panel(judges, items), CountingRule.AveragePlace);
        return () => Pairs.Compare(scores, 0.01);
    }

    private static Action Fit(int count, int items)
    {
        var orders = Works.DrawnOrders(count, items);
        if (items <= 16) return () => PlackettLuce.Fit(ChoiceCounts.FromOrders(items, orders));
        var set = RankingSet.Create(orders.Chunk(items).Select(order => Ranking.FromOrder(items, [.. order])));
        return () => PlackettLuce.Fit(set);
    }
}
