using System.Collections.Immutable;
using Trier.Dairy.Milk;
using Trier.Dairy.Quantities;
using Trier.Dairy.Rennet;
using Trier.Trials.Common;

namespace Trier.Trials.Makes.Sheets;

/// <summary>What heat the milk went through.</summary>
public enum HeatTreatment
{
    /// <summary>Not said; treated as raw wherever it matters.</summary>
    NotSaid,

    /// <summary>Raw.</summary>
    Raw,

    /// <summary>Heated, but less than a legal pair.</summary>
    Thermised,

    /// <summary>Pasteurised by the maker or the dairy.</summary>
    Pasteurised,
}

/// <summary>This day's milk and means as a form or a command gives them. <see cref="Vat.Read"/> checks them.</summary>
public sealed record VatDraft
{
    /// <summary>Milk, litres.</summary>
    public double Litres { get; init; }

    /// <summary>Temperature at which the volume was read, C.</summary>
    public double ReadAtCelsius { get; init; } = 4;

    /// <summary>Fat, %; null for the animal's average.</summary>
    public double? Fat { get; init; }

    /// <summary>Protein, %; null for the animal's average.</summary>
    public double? Protein { get; init; }

    /// <summary>Casein number; null for the animal's average.</summary>
    public double? CaseinNumber { get; init; }

    /// <summary>Heat treatment.</summary>
    public HeatTreatment Treatment { get; init; }

    /// <summary>Strength of the rennet, IMCU/mL; 200 is usual for single strength.</summary>
    public double RennetStrength { get; init; } = 200;

    /// <summary>Calcium chloride solution, % w/v; null where it is weighed dry.</summary>
    public double? CalciumSolution { get; init; }

    /// <summary>What the label of the calcium chloride counts.</summary>
    public CalciumForm CalciumForm { get; init; } = CalciumForm.Dihydrate;

    /// <summary>Living cells in the propionic powder, cfu/g.</summary>
    public double PropionicCellsPerGram { get; init; } = 1e10;

    /// <summary>Wheels the curd goes into.</summary>
    public int Wheels { get; init; } = 1;

    /// <summary>Diameter of the mould, cm; null for the recipe's.</summary>
    public double? MouldCentimetres { get; init; }

    /// <summary>Lever ratio of the press.</summary>
    public double Lever { get; init; } = 1;

    /// <summary>Weight of follower and arm, kg.</summary>
    public double FollowerKilograms { get; init; }
}

/// <summary>This day's milk and means, checked.</summary>
/// <param name="Draft">What was given.</param>
/// <param name="Milk">The milk's composition.</param>
/// <param name="FromAverage">What of the composition is the animal's average, in words; empty where everything was given.</param>
public sealed record Vat(VatDraft Draft, MilkComposition Milk, ImmutableArray<string> FromAverage)
{
    /// <summary>Most wheels of one vat.</summary>
    public const int MostWheels = 24;

    /// <summary>Checks what was given: every fault at once.</summary>
    /// <param name="draft">What was given.</param>
    /// <param name="animal">The recipe's animal, for averages.</param>
    public static Outcome<ReadVat> Read(VatDraft draft, Species animal)
    {
        var problems = new List<Problem>();
        var questions = new List<Problem>();
        Check("milk", MilkFields.MilkVolume, draft.Litres);
        Check("milk-temperature", MilkFields.MilkTemperature, draft.ReadAtCelsius);
        Check("rennet-strength", RennetFields.Strength, draft.RennetStrength);
        if (draft.CalciumSolution is { } solution) Check("calcium-solution", RennetFields.CalciumSolution, solution);
        Check("propionic-cells", Trier.Dairy.Acidity.AcidityFields.CellsPerGram, draft.PropionicCellsPerGram);
        Check("lever", Trier.Dairy.Pressing.PressFields.Lever, draft.Lever);
        Check("follower", Trier.Dairy.Pressing.PressFields.Follower, draft.FollowerKilograms);
        if (draft.MouldCentimetres is { } mould) Check("mould", Trier.Dairy.Pressing.PressFields.MouldWidth, mould);
        if (draft.Wheels is < 1 or > MostWheels) problems.Add(new("wheels", $"Wheels are {FigureText.Whole(draft.Wheels)}; at least 1 and at most {FigureText.Whole(MostWheels)} (usual: 1 to 4)."));
        var typical = TypicalMilk.Of(animal).Milk;
        var milk = MilkComposition.Create(
            Share.FromPercent(Finite("fat", "Fat of the milk", draft.Fat, typical.Fat.Percent)),
            Share.FromPercent(Finite("protein", "Protein of the milk", draft.Protein, typical.Protein.Percent)),
            Finite("casein-number", "Casein number", draft.CaseinNumber, typical.CaseinNumber),
            typical.Lactose,
            typical.Ash);
        if (milk.TryAnswer(out var composition, out var faults)) questions.AddRange(composition.Questions.Select(question => new Problem(Field(question.Field.Key), question.Sentence)));
        else problems.AddRange(faults.Select(fault => new Problem(Field(fault.Field.Key), fault.Sentence)));
        if (problems.Count > 0) return Outcome.Fault<ReadVat>(problems.DistinctBy(problem => problem.Field));
        string[] averages = [.. new[] { draft.Fat is null ? "fat" : "", draft.Protein is null ? "protein" : "", draft.CaseinNumber is null ? "casein number" : "" }.Where(word => word.Length > 0)];
        return Outcome.Of(new ReadVat(new Vat(draft, composition!.Value, [.. averages]), [.. questions]));

        void Check(string place, Trier.Dairy.Workings.Field field, double value)
        {
            if (field.ProblemWith(value) is { } problem) problems.Add(new(place, problem.Sentence));
            else if (field.QuestionAbout(value) is { } question) questions.Add(new(place, question.Sentence));
        }

        double Finite(string place, string name, double? given, double average)
        {
            if (given is not { } value) return average;
            if (double.IsFinite(value)) return value;
            problems.Add(new(place, $"{name} is no number."));
            return average;
        }
    }

    private static string Field(string key) => key switch { "milk-fat" => "fat", "milk-protein" => "protein", _ => key };
}

/// <summary>A vat that was read, with what is unusual about it.</summary>
/// <param name="Vat">The vat.</param>
/// <param name="Questions">Possible but unusual values.</param>
public sealed record ReadVat(Vat Vat, ImmutableArray<Problem> Questions);
