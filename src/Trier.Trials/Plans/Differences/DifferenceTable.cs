using System.Collections.Immutable;
using Trier.Statistics.Designs;
using Trier.Trials.Plans.Factors;

namespace Trier.Trials.Plans.Differences;

/// <summary>Things that change together in the same wheels and in no other: no tasting of these wheels can take them apart.</summary>
/// <param name="Number">From 1, in the order of the columns.</param>
/// <param name="Columns">Two columns or more.</param>
/// <param name="Wheels">The wheels that have all of them and differ there from the wheel compared with.</param>
public sealed record Cord(int Number, ImmutableArray<int> Columns, ImmutableArray<int> Wheels);

/// <summary>Whether a thing that differs can be told from the recipe.</summary>
/// <param name="Column">Its column.</param>
/// <param name="Telling">How far they can be told apart.</param>
/// <param name="Shared">Comparisons of the thing that are comparisons of recipes as well; 0 where they can be told apart.</param>
/// <param name="Groups">Wheels within which both can be compared; more than one where nothing ties them.</param>
/// <param name="Inflation">For a number known of every wheel, its variance inflation beside the recipe; else null.</param>
public sealed record Told(int Column, Telling Telling, int Shared, ImmutableArray<ImmutableArray<int>> Groups, double? Inflation)
{
    /// <summary>Whether a number nearly moves together with the recipe.</summary>
    public bool Nearly => Inflation > Aliasing.NearlyTogether;
}

/// <summary>Wheels against everything that may matter: what differs, what is alike, what moves together.</summary>
public sealed record DifferenceTable
{
    private DifferenceTable()
    {
    }

    /// <summary>The wheels, in the order entered.</summary>
    public required ImmutableArray<PlannedWheel> Wheels { get; init; }

    /// <summary>The wheel the others are compared with: the first of the recipe made most often.</summary>
    public required int Reference { get; init; }

    /// <summary>What differs, the recipe first.</summary>
    public required ImmutableArray<WheelFactor> Columns { get; init; }

    /// <summary>What is recorded of every wheel and is alike in all.</summary>
    public required ImmutableArray<WheelFactor> Alike { get; init; }

    /// <summary>What always changes together.</summary>
    public required ImmutableArray<Cord> Cords { get; init; }

    /// <summary>Every column but the recipe's, against the recipe; empty with one recipe alone.</summary>
    public required ImmutableArray<Told> Told { get; init; }

    /// <summary>Recipes of which there is one make: recipe and make are one thing there. Wheels of one day are taken to be of one vat. Empty with one recipe alone.</summary>
    public required ImmutableArray<string> LoneRecipes { get; init; }

    /// <summary>All columns at once: comparisons of recipes that all the others together already hold; null with one recipe, or where a value is unknown.</summary>
    public required int? RecipeShared { get; init; }

    /// <summary>Wheels left over beyond all that differs; null like <see cref="RecipeShared"/>.</summary>
    public required int? LeftOver { get; init; }

    /// <summary>Whether there are two recipes or more.</summary>
    public bool SeveralRecipes => Wheels.Select(wheel => wheel.Recipe).Distinct(StringComparer.OrdinalIgnoreCase).Skip(1).Any();

    /// <summary>Knots: cords, things that move together with the recipe in the same way taken as one, things that nearly do, and recipes with one make taken as one.</summary>
    public int Knots => Cords.Length + WithTheRecipe.Length + Told.Count(told => told.Telling != Telling.Together && told.Nearly) + (LoneRecipes.IsEmpty ? 0 : 1);

    /// <summary>What moves together with the recipe, things that leave the same wheels untied put together.</summary>
    public ImmutableArray<ImmutableArray<Told>> WithTheRecipe =>
        [.. Told.Where(told => told.Telling == Telling.Together).GroupBy(told => string.Join('|', told.Groups.Select(group => string.Join(' ', group))), StringComparer.Ordinal).Select(group => group.ToImmutableArray())];

    /// <summary>Whether a wheel differs from the one compared with.</summary>
    /// <param name="column">A column.</param>
    /// <param name="wheel">A wheel.</param>
    public bool Differs(int column, int wheel) => Columns[column].Differ(Reference, wheel);

