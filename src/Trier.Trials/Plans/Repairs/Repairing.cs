using System.Collections.Immutable;
using System.Globalization;
using Trier.Statistics.Designs;
using Trier.Trials.Makes;
using Trier.Trials.Plans.Differences;
using Trier.Trials.Plans.Factors;
using Trier.Trials.Tastings.Steps;
using Trier.Trials.Verdicts.Sentences;

namespace Trier.Trials.Plans.Repairs;

/// <summary>
/// Finds changes that would loosen knots. Each is tried: the table is built again as it would be after the change, and the ties are counted. The least change is the one with the most
/// ties undone for its price; prices are 1 for what costs no vat, 2 for a vat more or a vat shared, 3 for a tasting more, 4 where wheels that are made already would have to be made anew (our judgement). A cord over n things is n - 1 ties.
/// </summary>
public static class Repairing
{
    /// <summary>All changes that would help, the least first; the anchor, which helps later tastings, last.</summary>
    /// <param name="table">The table as it stands.</param>
    /// <param name="day">Day of the tasting, or null.</param>
    public static ImmutableArray<Repair> Of(DifferenceTable table, DateOnly? day)
    {
        var tried = Candidates(table, day).Where(candidate => candidate.Repair.Loosens > 0).OrderByDescending(candidate => candidate.Repair.Loosens / (double)candidate.Price).ThenBy(candidate => candidate.Price).Select(candidate => candidate.Repair).ToList();
        if (tried.Count > 0) tried[0] = tried[0] with { Least = true };
        tried.Add(Anchor());
        return [.. tried];
    }

    private static IEnumerable<(Repair Repair, int Price)> Candidates(DifferenceTable table, DateOnly? day)
    {
        if (table.Wheels.Length < 2) yield break;
        if (Kinds(table).Contains(FactorKind.Age))
        {
            yield return (
                Try(table, day, RepairKind.SameAge, "Make all wheels within two weeks, so that they are of one age on the day", Made(table) ? "Wheels that are made already need a tasting each at the wanted age: then the day differs instead." : "The vats crowd into a fortnight.", SameAge(table.Wheels)),
                Made(table) ? 4 : 1);
            // Waiting changes the age alone: the day a wheel was made, and the milk of that year, stay what they are.
            if (day is not null) yield return (KeepHalf(table), 3);
        }

        if (table.SeveralRecipes && Kinds(table).Any(kind => kind is FactorKind.Milk or FactorKind.MilkYear or FactorKind.HeatTreatment || table.LoneRecipes.Length > 1))
            yield return (Try(table, day, RepairKind.SplitVat, "Split one milk over all recipes on one day", "As many pots as recipes, and smaller wheels: small wheels dry faster.", OneMilk(table.Wheels)), Made(table) ? 4 : 2);

        if (table.Wheels.Length < DraftTasting.MostWheels)
        {
            foreach (var recipe in table.LoneRecipes)
            {
                yield return (
                    Try(table, day, RepairKind.MakeAgain, $"Make {recipe} a second time, on another day", "One more vat day, and one more sample on every plate.", [.. table.Wheels, Again(table, recipe)], recipe),
                    2);
            }
        }

        if (table.Wheels.Length < 3) yield break;
        // That a recipe with one make is gone with its wheel is no gain.
        int Own(PlannedWheel wheel) => table.LoneRecipes.Contains(wheel.Recipe, StringComparer.OrdinalIgnoreCase) && table.Wheels.Count(other => string.Equals(other.Recipe, wheel.Recipe, StringComparison.OrdinalIgnoreCase)) == 1 ? 1 : 0;
        var leaving = table.Wheels.Where((_, i) => i != table.Reference).MinBy(wheel => Ties(DifferenceTable.Of(table.Wheels.Remove(wheel), day)) + Own(wheel))!;
        var leave = Try(table, day, RepairKind.LeaveOut, $"Leave {leaving.Name} out, for a tasting of its own", $"Nothing is learned of {leaving.Name}; every taster has more attention for the others.", table.Wheels.Remove(leaving), leaving.Label);
        yield return (leave with { Loosens = leave.Loosens - Own(leaving) }, 1);
    }

