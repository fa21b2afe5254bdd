using System.Collections.Immutable;
using Trier.Dairy.Acidity;
using Trier.Dairy.Milk;
using Trier.Dairy.Quantities;
using Trier.Dairy.Tables;
using Trier.Trials.Makes.Recipes;
using DairyWorking = Trier.Dairy.Workings.Working;
using Given = Trier.Dairy.Workings.Given;
using Source = Trier.Dairy.Workings.Source;
using Sources = Trier.Dairy.Workings.Sources;

namespace Trier.Trials.Makes.Sheets;

/// <summary>Works one sheet out, part by part; what a computation refuses becomes a note where its number would stand.</summary>
internal sealed class SheetWork
{
    private readonly List<string> _notes = [];

    public SheetWork(Recipe recipe, ReadVat read)
    {
        (Recipe, Vat, Asked) = (recipe, read.Vat, read.Questions.Select(question => question.Sentence).ToList());
        MilkFigures = Milk();
    }

    public Recipe Recipe { get; }

    public Vat Vat { get; }

    public List<string> Asked { get; }

    public Volume Litres => Volume.FromLitres(Vat.Draft.Litres);

    public Mass MilkMass { get; private set; }

    public ImmutableArray<Figure> MilkFigures { get; }

    public MakeSheet Whole()
    {
        var wheel = new WheelWork(this);
        var steps = Steps(wheel);
        return new(Recipe, Vat, MilkFigures, steps, Readings(steps), wheel.Expected(), Cautions.For(Recipe, Vat), [.. Asked.Distinct()]);
    }

    /// <summary>Takes a computation's answer; a refusal becomes a note.</summary>
    public Trier.Dairy.Workings.Answer<T>? Take<T>(Trier.Dairy.Workings.Outcome<T> outcome)
    {
        if (outcome.TryAnswer(out var answer, out var problems))
        {
            _notes.AddRange(answer.Questions.Select(question => question.Sentence));
            return answer;
        }

        _notes.AddRange(problems.Select(problem => problem.Sentence));
        return null;
    }

    public void Note(string sentence) => _notes.Add(sentence);

    /// <summary>The notes gathered since the last call.</summary>
    public ImmutableArray<string> Notes()
    {
        ImmutableArray<string> taken = [.. _notes.Distinct()];
        _notes.Clear();
        return taken;
    }

    public static DairyWorking Sum(string title, string formula, Given[] inputs, Given[] results, Source? source = null) =>
        new(title, formula, [.. inputs], [.. results], source ?? Sources.Arithmetic);

    private ImmutableArray<Figure> Milk()
    {
        var at = Temperature.FromCelsius(Vat.Draft.ReadAtCelsius);
        var mass = Take(MilkAmount.MassOf(Vat.Milk, Litres, at));
        // A volume read hotter than the density table reaches is taken as near 1.03 kg/L; the note says why.
        MilkMass = mass?.Value ?? Mass.FromKilograms(1.03 * Vat.Draft.Litres);
        var figures = ImmutableArray.CreateBuilder<Figure>();
        var amount = mass?.Working ?? Sum("Mass of the milk", "m = 1.03 V", [new("Volume V", Vat.Draft.Litres, "L")], [new("Mass", MilkMass.Kilograms, "kg")], Sources.Practice);
        figures.Add(new("Milk", Measure.Volume, Vat.Draft.Litres, Sum("Volume of the milk", "as measured", [new("Volume", Vat.Draft.Litres, "L"), new("Read at", Vat.Draft.ReadAtCelsius, "°C")], [new("Volume", Vat.Draft.Litres, "L")])));
        figures.Add(new("Milk by weight", Measure.Mass, MilkMass.Kilograms, amount));
        var source = Vat.FromAverage.Length == 0 ? Sources.GuelphCheese : TypicalMilk.Source;
        DairyWorking Content(string name, double value) => Sum(
            name,
            Vat.FromAverage.Length == 0 ? "as given; C = CN x P" : $"as given, or the average of {Recipe.Milk.ToString().ToLowerInvariant()}'s milk; C = CN x P",
            [new("Fat F", Vat.Milk.Fat.Percent, "%"), new("Protein P", Vat.Milk.Protein.Percent, "%"), new("Casein number CN", Vat.Milk.CaseinNumber)],
            [new(name, value, "%")],
            source) with
        { LikelyError = "A label's fat is rounded to 0.1 %; the casein number of one milk can be 0.03 off." };
        figures.Add(new("Fat", Measure.Percent, Vat.Milk.Fat.Percent, Content("Fat of the milk", Vat.Milk.Fat.Percent)));
        figures.Add(new("Casein", Measure.Percent, Vat.Milk.Casein.Percent, Content("Casein of the milk", Vat.Milk.Casein.Percent)));
        if (Vat.Milk.Fat.Fraction > 0)
            figures.Add(new("Casein to fat", Measure.Plain, Vat.Milk.CaseinToFat, Sum("Casein to fat", "C/F", [new("Casein C", Vat.Milk.Casein.Percent, "%"), new("Fat F", Vat.Milk.Fat.Percent, "%")], [new("Casein to fat", Vat.Milk.CaseinToFat)])));
        if (Vat.FromAverage.Length > 0)
            Asked.Add($"The {string.Join(" and ", Vat.FromAverage)} of this milk {(Vat.FromAverage.Length == 1 ? "was" : "were")} not given: the average of {Recipe.Milk.ToString().ToLowerInvariant()}'s milk stands in.");
        Standardise(figures);
        Asked.AddRange(Notes());
        return figures.ToImmutable();
    }