    /// <summary>Builds the table.</summary>
    /// <param name="wheels">At least one wheel.</param>
    /// <param name="day">Day of the tasting; without it make dates stand for ages.</param>
    public static DifferenceTable Of(ImmutableArray<PlannedWheel> wheels, DateOnly? day)
    {
        if (wheels.IsDefaultOrEmpty) throw new ArgumentException("There is no wheel.", nameof(wheels));
        var factors = WheelFactors.Of(wheels, day);
        var recipe = factors[0];
        ImmutableArray<WheelFactor> columns = [.. factors.Where(factor => factor.Varies)];
        var recipes = wheels.GroupBy(wheel => wheel.Recipe, StringComparer.OrdinalIgnoreCase).ToList();
        var several = recipes.Count > 1;
        var reference = wheels.IndexOf(recipes.MaxBy(group => group.Count())!.First());
        var known = columns.Where(column => column.Unknown.IsEmpty).ToList();
        var all = several ? Aliasing.AllAtOnce([.. known.Select(AsFactor)]) : default;
        return new()
        {
            Wheels = wheels,
            Reference = reference,
            Columns = columns,
            Alike = [.. factors.Where(factor => !factor.Varies && factor.Unknown.IsEmpty && factor.Kind != FactorKind.Recipe && wheels.Length > 1)],
            Cords = Tie(columns, reference),
            Told = several ? Tell(recipe, columns) : [],
            LoneRecipes = several ? [.. recipes.Where(group => Makes(group) == 1).Select(group => group.Key)] : [],
            RecipeShared = several && known.Count == columns.Length ? all.Shared[0] : null,
            LeftOver = several && known.Count == columns.Length ? all.LeftOver : null,
        };
    }

    /// <summary>How many makes some wheels come from: wheels of one day count as one, those without a day as one each.</summary>
    /// <param name="wheels">Wheels of one recipe.</param>
    public static int Makes(IEnumerable<PlannedWheel> wheels)
    {
        var days = wheels.Select(wheel => wheel.Facts.MadeOrPlanned).ToList();
        return days.OfType<DateOnly>().Distinct().Count() + days.Count(day => day is null);
    }

    private static ImmutableArray<Told> Tell(WheelFactor recipe, ImmutableArray<WheelFactor> columns)
    {
        var question = AsFactor(recipe);
        return
        [
            .. Aliasing.Of(question, columns.Skip(1).Select(AsFactor)).Select((found, i) =>
            {
                var numbers = columns[i + 1].Numbers;
                double? inflation = !numbers.IsEmpty && numbers.All(number => number is not null) ? Aliasing.VarianceInflation(question, [.. numbers.Select(number => number!.Value)]) : null;
                return new Told(i + 1, found.Telling, found.Shared, found.Groups, inflation);
            }),
        ];
    }

    /// <summary>Per column and level the wheels that have it; what two columns have in common is one cord.</summary>
    private static ImmutableArray<Cord> Tie(ImmutableArray<WheelFactor> columns, int reference)
    {
        var sets = new List<(string Key, ImmutableArray<int> Wheels, List<int> Columns)>();
        for (var column = 0; column < columns.Length; column++)
        {
            var levels = columns[column].Levels;
            // Where a wheel is unknown, what always comes together cannot be said.
            if (levels.Any(level => level is null)) continue;
            foreach (var level in levels.Distinct(StringComparer.Ordinal).Where(level => level != levels[reference]))
            {
                ImmutableArray<int> wheels = [.. Enumerable.Range(0, levels.Length).Where(i => levels[i] == level)];
                var key = string.Join(' ', wheels);
                if (sets.FirstOrDefault(set => set.Key == key) is { Columns: { } found }) found.Add(column);
                else sets.Add((key, wheels, [column]));
            }
        }

        return [.. sets.Where(set => set.Columns.Count > 1).OrderBy(set => set.Columns[0]).ThenBy(set => set.Wheels[0]).Select((set, i) => new Cord(i + 1, [.. set.Columns], set.Wheels))];
    }

    private static Factor AsFactor(WheelFactor factor) => new(factor.Name, factor.Levels);
}
