using System.Collections.Immutable;
using Trier.Dairy.Composition;
using Trier.Dairy.Eyes;
using Trier.Trials.Makes.Recipes;

namespace Trier.Trials.Makes.Sheets;

/// <summary>A step on the sheet: when, how long, and every amount it needs.</summary>
/// <param name="Number">1, 2, 3 ...</param>
/// <param name="Step">The recipe's step.</param>
/// <param name="Starts">After the start of the day.</param>
/// <param name="Takes">How long, or null where the recipe gives no time.</param>
/// <param name="Figures">Amounts and expectations, each with its working.</param>
/// <param name="Notes">What should be looked at; plain sentences.</param>
public sealed record SheetStep(int Number, Step Step, TimeSpan Starts, TimeSpan? Takes, ImmutableArray<Figure> Figures, ImmutableArray<string> Notes)
{
    /// <summary>When the step ends, after the start of the day.</summary>
    public TimeSpan Ends => Starts + (Takes ?? TimeSpan.Zero);
}

/// <summary>A pH to expect.</summary>
/// <param name="StepNumber">The step at whose end it is read.</param>
/// <param name="Heading">The step's heading.</param>
/// <param name="After">After the start of the day.</param>
/// <param name="Aim">The recipe's aim.</param>
/// <param name="Table">The published table's pH for such a step, or null.</param>
public sealed record ExpectedPh(int StepNumber, string Heading, TimeSpan After, Aim Aim, double? Table);

/// <summary>The wheel to expect.</summary>
/// <param name="Figures">Yield, mass, size, composition, each with its working.</param>
/// <param name="Limits">Named cheeses of this style and where the expected wheel stands at their limits.</param>
/// <param name="Eyes">What physics says about eyes; null where no propionic culture is added or too little is known.</param>
public sealed record ExpectedWheel(ImmutableArray<Figure> Figures, ImmutableArray<NamedLimits> Limits, GasBudget? Eyes);

/// <summary>The limits of a named cheese beside the expected wheel. Inside does not make a cheese that cheese.</summary>
/// <param name="Standard">The standard.</param>
/// <param name="Standings">Where the wheel stands at each limit.</param>
public sealed record NamedLimits(StandardOfIdentity Standard, ImmutableArray<LimitStanding> Standings);

/// <summary>Something to mind, beside the thing it is about. Never a judgement that a milk or cheese may be eaten.</summary>
/// <param name="About">What it is about: "milk", "brine", "guests".</param>
/// <param name="Sentence">Plain words.</param>
public sealed record SheetCaution(string About, string Sentence);

/// <summary>A vat-day sheet: one recipe version, one milk, every amount.</summary>
/// <param name="Recipe">The recipe.</param>
/// <param name="Vat">The day's milk and means.</param>
/// <param name="Milk">The milk in figures: mass, composition, ratio.</param>
/// <param name="Steps">The steps with amounts and times.</param>
/// <param name="Readings">The pH to expect.</param>
/// <param name="Wheel">The wheel to expect.</param>
/// <param name="Cautions">What to mind.</param>
/// <param name="Questions">What is unusual about the milk or a result.</param>
public sealed record MakeSheet(
    Recipe Recipe,
    Vat Vat,
    ImmutableArray<Figure> Milk,
    ImmutableArray<SheetStep> Steps,
    ImmutableArray<ExpectedPh> Readings,
    ExpectedWheel Wheel,
    ImmutableArray<SheetCaution> Cautions,
    ImmutableArray<string> Questions)
{
    /// <summary>From the first step to the end of the last but the days in brine and drying air: a day at the vat.</summary>
    public TimeSpan VatDay => Steps.TakeWhile(step => step.Step.Kind is not (StepKind.Brine or StepKind.Dry)).Select(step => step.Ends).DefaultIfEmpty(TimeSpan.Zero).Max();

    /// <summary>The day at the vat with how the times of the steps came about.</summary>
    public Figure Day => new("The day at the vat", Measure.Time, VatDay.TotalMinutes, SheetWork.Sum(
        "Times of the steps",
        "start = end of the step before; the cut = rennet + flocculation x multiplier",
        [.. Steps.Where(step => step.Takes is not null && step.Step.Kind is not (StepKind.Brine or StepKind.Dry)).Select(step => new Trier.Dairy.Workings.Given($"{FigureText.Whole(step.Number)}. {step.Step.Heading}", step.Takes!.Value.TotalMinutes, "min"))],
        [new("To the end of the press", VatDay.TotalMinutes, "min")],
        Trier.Dairy.Workings.Sources.Practice) with
    { LikelyError = "Flocculation moves the cut and all that follows; steps without a time count as none." });

    /// <summary>How the pH to expect came about: the recipe's aims, and beside them the published table.</summary>
    public Trier.Dairy.Workings.Working ReadingsWorking => SheetWork.Sum(
        "pH to expect",
        "the recipe's aim; beside it the table's pH where it has such a step",
        [.. Readings.Select(reading => new Trier.Dairy.Workings.Given(reading.Heading, reading.Aim.Value))],
        [.. Readings.Where(reading => reading.Table is not null).Select(reading => new Trier.Dairy.Workings.Given($"{reading.Heading}, table", reading.Table!.Value))],
        Trier.Dairy.Workings.Sources.Practice) with
    { AlsoFrom = [Trier.Dairy.Workings.Sources.GuelphCheese], LikelyError = "A calibrated pH meter is good to 0.03; curd and whey of one moment differ by 0.1 or more (practice)." };

    /// <summary>Every figure of the sheet.</summary>
    public IEnumerable<Figure> Figures => [.. Milk, Day, .. Steps.SelectMany(step => step.Figures), .. Wheel.Figures];

    /// <summary>Works a sheet out.</summary>
    /// <param name="recipe">The recipe.</param>
    /// <param name="read">The day's milk and means, checked.</param>
    public static MakeSheet Of(Recipe recipe, ReadVat read) => new SheetWork(recipe, read).Whole();
}
