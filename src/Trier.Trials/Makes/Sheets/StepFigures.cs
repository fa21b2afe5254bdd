using System.Collections.Immutable;
using Trier.Dairy.Acidity;
using Trier.Dairy.Brine;
using Trier.Dairy.Heating;
using Trier.Dairy.Pressing;
using Trier.Dairy.Quantities;
using Trier.Dairy.Rennet;
using Trier.Dairy.Tables;
using Trier.Trials.Makes.Recipes;
using Sources = Trier.Dairy.Workings.Sources;

namespace Trier.Trials.Makes.Sheets;

/// <summary>The figures of one step.</summary>
internal sealed class StepFigures(SheetWork work, WheelWork wheel)
{
    private const double BrineLitresPerKilogram = 4;
    private const double Gravity = 9.80665;

    // Common practice, no source.
    private const double MostStacked = 25;
    private const double Scalds = 50;

    private VatDraft Means => work.Vat.Draft;

    /// <summary>Works a step's figures out.</summary>
    /// <param name="step">The step.</param>
    /// <param name="from">The temperature before it, if known.</param>
    /// <param name="sinceCut">Time from the end of cutting to its beginning; null where nothing is cut before it.</param>
    public ImmutableArray<Figure> Of(Step step, double? from, TimeSpan? sinceCut) => step.Kind switch
    {
        StepKind.Add => Added(step),
        StepKind.Renneting => Rennet(step),
        StepKind.Cook => Cook(step, from, sinceCut),
        StepKind.Drain when step[Target.PercentOfMilk] is { } part => [Volume("Whey to draw", "V = p x milk", part.Value / 100 * Means.Litres, part.Value, "Part p")],
        StepKind.Hoop => wheel.Hooped(),
        StepKind.Press => Press(step),
        StepKind.Brine => Brined(step),
        StepKind.Salt => DrySalt(step),
        _ => [],
    };

    private ImmutableArray<Figure> Added(Step step)
    {
        var (added, dose) = (step.Addition!, step[Target.Dose]!.Value);
        var name = char.ToUpperInvariant(added.Called[0]) + added.Called[1..];
        if (added.Kind == AdditionKind.Water && step[Target.Celsius] is { Value: >= Scalds } hot) work.Note($"Water of {Write.Number(hot.Value)} °C scalds: pour it slowly, away from hands and from children.");
        return (added.Kind, added.Per) switch
        {
            (AdditionKind.CalciumChloride, DoseUnit.GramsPerLitre) => Calcium(name, dose),
            (AdditionKind.Lipase, DoseUnit.GramsPerLitre) => work.Take(Lipase.Dose(work.Litres, dose)) is { } lipase ? [new(name, Measure.Mass, lipase.Value.Kilograms, lipase.Working)] : [],
            (AdditionKind.Water, DoseUnit.PercentOfMilk) => [Volume(name, "V = p x milk", dose / 100 * Means.Litres, dose, "Part p")],
            (_, DoseUnit.PercentOfMilk) => work.Take(CultureDose.Bulk(work.MilkMass, Share.FromPercent(dose))) is { } bulk ? [new(name, Measure.Mass, bulk.Value.Kilograms, bulk.Working)] : [],
            (_, DoseUnit.CellsPerMillilitre) => Cells(name, dose),
            (_, DoseUnit.GramsPerLitre) => [Mass(name, dose)],
            (_, DoseUnit.MillilitresPerLitre) => [Millilitres(name, dose)],
            _ => [new(name + ", packet units", Measure.Plain, dose * Means.Litres / 100, SheetWork.Sum("Culture by its packet", "u = V d / 100", [new("Milk V", Means.Litres, "L"), new("Dose d", dose, "units/100 L")], [new("Units", dose * Means.Litres / 100)], Sources.Practice))],
        };
    }

    private ImmutableArray<Figure> Calcium(string name, double dose)
    {
        if (work.Take(CalciumChloride.Dose(work.Litres, dose)) is not { } dry) return [];
        var figures = ImmutableArray.Create(new Figure($"{name}, without water", Measure.Mass, dry.Value.Kilograms, dry.Working));
        if (Means.CalciumSolution is { } strength && work.Take(CalciumChloride.OfSolution(dry.Value, strength, Means.CalciumForm)) is { } solution)
            return figures.Add(new($"as your {Write.Number(strength)} % solution", Measure.Volume, solution.Value.Litres, solution.Working, Poured: true));
        var crystals = dry.Value * (1 / CalciumChloride.AnhydrousInDihydrate);
        return figures.Add(new("as the usual crystals", Measure.Mass, crystals.Kilograms, SheetWork.Sum("Calcium chloride crystals", "dihydrate = anhydrous / 0.7549", [new("Anhydrous", dry.Value.Grams, "g")], [new("Dihydrate", crystals.Grams, "g")])));
    }

