using System.Collections.Immutable;
using System.Globalization;
using Trier.Trials.Common;
using Trier.Trials.Makes;
using Trier.Trials.Plans.Panels;
using Trier.Trials.Verdicts;
using Trier.Trials.Verdicts.Findings;
using Trier.Trials.Verdicts.Sentences;

namespace Trier.Trials.Plans.FollowUps;

/// <summary>The trial that would settle what a verdict left open.</summary>
/// <param name="Plan">Its plan, with the reasons in its aims.</param>
/// <param name="Wheels">Wheels to be made: name and recipe; they have no other facts yet.</param>
/// <param name="ServeTwice">Which of them is served twice, from 0; null for none.</param>
public sealed record FollowUp(TrialPlan Plan, ImmutableArray<(string Name, WheelFacts Facts)> Wheels, int? ServeTwice)
{
    private const int MostTitle = 80;
    private const int MostName = 30;

    // Within the error of a few thousand panels the simulated sizes for two alike makes a recipe; larger panels are few in a kitchen.
    private static readonly ImmutableArray<int> Sizes = [8, 14, 20, 24, 30, 40, 60];

    /// <summary>Plans what should come next.</summary>
    /// <param name="verdict">The verdict of a trial, not of a file.</param>
    /// <param name="trial">The trial it belongs to.</param>
    /// <param name="stands">Its plan.</param>
    /// <param name="panels">Panels drawn to find how many tasters it takes.</param>
    /// <returns>The plan; refused with fewer than two wheels to make.</returns>
    public static Outcome<FollowUp> From(Verdict verdict, TrialId trial, TrialPlan stands, int panels = PanelPlanning.UsualPanels)
    {
        ArgumentNullException.ThrowIfNull(verdict);
        ArgumentNullException.ThrowIfNull(stands);
        if (verdict.Wheels.Length < 2) return Outcome.Fault<FollowUp>("wheels", "Fewer than two wheels were compared: begin a new trial instead.");
        var reasons = ImmutableArray.CreateBuilder<string>();
        var (one, other) = Pair(verdict, reasons);
        // Two wheels of one vat ask for what was done with each, not for their recipe.
        var oneMake = one.Facts.SameMake(other.Facts) && !Limits.Between(verdict, one, other).IsEmpty;
        var recipes = new[] { one, other }.Select(sample => oneMake ? sample.Name : sample.Facts.Recipe ?? sample.Name).ToList();
        var same = string.Equals(recipes[0], recipes[1], StringComparison.OrdinalIgnoreCase);
        if (same) reasons.Add($"Both are {recipes[0]}: made four times within two weeks, the wheels say how much one make differs from the next.");
        else if (oneMake) reasons.Add($"{one.Name} and {other.Name} came of one vat: split two vats in the same way, so that each make holds one of each. Two makes tell what was done otherwise from a lucky day a little; to show it takes four.");
        else reasons.Add("Two makes of each recipe tell a good recipe from a lucky day a little; to show it of recipes takes four makes of each.");
        if (oneMake) OneThing(verdict, one, other, reasons);
        else Apart(verdict, one, other, reasons);
        ImmutableArray<int> makes = same ? [4] : [2, 2];
        var preference = PlanAims.UsualPreference;
        var tasters = Tasters(new PanelAsk(makes, preference, stands.Rule), panels, reasons);
        foreach (var gone in verdict.Record.Withdrawals.OrderBy(gone => gone.Id, StringComparer.Ordinal))
            reasons.Add($"{gone.Name} was withdrawn and stays out here too: each wheel more on the plate takes tasters from the others. It can be made again for a trial of its own.");
        if (verdict.Deep?.Camps is { Parted: true }) reasons.Add("Those who like milder and those who like stronger cheese parted: ask that again at sign-in, so that each can be answered.");
        var age = Age(verdict, one);
        var title = same ? $"{recipes[0]}, four makes" : $"{recipes[0]} or {recipes[1]}?";
        var question = same ? $"How far do four makes of {recipes[0]} fall apart?" : $"Which do people like better, {recipes[0]} or {recipes[1]}, in two makes each?";
        var aims = new PlanAims(age, tasters, preference, trial, reasons.ToImmutable());
        var plan = stands with { Title = Cut(title, MostTitle), Question = question, Day = null, Rule = stands.Rule is CountingRule.PlacePoints ? CountingRule.Default : stands.Rule, Aims = aims };
        return Outcome.Of(new FollowUp(plan, FourWheels(recipes, oneMake ? [Treated(one), Treated(other)] : [.. recipes.Select(recipe => WheelFacts.Of([new(WheelFacts.RecipeFact, recipe)]))], same), 0));
    }

