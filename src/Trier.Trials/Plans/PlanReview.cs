using System.Collections.Immutable;
using System.Globalization;
using Trier.Trials.Makes;
using Trier.Trials.Plans.Amounts;
using Trier.Trials.Plans.Differences;
using Trier.Trials.Plans.Panels;
using Trier.Trials.Plans.Repairs;
using Trier.Trials.Verdicts.Sentences;

namespace Trier.Trials.Plans;

/// <summary>What planning says of an outline: page, terminal and JSON render this value; none of them computes.</summary>
public sealed record PlanReview
{
    /// <summary>What was looked at.</summary>
    public required TrialOutline Outline { get; init; }

    /// <summary>Wheels against everything that may matter; null without a wheel.</summary>
    public required DifferenceTable? Table { get; init; }

    /// <summary>What would loosen its knots, the least change first; empty with fewer than two wheels.</summary>
    public required ImmutableArray<Repair> Repairs { get; init; }

    /// <summary>Cheese that it takes.</summary>
    public required PlanAmounts Amounts { get; init; }

    /// <summary>Vats still to be made, with their days.</summary>
    public required ImmutableArray<PlannedMake> Makes { get; init; }

    /// <summary>What panels could show; null until it is worked out, or where it cannot be.</summary>
    public PanelFindings? Panels { get; init; }

    /// <summary>Reviews an outline; all but the simulated panels.</summary>
    /// <param name="outline">The outline.</param>
    public static PlanReview Of(TrialOutline outline)
    {
        ArgumentNullException.ThrowIfNull(outline);
        var makes = MakeDates.Of(outline);
        // A wheel still to be made stands in the table with the day it should be made.
        ImmutableArray<PlannedWheel> wheels =
            [.. outline.Wheels.Select(wheel => makes.FirstOrDefault(make => make.Wheel == wheel.Name) is { } planned ? wheel with { Facts = wheel.Facts.With(WheelFacts.PlannedFact, planned.Make.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture)) } : wheel)];
        var table = wheels.IsEmpty ? null : DifferenceTable.Of(wheels, outline.Day);
        return new()
        {
            Outline = outline,
            Table = table,
            Repairs = table is { Wheels.Length: >= 2 } ? Repairing.Of(table, outline.Day) : [],
            Amounts = PlanAmounts.Of(outline),
            Makes = makes,
        };
    }

    /// <summary>The same with what panels could show.</summary>
    /// <param name="panels">Panels a figure.</param>
    /// <param name="progress">Told the share done; null for nobody.</param>
    /// <param name="cancellation">Stops between two figures.</param>
    public PlanReview Deepen(int panels, Action<double>? progress, CancellationToken cancellation) =>
        PanelPlanning.Can(Outline) ? this with { Panels = PanelPlanning.Find(Outline, panels, progress, cancellation) } : this;

    /// <summary>Question, rule and who counts, in sentences.</summary>
    public ImmutableArray<string> Question => [Outline.Question, $"Decided by {Phrase.Name(Outline.Rule)}, fixed when the key is sealed. Whoever knows the key stays apart; a ballot of somebody under 12 {(Outline.JuniorsCount ? "counts" : "is shown apart")}."];

    /// <summary>Grams and dates, in sentences.</summary>
    public ImmutableArray<string> AmountsInWords
    {
        get
        {
            var sentences = ImmutableArray.CreateBuilder<string>();
            var twice = Amounts.GramsTwice is { } more ? $" ({Grams(more)} of the wheel served twice)" : "";
            sentences.Add($"{Phrase.Number(Amounts.Plates)} tasters need about {Grams(Amounts.GramsAWheel)} of paste from each wheel{twice}: {Phrase.Number(PlanAmounts.Usual.Cubes)} cubes of 15 mm a sample, about {Grams(Amounts.GramsASample)}, and some to spare.");
            if (Amounts is { WheelKilograms: { } kilograms, WheelCentimetres: { } across, Left: { } left })
                sentences.Add($"With 10 mm of rind off all round that takes a wheel of about {Phrase.Tenths(kilograms)} kg, if it is {Phrase.Tenths(across)} cm across and half as tall; some {Grams(Math.Max(0, 1000 * left))} of crumbs and paste are left. All weights are estimates.");
            if (Outline.Wheels.Any(wheel => wheel.Facts.MadeOn is null))
            {
                if (Outline.Day is null || Outline.AgeDays is null) sentences.Add("Say the day of the tasting and the age wanted, and the make dates are counted back from them.");
                else if (Makes.Length > 1) sentences.Add($"All vats stand within a fortnight, so that the wheels count as of one age on {Day(Outline.Day.Value)}.");
            }

            return sentences.ToImmutable();
        }
    }

    private static string Grams(double grams) => grams >= 100 ? $"{Phrase.Number(10 * (long)Math.Round(grams / 10))} g" : $"{Phrase.Number((long)Math.Round(grams))} g";

    private static string Day(DateOnly day) => day.ToString("dd/MM/yyyy", CultureInfo.InvariantCulture);
}
