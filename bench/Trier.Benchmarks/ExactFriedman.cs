using BenchmarkDotNet.Attributes;
using Trier.Statistics.Counting;
using Trier.Statistics.Rankings;
using Trier.Statistics.RankTests;

namespace Trier.Benchmarks;

/// <summary>The exact p of the Friedman statistic with a tie in every ballot.</summary>
public class ExactFriedman
{
    private WholeBallots _ballots = null!;

    [Params("14x4", "10x5", "15x5", "20x5", "50x4")]
    public string Panel { get; set; } = "14x4";

    [GlobalSetup]
    public void Prepare()
    {
        var size = Panel.Split('x').Select(part => int.Parse(part, System.Globalization.CultureInfo.InvariantCulture)).ToArray();
        _ballots = Tied(size[0], size[1]);
    }

    [Benchmark]
    public double P() => ShuffleConvolution.UpperTail(_ballots);

    /// <summary>Ballots that tie two items each, leaning towards one item so that p is near 0.05.</summary>
    internal static WholeBallots Tied(int judges, int items)
    {
        var generator = new Statistics.Randomness.Seed(5).Generator();
        var rows = Enumerable.Range(0, judges).Select(judge =>
        {
            var order = Enumerable.Range(0, items).ToArray();
            generator.Shuffle<int>(order);
            var places = new double?[items];
            for (var i = 0; i < items; i++) places[order[i]] = i == 2 ? 2 : i + 1;
            if (judge % 3 == 0) (places[0], places[order[0]]) = (places[order[0]], places[0]);
            return new RankingRow(Ranking.FromPlaces(places));
        });
        return WholeBallots.Of(VoiceTable.Of(ScoreSet.FromRankings(RankingSet.Create(items, rows), CountingRule.AveragePlace)));
    }
}