    private ImmutableArray<Figure> Cells(string name, double dose)
    {
        if (work.Take(CultureDose.Propionic(work.Litres, dose, Means.PropionicCellsPerGram, Trier.Dairy.Quantities.Mass.FromGrams(1), Trier.Dairy.Quantities.Volume.FromMillilitres(500))) is not { } answer) return [];
        return
        [
            new($"{name}, powder", Measure.Mass, answer.Value.Powder.Kilograms, answer.Working),
            new("of a stock of 1 g in 500 mL of boiled, cooled water", Measure.Volume, answer.Value.Stock.Use.Litres, answer.Working, Poured: true),
        ];
    }

    private ImmutableArray<Figure> Rennet(Step step)
    {
        var figures = ImmutableArray.CreateBuilder<Figure>();
        if (work.Take(RennetDose.ByActivity(work.Litres, RennetLevel.FromImcuPerLitre(step[Target.ImcuPerLitre]!.Value), RennetStrength.FromImcuPerMillilitre(Means.RennetStrength))) is { } rennet)
        {
            figures.Add(new("Rennet", Measure.Volume, rennet.Value.Litres, rennet.Working, Poured: true));
            var water = rennet.Value * 15;
            figures.Add(new("in cold water without chlorine", Measure.Volume, water.Litres, SheetWork.Sum("Water for the rennet", "10 to 20 times the rennet", [new("Rennet", rennet.Value.Millilitres, "mL")], [new("Water", water.Millilitres, "mL")], Sources.GuelphCheese), (rennet.Value * 10).Litres, (rennet.Value * 20).Litres));
        }

        if (work.Take(Flocculation.Cut(TimeSpan.FromMinutes(step[Target.FlocMinutes]!.Value), step[Target.Multiplier]!.Value)) is { } cut)
        {
            var slack = step[Target.FlocMinutes]!.Slack * step[Target.Multiplier]!.Value;
            var minutes = cut.Value.FromRennet.TotalMinutes;
            figures.Add(new("Cut after rennet, if it flocculates as planned", Measure.Time, minutes, cut.Working, minutes - slack, minutes + slack));
        }

        return figures.ToImmutable();
    }

    private ImmutableArray<Figure> Cook(Step step, double? from, TimeSpan? sinceCut)
    {
        if (from is not { } start) return [];
        var rate = work.Take(CookRamp.Rate(Temperature.FromCelsius(start), Temperature.FromCelsius(step[Target.Celsius]!.Value), TimeSpan.FromMinutes(step[Target.Minutes]!.Value), sinceCut));
        return rate is null ? [] : [new("Mean rate", Measure.HeatingRate, rate.Value.DegreesPerMinute, rate.Working)];
    }

    private ImmutableArray<Figure> Press(Step step)
    {
        if (wheel.Face is not { } face)
        {
            work.Note("The mould is not known: give its diameter to get a weight.");
            return [];
        }

        var pressure = Pressure.FromKilopascals(step[Target.Kilopascals]!.Value);
        var others = PressingCase.All.Where(known => known.Style == work.Recipe.Style || (known.Style == Style.Alpine && work.Recipe.Style == Style.Swiss)).ToList();
        if (others.Count > 0 && (pressure < others.Min(known => known.From) || pressure > others.Max(known => known.To)))
            work.Note($"Texts for this style name {Write.Number(others.Min(known => known.From.Kilopascals))} to {Write.Number(others.Max(known => known.To.Kilopascals))} kPa; they disagree widely.");
        if (pressure.Pascals * face.Area.SquareMetres / Gravity <= Means.FollowerKilograms)
        {
            work.Note("The follower and arm alone press as much as this step asks for, or more: hang no weight.");
            return [];
        }

        if (work.Take(PressPressure.WeightFor(pressure, Means.Lever, Trier.Dairy.Quantities.Mass.FromKilograms(Means.FollowerKilograms), face)) is not { } weight) return [];
        var (levered, each) = (Means.Lever > 1, Means.Wheels > 1 ? ", for each wheel" : "");
        if (!levered && weight.Value.Kilograms > MostStacked)
            work.Note($"Weights stacked higher than some {Write.Number(MostStacked)} kg fall, and mould and press may not bear them: use a lever, or press longer with less (common practice, no source).");
        var all = pressure.Pascals * face.Area.SquareMetres / Gravity;
        var hung = new Figure((levered ? "Weight to hang on the lever" : "Weight to put on") + each, Measure.Mass, weight.Value.Kilograms, weight.Working);
        return levered || Means.FollowerKilograms > 0
            ? [hung, new(Means.Wheels > 1 ? "Pressing on each wheel in all" : "Pressing on the wheel in all", Measure.Mass, all, SheetWork.Sum("What lies on the wheel", "m = p A / g; lever x weight + follower and arm", [new("Pressure p", pressure.Kilopascals, "kPa"), new("Face A", face.Area.SquareCentimetres, "cm2"), new("Lever", Means.Lever), new("Follower and arm", Means.FollowerKilograms, "kg")], [new("In all", all, "kg")]))]
            : [hung];
    }

