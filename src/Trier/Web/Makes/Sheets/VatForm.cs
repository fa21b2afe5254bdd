using Trier.Dairy.Rennet;
using Trier.Trials.Common;
using Trier.Trials.Makes.Recipes;
using Trier.Trials.Makes.Sheets;

namespace Trier.Web.Makes.Sheets;

/// <summary>The day's milk and means as typed, from a query or a form; every field by its name, in the maker's units.</summary>
/// <param name="Text">A field's text by its name.</param>
internal sealed record VatForm(Func<string, string> Text)
{
    public bool Given => Text("milk").Length > 0;

    public Outcome<ReadVat> Read(Recipe recipe, MakerUnits units)
    {
        var problems = new List<Problem>();
        double? Number(string field, string label) => MakerUnits.Read(Text(field), field, label, problems);
        double? Length(string field, string label) => Number(field, label) is { } value ? (units.Us ? value * 2.54 : value) : null;
        double? Mass(string field, string label) => Number(field, label) is { } value ? (units.Us ? value * 0.45359237 : value) : null;
        double? Temperature(string field, string label) => Number(field, label) is { } value ? units.ToCelsius(value) : null;
        var usual = new VatDraft();
        var litres = Number("milk", "Milk") is { } milk ? (units.Us ? milk * 3.785411784 : milk) : double.NaN;
        if (double.IsNaN(litres) && problems.Count == 0) problems.Add(new("milk", "Say how much milk there is."));
        var draft = new VatDraft
        {
            Litres = double.IsNaN(litres) ? 1 : litres,
            ReadAtCelsius = Temperature("milk-temperature", "Measured at") ?? usual.ReadAtCelsius,
            Fat = Number("fat", "Fat"),
            Protein = Number("protein", "Protein"),
            Treatment = Enum.TryParse<HeatTreatment>(Text("treatment"), out var treatment) && Enum.IsDefined(treatment) ? treatment : HeatTreatment.NotSaid,
            RennetStrength = Number("rennet-strength", "Strength of the rennet") ?? usual.RennetStrength,
            CalciumSolution = Number("calcium-solution", "Calcium chloride solution"),
            CalciumForm = Text("calcium-form") == "anhydrous" ? CalciumForm.Anhydrous : CalciumForm.Dihydrate,
            PropionicCellsPerGram = Number("propionic-cells", "Cells in the propionic powder") ?? usual.PropionicCellsPerGram,
            Wheels = (int)Math.Clamp(Number("wheels", "Wheels") ?? 1, -1, 1000),
            MouldCentimetres = Length("mould", "Diameter of the mould"),
            Lever = Number("lever", "Lever ratio") ?? 1,
            FollowerKilograms = Mass("follower", "Follower and arm") ?? 0,
        };
        var read = Vat.Read(draft, recipe.Milk);
        return problems.Count == 0 ? read : Outcome.Fault<ReadVat>([.. problems, .. read.Problems.Where(problem => problems.All(other => other.Field != problem.Field))]);
    }
}
