using Trier.Statistics.Counting;
using Trier.Trials.Verdicts.Findings;
using Planned = Trier.Trials.Plans.CountingRule;

namespace Trier.Trials.Verdicts.Counting;

/// <summary>Counts place points with weights that somebody would like to try.</summary>
internal static class Reweighing
{
    public static Reweighed Of(Verdict verdict, Planned.PlacePoints points)
    {
        var electorate = new Electorate(verdict.Record);
        var standing = Standing.Of(Rules.Score(electorate, electorate.Headline, points));
        var scale = Rules.Scale(points.Weights);
        var weights = Rules.Weights(points, electorate.Wheels.Length);
        return new(
            weights,
            [.. verdict.Wheels
                .Select(wheel => (wheel.Id, Column: electorate.OwnColumns[wheel.Id]))
                .Select(wheel => new WeighedLine(wheel.Id, standing.Adjusted ? null : standing.Totals[wheel.Column] / scale, standing.Averages[wheel.Column] / scale))],
            [.. standing.Leaders.Select(column => electorate.Wheels[column].Id)]);
    }
}
