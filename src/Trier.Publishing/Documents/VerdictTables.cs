using System.Collections.Immutable;
using Trier.Publishing.Charts;
using Trier.Publishing.Writing;
using Trier.Trials.Verdicts;
using Trier.Trials.Verdicts.Findings;

namespace Trier.Publishing.Documents;

/// <summary>The tables of a verdict's document.</summary>
internal static class VerdictTables
{
    public static Table Tally(Verdict verdict, ImmutableArray<TallyLine> lines, string caption)
    {
        var weights = lines.IsEmpty ? "" : $" {Numbers.Points(lines[0].Weights)}";
        return new(
            caption,
            [new("wheel", Number: false), new("firsts"), new("lasts"), new("average place"), new($"place points{weights}"), new("average liking 1 to 9 (n)")],
            [.. lines.Select(line => (ImmutableArray<Cell>)
            [
                Wheel(verdict, line.Id),
                new(line.FirstsShared > 0 ? $"{Numbers.Plain(line.Firsts)} ({Numbers.Plain(line.FirstsShared)} shared)" : Numbers.Plain(line.Firsts), line.Firsts == lines.Max(other => other.Firsts)),
                new(Numbers.Plain(line.Lasts), line.Lasts == lines.Min(other => other.Lasts)),
                new(line.AveragePlace is { } place ? Numbers.Places(place, 2) : "–", line.AveragePlace == lines.Min(other => other.AveragePlace)),
                new(Numbers.Places(line.PlacePoints, 1), line.PlacePoints == lines.Max(other => other.PlacePoints)),
                new(line.MeanLiking is { } liking ? $"{Numbers.Places(liking, 2)} ({line.Likings})" : "–", line.MeanLiking is not null && line.MeanLiking == lines.Max(other => other.MeanLiking)),
            ])]);
    }

    public static Table HeadToHead(Verdict verdict) => new(
        "Head to head: on how many ballots the row stands above the column, ties half.",
        [new("above", Number: false), .. verdict.Wheels.Select(wheel => new Head(wheel.Name))],
        [.. verdict.Wheels.Select(wheel => (ImmutableArray<Cell>)
        [
            Wheel(verdict, wheel.Id),
            .. verdict.Wheels.Select(other => new Cell(verdict.HeadToHead.FirstOrDefault(line => line.Id == wheel.Id && line.Other == other.Id) is { } found ? Numbers.Plain(found.Above + (found.Ties / 2.0)) : "")),
        ])]);

    public static IEnumerable<Block> Chances(Verdict verdict)
    {
        if (verdict.Deep?.Chances is not { } chances) yield break;
        string Hundred(IEnumerable<WheelChance> wheels, string id) => 100 * wheels.First(wheel => wheel.Id == id).Chance is var chance && chance < 1 ? "less than 1" : Numbers.Places(chance, 0);
        yield return new Table(
            chances.Settled ? $"How often, in 100, each would be the favourite of people like these, by one stated model; a blind guess is right {Numbers.Plain(Math.Round(100.0 / verdict.Wheels.Length, 1))} times." : "The draws behind these chances did not settle: do not lean on them.",
            [new("wheel", Number: false), new("everybody"), .. chances.InCamps.Select(camp => new Head($"who like {camp.Taste.ToString().ToLowerInvariant()} ({Numbers.Plain(camp.Voices)})"))],
            [.. verdict.Wheels.Select(wheel => (ImmutableArray<Cell>)[Wheel(verdict, wheel.Id), new(Hundred(chances.Wheels, wheel.Id)), .. chances.InCamps.Select(camp => new Cell(Hundred(camp.Wheels, wheel.Id)))])]);
    }

    public static IEnumerable<Block> Camps(Verdict verdict)
    {
        if (verdict.Deep?.Camps is not { } camps) yield break;
        yield return new Table(
            "Average place by what people said, before tasting, that they usually like.",
            [new("wheel", Number: false), new($"milder ({Numbers.Plain(camps.Milder)})"), new($"stronger ({Numbers.Plain(camps.Stronger)})"), new("so far apart by luck"), new("verdict", Number: false)],
            [.. camps.Wheels.Select(wheel => (ImmutableArray<Cell>)[Wheel(verdict, wheel.Id), new(Average(wheel.Milder)), new(Average(wheel.Stronger)), new(Numbers.OneIn(wheel.P)), new(wheel.Shown ? "shown" : "open")])]);
    }

    public static Table Pairs(Verdict verdict) => new(
        "Pair by pair, on the ballots counted here that placed both. What is shown steps down from the test for any difference: a small chance alone shows nothing.",
        [new("placed better", Number: false), new("than", Number: false), new("places apart"), new("who preferred it"), new("chance if alike"), new("verdict", Number: false)],
        [.. verdict.Pairs.Select(pair => (ImmutableArray<Cell>)[Wheel(verdict, pair.Better), new(verdict.Sample(pair.Worse).Name), new(Numbers.Places(pair.Gap, 2)), new($"{Numbers.Plain(pair.Preferring)} of {Numbers.Plain(pair.Voices)}"), new(Numbers.Chance(pair.P)), new(pair.Shown ? "shown" : "open")])]);

    public static Table Variants(Verdict verdict)
    {
        // A row for every ballot that changes nothing would bury those that do.
        var idle = verdict.Variants.Where(variant => variant is { Kind: VariantKind.WithoutOne, Effect: VariantEffect.Same }).ToList();
        var told = verdict.Variants.Where(variant => idle.Count < 2 || !idle.Contains(variant)).Select(variant => (ImmutableArray<Cell>)[new(variant.Label), new(Names(verdict, variant.Leaders)), new(Names(verdict, variant.MostFirsts)), new(variant.Effect switch { VariantEffect.Same => "nothing", VariantEffect.LevelChanges => "how sure", _ => "the leader" })]);
        IEnumerable<ImmutableArray<Cell>> rest = idle.Count < 2 ? [] : [[new($"without any one of {(idle.Count == verdict.Variants.Count(variant => variant.Kind == VariantKind.WithoutOne) ? "the" : "the other")} {Numbers.Plain(idle.Count)} ballots"), new(Names(verdict, verdict.Leaders)), new(""), new("nothing")]];
        return new(
            "Every other way of counting that was tried.",
            [new("counted", Number: false), new("leader", Number: false), new("most firsts", Number: false), new("what changes", Number: false)],
            [.. told, .. rest]);
    }

    public static Cell Wheel(Verdict verdict, string id) => new(verdict.Sample(id).Name is var name && name == id ? name : $"{name} {id}", Look: VerdictLooks.Of(verdict.Record)[id]);

    private static string Names(Verdict verdict, ImmutableArray<string> ids) => string.Join(" and ", ids.Select(id => verdict.Sample(id).Name));

    private static string Average(double? place) => place is { } value ? Numbers.Places(value, 2) : "–";
}
