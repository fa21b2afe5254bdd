using System.Collections.Immutable;
using Trier.Trials.Makes;
using Trier.Trials.Plans.Factors;

namespace Trier.Trials.Verdicts.Sentences;

/// <summary>What else may have done it: what moves together with the recipe, or with one wheel.</summary>
internal static class AliasSentences
{
    public static IEnumerable<string> All(Verdict verdict)
    {
        if (verdict.Wheels.Length < 2) yield break;
        if (Leaders(verdict) is { } leaders) yield return leaders;
        foreach (var old in Old(verdict)) yield return old;
        if (MakeToMake(verdict) is { } makes) yield return makes;
    }

    private static string? Leaders(Verdict verdict)
    {
        var (first, second) = (verdict.Wheels[0], verdict.Wheels[1]);
        if (first.Facts.Values.Count == 0 && second.Facts.Values.Count == 0) return null;
        var same = string.Equals(first.Facts.Recipe ?? first.Name, second.Facts.Recipe ?? second.Name, StringComparison.OrdinalIgnoreCase);
        // Two makes of one recipe are told by their day; that their names differ says no more.
        ImmutableArray<Difference> differences = [.. Limits.Between(verdict, first, second).Where(difference => !(same && difference.Name == WheelFacts.MakeFact))];
        var pair = $"{first.Name} and {second.Name}";
        var oneMake = first.Facts.SameMake(second.Facts);
        var oneDay = first.Facts.MadeOn is { } made && made == second.Facts.MadeOn;
        if (differences.IsEmpty)
        {
            return (same, oneDay) switch
            {
                (true, true) when !oneMake && first.Facts[WheelFacts.MakeFact] is not null && second.Facts[WheelFacts.MakeFact] is not null =>
                    $"{pair} are one recipe, made twice on one day; else, as far as is written, they are alike.",
                (true, true) => $"{pair} are {(oneMake ? "of one make" : "one recipe and of one day")}; as far as is written they are alike.",
                (true, false) => $"{pair} are one recipe and, as far as is written, differ in their vat day alone.",
                (false, true) => $"{pair} are of one day and differ, as far as is written, in their recipe alone; how much one make strays from the next cannot be told.",
                _ => $"{pair} differ, as far as is written, in their recipe and their vat day alone; which of the two parts them cannot be told.",
            };
        }

        var said = Phrase.List(differences.Select(Said));
        if (oneMake && differences.Length == 1) return $"{pair} are of one make and differ, as far as is written, in {said} alone.";
        if (oneMake) return $"{pair} are of one make and differ in {said}; which of these parts them cannot be told.";
        if (same) return $"{pair} are one recipe and differ in {Phrase.List([.. differences.Select(Said), oneDay ? "their make" : "their vat day"])}; which of these parts them cannot be told.";
        ImmutableArray<Difference> tied = [.. differences.Where(difference => difference.Tied)];
        return tied.IsEmpty
            ? $"{pair} differ in more than their recipe: {said}. Other wheels help to tell these from the recipe, roughly."
            : $"{pair} differ in more than their recipe: {said}. No other wheel takes {Phrase.List(tied.Select(difference => difference.Name))} apart from the recipe here, so what parts them may be either.";
    }

    /// <summary>A wheel far older than the rest: what came with its age, and that its recipe cannot be told from it.</summary>
    private static IEnumerable<string> Old(Verdict verdict)
    {
        if (Limits.Table(verdict) is not { } table) yield break;
        foreach (var (wheel, days, next) in Limits.Aged(verdict))
        {
            var at = Limits.At(table, wheel);
            var with = table.Cords.Where(cord => cord.Wheels is [var only] && only == at).SelectMany(cord => cord.Columns).Select(column => table.Columns[column])
                .Where(factor => factor.Kind is not (FactorKind.Age or FactorKind.Recipe)).Select(factor => factor.Name).ToList();
            var among = with.Count == 0 ? "its age, its recipe or its day" : $"its age, or {Phrase.List(with, "or")}, which came with it";
            var kin = verdict.Wheels.FirstOrDefault(other => other.Id != wheel.Id && string.Equals(other.Facts.Recipe, wheel.Facts.Recipe, StringComparison.OrdinalIgnoreCase) && wheel.Facts.Recipe is not null);
            var beside = kin is null ? "" : $" Held against {kin.Name}, of the same recipe, it shows what all of these did together, and age alone cannot be named.";
            yield return $"{wheel.Name} was {Phrase.Number(days)} days old, the next oldest {Phrase.Number(next)}: what people said of it may be {among}; nobody can take them apart here.{beside}";
        }
    }

    /// <summary>Two makes of one recipe at least as far apart as leader and second: no word on recipes.</summary>
    private static string? MakeToMake(Verdict verdict)
    {
        if (verdict.Leaders.Length != 1 || YardstickSentences.LeadGap(verdict) is not { } lead) return null;
        var widest = verdict.SameRecipe.Where(same => !same.OneMake && !YardstickSentences.IsTheLead(verdict, same)).MaxBy(same => same.Gap);
        return widest is null || widest.Gap < lead
            ? null
            : $"Two makes of {widest.Recipe} came out {Phrase.Places(widest.Gap)} apart, {Naming.Of(verdict, verdict.Wheels[0].Id)} and {Naming.Of(verdict, verdict.Wheels[1].Id)} {Phrase.Places(lead)}: one make differs from the next at least as much, so nothing is said of recipes.";
    }

    private static string Said(Difference difference) => difference.Kind == FactorKind.Age ? $"{difference.Name} ({difference.One} and {difference.Other})" : difference.Name;
}
