using System.Collections.Immutable;
using Trier.Statistics.Designs;
using Trier.Trials.Plans.Factors;
using Trier.Trials.Verdicts.Sentences;

namespace Trier.Trials.Plans.Differences;

/// <summary>The difference table in words.</summary>
public static class DifferenceWords
{
    private static readonly string[] Counted = ["no", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten", "eleven", "twelve"];

    /// <summary>"Six wheels, five differences, three knots."</summary>
    /// <param name="table">The table.</param>
    public static string Heading(DifferenceTable table) =>
        $"{Phrase.Capital(Number(table.Wheels.Length, "wheel"))}, {Number(table.Columns.Length, "difference")}, {Number(table.Knots, "knot")}.";

    /// <summary>What one cord ties, in words.</summary>
    /// <param name="table">The table.</param>
    /// <param name="cord">One of its cords.</param>
    public static string Of(DifferenceTable table, Cord cord)
    {
        var names = Phrase.List(cord.Columns.Select(column => table.Columns[column].Name));
        var wheels = Names(table, cord.Wheels);
        var recipe = cord.Columns.Contains(0) && table.SeveralRecipes ? $" {table.Wheels[cord.Wheels[0]].Recipe} can lead as a whole; no part of it can be named as the cause." : "";
        return $"{Phrase.Capital(names)} {(cord.Columns.Length == 2 ? "both" : "all")} change at once in {wheels}, and in no other wheel: no tasting of these wheels can take them apart.{recipe}";
    }

    /// <summary>What cannot be told apart beside the cords, one sentence each.</summary>
    /// <param name="table">The table.</param>
    public static ImmutableArray<string> Knots(DifferenceTable table)
    {
        var sentences = ImmutableArray.CreateBuilder<string>();
        if (!table.LoneRecipes.IsEmpty)
        {
            sentences.Add(table.LoneRecipes.Length == 1
                ? $"There is one make of {table.LoneRecipes[0]}: its recipe and its vat day are one thing here."
                : $"There is one make each of {Phrase.List(table.LoneRecipes)}: recipe and vat day are one thing there.");
        }

        foreach (var together in table.WithTheRecipe)
        {
            var names = together.Select(told => table.Columns[told.Column].Name).ToList();
            var straight = together.Where(told => told.Inflation is { } inflation && !(inflation > Aliasing.NearlyTogether)).Select(told => table.Columns[told.Column].Name).ToList();
            var line = straight.Count > 0 ? $" Only if {Phrase.List(straight)} {Phrase.Verb(straight.Count, "works", "work")} in a straight line can {(names.Count == 1 ? "the two" : "recipe and that")} be told apart." : "";
            sentences.Add(names.Count == 1
                ? $"Recipe and {names[0]} move together: no wheel ties {Parted(table, together[0].Groups)}; what parts them may be the one or the other.{line}"
                : $"Recipe, {Phrase.List(names)} move together: no wheel ties {Parted(table, together[0].Groups)}; what parts them may be any of these.{line}");
        }

        foreach (var told in table.Told.Where(told => told.Telling != Telling.Together))
        {
            var name = table.Columns[told.Column].Name;
            if (told.Nearly)
            {
                sentences.Add($"Recipe and {name} nearly move together: what they do can be told apart only very roughly.");
            }
            else if (told.Telling == Telling.Saturated)
            {
                sentences.Add($"Recipe and {name} can be told apart only if nothing else differs: no wheel is left over.");
            }
        }

        return sentences.ToImmutable();
    }

    /// <summary>What such a tasting can say, and what need not be feared.</summary>
    /// <param name="table">The table.</param>
    public static ImmutableArray<string> CanBeSaid(DifferenceTable table)
    {
        var sentences = ImmutableArray.CreateBuilder<string>();
        sentences.Add(table.Wheels.Length > 1 ? $"Which of these {Word(table.Wheels.Length)} wheels people like those who come like best, on that day." : "With one wheel there is nothing to compare.");
        foreach (var twice in table.Wheels.GroupBy(wheel => wheel.Recipe, StringComparer.OrdinalIgnoreCase).Where(group => group.Skip(1).Any()))
        {
            sentences.Add(DifferenceTable.Makes(twice) == 1 && twice.First().Facts.MadeOrPlanned is not null
                ? $"How far {Word(twice.Count())} wheels of one vat fall apart: {Phrase.List(twice.Select(wheel => wheel.Name))} are {(twice.Count() == 2 ? "both" : "all")} {twice.Key} and of one day. That says nothing of the next make."
                : table.SeveralRecipes
                ? $"How far {Word(twice.Count())} wheels of one recipe fall apart: {Phrase.List(twice.Select(wheel => wheel.Name))} are {(twice.Count() == 2 ? "both" : "all")} {twice.Key}. That gap is a yardstick for the others{(Alike(table, twice) ? "" : ", though more than the vat day differs between them")}."
                : $"All are {twice.Key}: the tasting compares days and wheels, not recipes.");
        }

        ImmutableArray<string> apart = [.. table.Told.Where(told => told.Telling == Telling.Apart && !told.Nearly).Select(told => table.Columns[told.Column].Name)];
        if (!apart.IsEmpty) sentences.Add($"Taken one at a time, {Phrase.List(apart)} can be told from the recipe{(table.RecipeShared > 0 ? "; all at once they cannot" : table.LeftOver == 0 ? "; all at once only if nothing else differs, for no wheel is left over" : "")}.");
        if (!table.Alike.IsEmpty) sentences.Add($"Alike in all as far as is written: {Phrase.List(table.Alike.Select(Said))}.");
        foreach (var column in table.Columns.Where(column => !column.Unknown.IsEmpty)) sentences.Add($"{Phrase.Capital(column.Name)} is not written down for {Names(table, column.Unknown)}, which {Phrase.Verb(column.Unknown.Length, "is", "are")} left out there.");
        return sentences.ToImmutable();
    }

    private static string Said(WheelFactor factor) => factor.Numbers.IsEmpty ? $"{factor.Name} ({factor.Values[0]})" : factor.Kind == FactorKind.Age ? $"{factor.Name} (within two weeks)" : $"{factor.Name} (within a fifth)";

    private static bool Alike(DifferenceTable table, IEnumerable<PlannedWheel> wheels)
    {
        ImmutableArray<int> numbers = [.. wheels.Select(wheel => table.Wheels.IndexOf(wheel))];
        return table.Columns.All(column => numbers.All(number => !column.Differ(numbers[0], number)));
    }

    private static string Parted(DifferenceTable table, ImmutableArray<ImmutableArray<int>> groups) =>
        groups.Length == 2
            ? $"{Names(table, groups[0])} to {Names(table, groups[1])}"
            : $"{string.Join("; ", groups.Take(groups.Length - 1).Select(group => Names(table, group)))} and {Names(table, groups[^1])} to each other";

    private static string Names(DifferenceTable table, ImmutableArray<int> wheels) => Phrase.List(wheels.Select(wheel => table.Wheels[wheel].Name));

    private static string Word(int number) => number < Counted.Length ? Counted[number] : Phrase.Number(number);

    private static string Number(int number, string thing) => $"{Word(number)} {thing}{(number == 1 ? "" : "s")}";
}
