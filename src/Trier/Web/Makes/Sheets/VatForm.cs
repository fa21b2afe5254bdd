using Trier.Dairy.Rennet;
using Trier.Trials.Common;
using Trier.Trials.Makes.Recipes;
using Trier.Trials.Makes.Sheets;

namespace Trier.Web.Makes.Sheets;

/// <summary>
/// The day's milk and means as typed, from a query or a form; every field by its name. The units they were typed in stand beside them, so that an address means the
/// same vat whatever units a page is shown in; without a word they are metric.
/// </summary>
/// <param name="Text">A field's text by its name.</param>
internal sealed record VatForm(Func<string, string> Text)
{
    /// <summary>Every field's name.</summary>
    public static IReadOnlyList<string> Fields { get; } =
        [MakerUnits.Field, "milk", "milk-temperature", "fat", "protein", "treatment", "wheels", "mould", "lever", "follower", "rennet-strength", "calcium-solution", "calcium-form", "propionic-cells"];

    /// <summary>What is typed as the query of an address.</summary>
    public string Query => QueryString.Create(Fields.Where(name => Text(name).Length > 0).Select(name => KeyValuePair.Create(name, (string?)Text(name)))).ToString();

    public bool Given => Text("milk").Length > 0;

    /// <summary>The units of what is typed.</summary>
    public MakerUnits Units => MakerUnits.Named(Text(MakerUnits.Field));

    /// <summary>The same vat as one would type it in other units; what is no number stays as it was typed.</summary>
    public VatForm In(MakerUnits units) => units == Units ? this : new(field => field == MakerUnits.Field ? units.Word : Turned(field, units));

    private static string? UnitOf(string field) => field switch { "milk" => "L", "milk-temperature" => "°C", "mould" => "cm", "follower" => "kg", _ => null };

    private string Turned(string field, MakerUnits units)
    {
        var text = Text(field);
        if (MakerUnits.Read(text, field, field, []) is not { } typed) return text;
        return UnitOf(field) is { } unit ? units.Number(units.FromCore(unit, Units.ToCore(unit, typed)), units.Us ? "0.#####" : "0.###") : text.Replace(Units.Mark, units.Mark);
    }

    public Outcome<ReadVat> Read(Recipe recipe)
    {
        var units = Units;
        var problems = new List<Problem>();
        double? Number(string field, string label) => MakerUnits.Read(Text(field), field, label, problems);
        double? Core(string field, string label) => Number(field, label) is { } value ? units.ToCore(UnitOf(field)!, value) : null;
        var usual = new VatDraft();
        var litres = Core("milk", "Milk") ?? double.NaN;
        if (double.IsNaN(litres) && problems.Count == 0) problems.Add(new("milk", "Say how much milk there is."));
        var draft = new VatDraft
        {
            Litres = double.IsNaN(litres) ? 1 : litres,
            ReadAtCelsius = Core("milk-temperature", "Measured at") ?? usual.ReadAtCelsius,
            Fat = Number("fat", "Fat"),
            Protein = Number("protein", "Protein"),
            Treatment = Enum.TryParse<HeatTreatment>(Text("treatment"), out var treatment) && Enum.IsDefined(treatment) ? treatment : HeatTreatment.NotSaid,
            RennetStrength = Number("rennet-strength", "Strength of the rennet") ?? usual.RennetStrength,
            CalciumSolution = Number("calcium-solution", "Calcium chloride solution"),
            CalciumForm = Text("calcium-form") == "anhydrous" ? CalciumForm.Anhydrous : CalciumForm.Dihydrate,
            PropionicCellsPerGram = Number("propionic-cells", "Cells in the propionic powder") ?? usual.PropionicCellsPerGram,
            Wheels = (int)Math.Clamp(Number("wheels", "Wheels") ?? 1, -1, 1000),
            MouldCentimetres = Core("mould", "Diameter of the mould"),
            Lever = Number("lever", "Lever ratio") ?? 1,
            FollowerKilograms = Core("follower", "Follower and arm") ?? 0,
        };
        var read = Vat.Read(draft, recipe.Milk);
        return problems.Count == 0 ? read : Outcome.Fault<ReadVat>([.. problems, .. read.Problems.Where(problem => problems.All(other => other.Field != problem.Field))]);
    }
}