    /// <summary>The two wheels whose question is open: the leader and the nearest it is not shown over. Camps that parted are shown already; they are asked for again.</summary>
    private static (SampleRecord One, SampleRecord Other) Pair(Verdict verdict, ImmutableArray<string>.Builder reasons)
    {
        var first = verdict.Wheels[0];
        if (verdict.Leaders.Length > 1)
        {
            reasons.Add($"{Naming.Of(verdict, verdict.Leaders)} share the lead.");
            return (first, verdict.Wheels.First(wheel => wheel.Id != first.Id && verdict.Leaders.Contains(wheel.Id)));
        }

        if (verdict.Level.Level == 6)
        {
            reasons.Add($"{first.Name} is shown ahead of every other wheel. What is open is whether the recipe did it or the day.");
            return (first, verdict.Wheels[1]);
        }

        var rival = verdict.Wheels.Skip(1).FirstOrDefault(wheel => !verdict.Level.ShownOver.Contains(wheel.Id)) ?? verdict.Wheels[1];
        reasons.Add(verdict.Level.Reason == NothingToTest.None ? $"{first.Name} leads, and against {rival.Name} it is open." : "There were too few answers to judge, so the two that came first are asked again.");
        return (first, rival);
    }

    /// <summary>What else parts the two wheels, to be made alike.</summary>
    private static void Apart(Verdict verdict, SampleRecord one, SampleRecord other, ImmutableArray<string>.Builder reasons)
    {
        var differences = Limits.Between(verdict, one, other);
        if (differences.IsEmpty) reasons.Add("Make all four within two weeks, so that they are of one age.");
        else reasons.Add($"{one.Name} and {other.Name} also differed in {Phrase.List(differences.Select(difference => difference.Name))}: make all four alike there, within two weeks.");
        foreach (var old in Limits.FarOlder(verdict).Where(old => old.Id == one.Id || old.Id == other.Id))
            reasons.Add($"{old.Name} was much older than the others: to learn what age does, keep half of each new wheel and taste it again at that age.");
    }

    /// <summary>What was done otherwise in the vat, to differ alone.</summary>
    private static void OneThing(Verdict verdict, SampleRecord one, SampleRecord other, ImmutableArray<string>.Builder reasons)
    {
        var differences = Limits.Between(verdict, one, other);
        if (differences.Length > 1) reasons.Add($"They differed in {Phrase.List(differences.Select(difference => difference.Name))}: let them differ in one of these alone.");
    }

    private static WheelFacts Treated(SampleRecord sample) => WheelFacts.Of(
        new[] { WheelFacts.RecipeFact, WheelFacts.PartFact, WheelFacts.DiffersFact }.Select(fact => KeyValuePair.Create(fact, sample.Facts[fact])));

    private static int Tasters(PanelAsk ask, int panels, ImmutableArray<string>.Builder reasons)
    {
        var enough = Sizes.Select(size => PanelPlanning.Point(ask, size, panels)).FirstOrDefault(point => point.Shown.Share >= 0.5);
        if (enough is null)
        {
            reasons.Add($"Even {Phrase.Number(Sizes[^1])} tasters would show a preference of {PanelWords.Ratio(ask.Preference)} in fewer than half of such tastings.");
            return Sizes[^1];
        }

        reasons.Add($"With {Phrase.Number(enough.Tasters)} tasters a preference of {PanelWords.Ratio(ask.Preference)}, the same for all makes of a recipe, would be shown about {Phrase.Number((long)Math.Round(10 * enough.Shown.Share))} times in 10.");
        return enough.Tasters;
    }

    private static int? Age(Verdict verdict, SampleRecord one) =>
        verdict.Record.Head.Day is { } day && one.Facts.MadeOn is { } made && day.DayNumber - made.DayNumber is >= 1 and <= 3_650 and var days ? days : null;

    private static ImmutableArray<(string Name, WheelFacts Facts)> FourWheels(List<string> recipes, ImmutableArray<WheelFacts> facts, bool same)
    {
        // Long names that begin alike are numbered through.
        var alike = string.Equals(Cut(recipes[0], MostName - 2), Cut(recipes[^1], MostName - 2), StringComparison.OrdinalIgnoreCase);
        (int Side, int Number)[] names = same ? [(0, 1), (0, 2), (0, 3), (0, 4)] : [(0, 1), (1, alike ? 3 : 1), (0, 2), (1, alike ? 4 : 2)];
        return [.. names.Select(name => (Cut(string.Create(CultureInfo.InvariantCulture, $"{Cut(recipes[name.Side], MostName - 2)} {name.Number}"), MostName), facts[name.Side]))];
    }

    private static string Cut(string text, int length) => text.Length <= length ? text : text[..length].TrimEnd();
}