    private static Repair Try(DifferenceTable table, DateOnly? day, RepairKind kind, string deed, string price, ImmutableArray<PlannedWheel> wheels, string? subject = null)
    {
        var after = DifferenceTable.Of(wheels, day);
        var gone = Tied(table).Except(Tied(after), StringComparer.Ordinal).ToList();
        var lone = table.LoneRecipes.Except(after.LoneRecipes, StringComparer.OrdinalIgnoreCase).ToList();
        var loosens = Ties(table) - Ties(after);
        var gain = loosens <= 0 ? "" : gone.Count > 0
            ? $"Then {Phrase.List(gone)} {Phrase.Verb(gone.Count, "is", "are")} no longer tied to anything else."
            : $"Then what {Phrase.List(lone)} {Phrase.Verb(lone.Count, "does", "do")} can be told from its day a little.";
        return new(kind, deed, price, loosens, gain, subject, Least: false);
    }

    private static Repair KeepHalf(DifferenceTable table)
    {
        var age = Enumerable.Range(0, table.Columns.Length).Where(column => table.Columns[column].Kind == FactorKind.Age).ToList();
        var loosens = table.Cords.Sum(cord => Math.Min(cord.Columns.Length - 1, cord.Columns.Count(age.Contains))) + table.Told.Count(told => age.Contains(told.Column) && (told.Telling == Telling.Together || told.Nearly));
        return new(
            RepairKind.KeepHalf,
            "Keep half of each wheel for a second tasting at another age",
            "A second tasting some weeks later, and half the cheese at each; every wheel is then seen at two ages.",
            loosens,
            loosens == 0 ? "" : "Then age is no longer tied to anything else.",
            null,
            Least: false);
    }

    private static int Ties(DifferenceTable table) =>
        table.Cords.Sum(cord => cord.Columns.Length - 1) + table.Told.Count(told => told.Telling == Telling.Together || told.Nearly) + table.LoneRecipes.Length;

    private static IEnumerable<string> Tied(DifferenceTable table) =>
        table.Cords.SelectMany(cord => cord.Columns).Concat(table.Told.Where(told => told.Telling == Telling.Together || told.Nearly).Select(told => told.Column)).Where(column => column > 0).Select(column => table.Columns[column].Name).Distinct(StringComparer.Ordinal);

    private static ImmutableHashSet<FactorKind> Kinds(DifferenceTable table) =>
        [.. table.Cords.SelectMany(cord => cord.Columns).Concat(table.Told.Where(told => told.Telling != Telling.Apart || told.Nearly).Select(told => told.Column)).Select(column => table.Columns[column].Kind)];

    private static bool Made(DifferenceTable table) => table.Wheels.Any(wheel => wheel.Facts.MadeOn is not null);

    private static ImmutableArray<PlannedWheel> SameAge(ImmutableArray<PlannedWheel> wheels) =>
        [.. wheels.Select(wheel => wheel with { Facts = wheel.Facts.With(WheelFacts.MadeFact, null).With(WheelFacts.PlannedFact, null) })];

    private static ImmutableArray<PlannedWheel> OneMilk(ImmutableArray<PlannedWheel> wheels) =>
        [.. SameAge(wheels).Select(wheel => wheel with { Facts = wheel.Facts.With(WheelFacts.MilkFact, null).With("milk lot", null).With(WheelFacts.HeatTreatmentFact, null) })];

    /// <summary>The recipe once more, made in everything else as the wheel that the others are compared with.</summary>
    private static PlannedWheel Again(DifferenceTable table, string recipe)
    {
        var like = table.Wheels[table.Reference].Facts;
        var facts = WheelFacts.Of([.. like.Values.Where(fact => fact.Key is not WheelFacts.RecipeFact).Select(fact => new KeyValuePair<string, string?>(fact.Key, fact.Value)), new(WheelFacts.RecipeFact, recipe)]);
        // What the recipe itself is made of comes with it.
        var own = table.Wheels.First(wheel => string.Equals(wheel.Recipe, recipe, StringComparison.OrdinalIgnoreCase)).Facts;
        if (like.MadeOn is { } day && own.MadeOn == day) facts = facts.With(WheelFacts.MadeFact, day.AddDays(-1).ToString("yyyy-MM-dd", CultureInfo.InvariantCulture));
        foreach (var part in new[] { WheelFacts.CoagulantFact, WheelFacts.AdditivesFact, WheelFacts.RindFact }) facts = facts.With(part, own[part]);
        return new(string.Create(CultureInfo.InvariantCulture, $"W{table.Wheels.Length + 1}"), $"{recipe} again", facts, null);
    }

    private static Repair Anchor() => new(
        RepairKind.Anchor,
        "Serve one cheese that you can always have at every tasting, as an anchor",
        "One sample more on every plate, each time.",
        0,
        "It loosens nothing in this tasting; later ones can be put together with it.",
        null,
        Least: false);
}