    private void Standardise(ImmutableArray<Figure>.Builder figures)
    {
        if (Recipe[Target.CaseinToFat] is not { } aim || Vat.Milk.Fat.Fraction <= 0 || aim.Meets(Vat.Milk.CaseinToFat)) return;
        var ratio = Standardising.ProteinToFatFor(Vat.Milk, aim.Value);
        var lean = Take(Standardising.WithSkim(Vat.Milk, MilkMass, ratio, Share.FromPercent(0.05)));
        var cream = Take(Standardising.WithCream(Vat.Milk, MilkMass, ratio, Share.FromPercent(35)));
        Asked.Add($"The recipe aims at casein to fat {Write.Number(aim.Value)}; this milk has {Write.Number(Math.Round(Vat.Milk.CaseinToFat, 2))}.");
        if (lean is not null) figures.Add(new(StandardWords(lean.Value.Step, "skim of 0.05 % fat"), Measure.Mass, lean.Value.Amount.Kilograms, lean.Working));
        if (cream is not null) figures.Add(new("or " + StandardWords(cream.Value.Step, "cream of 35 % fat"), Measure.Mass, cream.Value.Amount.Kilograms, cream.Working));
    }

    private static string StandardWords(StandardisingStep step, string stream) => step is StandardisingStep.AddSkim or StandardisingStep.AddCream ? $"add {stream}" : $"take off {stream}";

    private ImmutableArray<SheetStep> Steps(WheelWork wheel)
    {
        var steps = ImmutableArray.CreateBuilder<SheetStep>();
        var start = TimeSpan.Zero;
        double? celsius = Vat.Draft.ReadAtCelsius;
        TimeSpan? cut = null;
        var figures = new StepFigures(this, wheel);
        for (var i = 0; i < Recipe.Steps.Length; i++)
        {
            var step = Recipe.Steps[i];
            var worked = figures.Of(step, celsius, start - cut);
            if (step.Kind == StepKind.Cut) cut = start + TimeSpan.FromMinutes(step[Target.Minutes]?.Value ?? 0);
            // The water that is added has a temperature of its own; the vat's is then no longer known.
            celsius = step.Kind == StepKind.Add ? (step[Target.Celsius] is null ? celsius : null) : step[Target.Celsius]?.Value ?? celsius;
            steps.Add(new(i + 1, step, start, step.Takes, worked, Notes()));
            start += step.Takes ?? TimeSpan.Zero;
        }

        return steps.ToImmutable();
    }

    private ImmutableArray<ExpectedPh> Readings(ImmutableArray<SheetStep> steps)
    {
        PhSchedule? schedule = Recipe.Style switch
        {
            Style.Alpine or Style.Swiss => PhSchedule.Swiss,
            Style.Gouda => PhSchedule.Gouda,
            Style.Cheddar => PhSchedule.CheddarLowMoisture,
            _ => null,
        };
        var lastPress = steps.LastOrDefault(step => step.Step.Kind == StepKind.Press)?.Number;
        var firstCut = steps.FirstOrDefault(step => step.Step.Kind == StepKind.Cut)?.Number;
        return
        [
            .. steps.Where(step => step.Step[Target.Ph] is not null).Select(step => new ExpectedPh(step.Number, step.Step.Heading, step.Ends, step.Step[Target.Ph]!, Table(step))),
        ];

        double? Table(SheetStep step)
        {
            PhStep? at = step.Step.Kind switch
            {
                StepKind.Ripen => PhStep.AddRennet,
                StepKind.Cut => step.Number == firstCut ? PhStep.Cut : PhStep.Mill,
                StepKind.Drain => PhStep.DrainOrDip,
                StepKind.Hoop => schedule == PhSchedule.Swiss ? PhStep.DrainOrDip : PhStep.Press,
                StepKind.Press when step.Number == lastPress => PhStep.Demould,
                _ => null,
            };
            return schedule is { } known && at is { } phase ? PhMilestone.Of(known, phase)?.Ph.Value : null;
        }
    }
}
