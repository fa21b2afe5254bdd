using System.Collections.Immutable;
using Trier.Statistics.ChoiceModels;
using Trier.Statistics.Counting;
using Trier.Statistics.Power;
using Trier.Statistics.Randomness;
using Trier.Statistics.RankTests;

namespace Trier.Calibration;

/// <summary>One simulated panel judged.</summary>
/// <param name="Chances">Every wheel's chance to be the favourite.</param>
/// <param name="Leader">Leader by average place; of several the first.</param>
/// <param name="Favourite">The crowd's favourite in truth.</param>
/// <param name="ModelBest">The wheel with the highest chance.</param>
/// <param name="GapCover">Share of pairs whose gap interval holds the true gap.</param>
/// <param name="ShareCover">Share of pairs whose share interval holds the true share.</param>
/// <param name="WorthCover">Share of wheels whose posterior interval holds the true centred log-worth.</param>
/// <param name="LeadExcess">Seen gap between leader and second less the true gap of the two.</param>
internal sealed record FavouritePanel(
    ImmutableArray<double> Chances, int Leader, int Favourite, int ModelBest, double GapCover, double ShareCover, double WorthCover, double LeadExcess);

/// <summary>Draws panels from drawn truths and judges them.</summary>
internal static class FavouritePanels
{
    private const int Parts = 64;

    public static SamplingEffort Effort { get; } = new(2, 200, 800);

    public static PanelModel FromPrior(int items, double scale, Generator generator)
    {
        var spread = scale * Math.Abs(generator.NextNormal());
        return PanelModel.Of(Enumerable.Range(0, items).Select(_ => Math.Exp(spread * generator.NextNormal())).ToArray());
    }

    public static IReadOnlyList<FavouritePanel> Draw(int items, int voices, int panels, Seed seed, Func<Generator, PanelModel> truth) =>
        [.. Streams.Run(
            Parts,
            seed,
            (part, generator) => Enumerable.Range(0, Streams.Share(panels, Parts, part)).Select(_ => One(items, voices, truth(generator), generator)).ToList())
            .SelectMany(part => part)];

    private static FavouritePanel One(int items, int voices, PanelModel model, Generator generator)
    {
        var set = new PanelDraw(model).Panel(voices, generator);
        var posterior = BayesianPlackettLuce.Sample(set, new Seed(generator.NextUInt64()), effort: Effort).Value;
        var scores = ScoreSet.FromRankings(set, CountingRule.AveragePlace);
        var standing = Standing.Of(scores);
        var truth = model.AveragePlaces();
        var pairs = Pairs.Compare(scores, 1);
        var order = Enumerable.Range(0, items).OrderBy(i => standing.Averages[i]).ThenBy(i => i).ToArray();
        return new FavouritePanel(
            posterior.ChanceFavourite,
            order[0],
            IndexOfLeast(truth),
            IndexOfLeast([.. posterior.ChanceFavourite.Select(chance => -chance)]),
            pairs.Average(pair => Holds(pair.GapInterval, truth[pair.Worse] - truth[pair.Better])),
            pairs.Average(pair => Holds(pair.ShareInterval, Share(model, pair.Better, pair.Worse))),
            Enumerable.Range(0, items).Average(i => Holds(posterior.LogWorthIntervals[i], Centred(model, i))),
            standing.Averages[order[1]]!.Value - standing.Averages[order[0]]!.Value - (truth[order[1]] - truth[order[0]]));
    }

    private static double Holds(Statistics.Distributions.Interval? interval, double value) => interval is not null && value >= interval.Low && value <= interval.High ? 1 : 0;

    private static double Share(PanelModel model, int i, int j) => model.Tastes.Sum(taste => taste.Share * taste.Worths[i] / (taste.Worths[i] + taste.Worths[j]));

    private static double Centred(PanelModel model, int item)
    {
        var worths = model.Tastes[0].Worths;
        return Math.Log(worths[item]) - worths.Average(worth => Math.Log(worth));
    }

    private static int IndexOfLeast(ImmutableArray<double> values)
    {
        var least = 0;
        for (var i = 1; i < values.Length; i++)
        {
            if (values[i] < values[least]) least = i;
        }

        return least;
    }
}
