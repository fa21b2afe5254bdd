using System.Collections.Immutable;
using Trier.Publishing.Writing;
using Trier.Trials.Plans;
using Trier.Trials.Verdicts;
using Trier.Trials.Verdicts.Findings;

namespace Trier.Publishing.Documents;

/// <summary>Tables for those who ask what if: other draws of these ballots, two tastes, other weights. None of them decides.</summary>
internal static class OtherTables
{
    public static IEnumerable<Block> Steady(Verdict verdict)
    {
        if (verdict.Deep?.Steady is not { } steady) yield break;
        yield return new Table(
            $"How steady the lead is: as many voices drawn again from these same ballots, {Numbers.Places(steady.Draws, 0)} times. No chance of being the best.",
            [new("wheel", Number: false), new("leads, of 100 draws"), new($"{RuleName(verdict)} in 90 of 100 draws")],
            [.. steady.Wheels.Select(line => (ImmutableArray<Cell>)[VerdictTables.Wheel(verdict, line.Id), new(Leads(line)), new(line.Average is { } middle ? $"{Numbers.Places(middle.Low, 2)} and {Numbers.Places(middle.High, 2)}" : "–")])]);
        yield return new Paragraph("It looks surer than it is: where such draws give a leader 85 of 100, it was the favourite of the crowd in 74 (simulated, 5 wheels and 14 tasters).");
    }

    public static IEnumerable<Block> Tastes(Verdict verdict)
    {
        if (verdict.Deep?.Tastes is not { } tastes) yield break;
        yield return new Table(
            $"Two tastes, by a model that asks nobody: of 100 people of each, how many would put the wheel first. {(tastes.Parted ? $"One taste alone would look so divided {Numbers.Chance(tastes.P.Value)} of the time." : "One taste alone looks as divided as this often enough: nothing follows from it.")}",
            [new("wheel", Number: false), .. tastes.Classes.Select((one, i) => new Head($"the {(i == 0 ? "larger" : "smaller")}, {Numbers.Places(100 * one.Share, 0)} of 100"))],
            [.. verdict.Wheels.Select((wheel, at) => (ImmutableArray<Cell>)[VerdictTables.Wheel(verdict, wheel.Id), .. tastes.Classes.Select(one => new Cell(Numbers.Places(100 * one.Wheels[at].First, 0)))])]);
    }

    public static IEnumerable<Block> Weights(Verdict verdict)
    {
        if (verdict.OtherWeights.IsEmpty) yield break;
        var changes = verdict.OtherWeights.Count(tried => tried.ChangesTheLeader(verdict));
        var lengths = verdict.OtherWeights.Any(tried => tried.Lines.Any(line => line.Points is null));
        yield return new Table(
            $"Place points with other weights{(lengths ? ", a ballot, for ballots differ in length" : "")}. {(changes == 0 ? "Who leads stays the same" : $"With {Numbers.Plain(changes)} of the {Numbers.Plain(verdict.OtherWeights.Length)}, others lead or share the lead")}; the planned rule stays the verdict. Underlined: the leader.",
            [new("wheel", Number: false), .. verdict.OtherWeights.Select(tried => new Head(Numbers.Points(tried.Weights)))],
            [.. verdict.Wheels.Select((wheel, at) => (ImmutableArray<Cell>)[VerdictTables.Wheel(verdict, wheel.Id), .. verdict.OtherWeights.Select(tried => new Cell(Points(tried.Lines[at]), tried.Leaders.Contains(wheel.Id)))])]);
    }

    private static string Points(WeighedLine line) => line.Points is { } points ? Numbers.Plain(points) : line.Average is { } average ? Numbers.Places(average, 2) : "–";

    private static string RuleName(Verdict verdict) => verdict.Record.Plan.Rule switch
    {
        CountingRule.Firsts => "share of firsts",
        CountingRule.PlacePoints => "average of place points",
        CountingRule.MeanLiking => "average liking",
        _ => "average place",
    };

    private static string Leads(SteadyLine line) => line.Leads == 0 ? "0" : line.Leads < 0.005 ? "less than 1" : $"{Numbers.Places(100 * line.Leads, 0)} (± {Numbers.Places(Math.Max(0.1, 100 * line.Error), 1)})";
}