    private ImmutableArray<Figure> Brined(Step step)
    {
        if (wheel.Size is not { } size || wheel.Each is not { } each) return [];
        var strength = Share.FromPercent(step[Target.BrinePercent]!.Value);
        var moisture = Share.FromPercent(work.Recipe[Target.MoisturePercent]!.Value);
        var planned = TimeSpan.FromMinutes(step[Target.Minutes]!.Value);
        var spread = SaltDiffusivity.Of(work.Recipe.Style);
        var figures = ImmutableArray.CreateBuilder<Figure>();
        if (work.Take(BriningTime.SaltAfter(size, moisture, strength, planned, spread.Value)) is { } salt)
            figures.Add(new("Salt after the planned time", Measure.Percent, salt.Value.Likely.Percent, salt.Working, salt.Value.Low.Percent, salt.Value.High.Percent));
        if (work.Recipe[Target.SaltPercent] is { } wanted && work.Take(BriningTime.Plan(size, each, moisture, strength, Share.FromPercent(wanted.Value), spread.Value)) is { } plan)
        {
            if (figures is [{ Low: { } low, High: { } high } after] && (wanted.Value < low || wanted.Value > high))
            {
                var amount = $"The planned time gives about {Rounded(after.Value)} % of salt ({Rounded(low)} to {Rounded(high)} %), {(wanted.Value < low ? "more" : "less")} than the {Write.Number(wanted.Value)} % aimed at";
                work.Note(plan.Value.ByDiffusion is { } fits ? $"{amount}: {Write.Duration(TimeSpan.FromMinutes(5 * Math.Round(fits.Likely.TotalMinutes / 5)))} would fit." : $"{amount}.");
            }

            if (plan.Value.ByDiffusion is { } band)
                figures.Add(new($"Time for {Write.Number(wanted.Value)} % salt, by diffusion", Measure.Time, band.Likely.TotalMinutes, plan.Working, band.Low.TotalMinutes, band.High.TotalMinutes));
            figures.Add(new("by the rule of an hour a pound an inch", Measure.Time, plan.Value.ByRule.TotalMinutes, plan.Working));
        }

        var litres = Trier.Dairy.Quantities.Volume.FromLitres(BrineLitresPerKilogram * each.Kilograms * Means.Wheels);
        if (work.Take(BrineBatch.Make(litres, strength, Temperature.FromCelsius(step[Target.Celsius]?.Value ?? 12))) is { } batch)
        {
            figures.Add(new("Brine by the rule of thumb", Measure.Volume, litres.Litres, SheetWork.Sum("How much brine", "4 L to a kilogram of cheese; 3 to 5 are in use", [new("Cheese", each.Kilograms * Means.Wheels, "kg")], [new("Brine", litres.Litres, "L")], Sources.Practice)));
            figures.Add(new("Salt for fresh brine", Measure.Mass, batch.Value.Salt.Kilograms, batch.Working));
            figures.Add(new("Water for fresh brine", Measure.Mass, batch.Value.Water.Kilograms, batch.Working));
        }

        return figures.ToImmutable();
    }

    private static string Rounded(double percent) => Write.Number(Math.Round(percent, 2));

    private ImmutableArray<Figure> DrySalt(Step step) =>
        wheel.All is { } curd && work.Take(DrySalting.Of(curd, Share.FromPercent(step[Target.SaltPercentOfCurd]!.Value))) is { } salt
            ? [new("Salt on the curd", Measure.Mass, salt.Value.ToAdd.Kilograms, salt.Working with { LikelyError = $"{salt.Working.LikelyError} Curd is taken as the predicted cheese: weigh it and salt by that." })]
            : [];

    private Figure Volume(string name, string formula, double litres, double percent, string part) =>
        new(name, Measure.Volume, litres, SheetWork.Sum(name, formula, [new("Milk", Means.Litres, "L"), new(part, percent, "%")], [new(name, litres, "L")]));

    private Figure Mass(string name, double dose) =>
        new(name, Measure.Mass, dose * Means.Litres / 1000, SheetWork.Sum(name, "g = V c", [new("Milk V", Means.Litres, "L"), new("Dose c", dose, "g/L")], [new(name, dose * Means.Litres, "g")]));

    private Figure Millilitres(string name, double dose) =>
        new(name, Measure.Volume, dose * Means.Litres / 1000, SheetWork.Sum(name, "mL = V c", [new("Milk V", Means.Litres, "L"), new("Dose c", dose, "mL/L")], [new(name, dose * Means.Litres, "mL")]), Poured: true);
}
