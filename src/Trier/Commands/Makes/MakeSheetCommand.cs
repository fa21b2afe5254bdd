using System.CommandLine;
using Trier.Dairy.Rennet;
using Trier.Trials.Makes.Sheets;

namespace Trier.Commands.Makes;

/// <summary><c>trier make-sheet RECIPE</c>: a recipe and this milk in, the vat-day sheet out.</summary>
internal static class MakeSheetCommand
{
    public static Command Create()
    {
        var recipe = new Argument<string>("RECIPE") { Description = "A recipe file (docs/handbook/recipe-json.md), a recipe that ships (alpine, tomme ...), or - for standard input." };
        var milk = Measured.Volume.Option("--milk", "Milk in the vat.");
        var readAt = Measured.Temperature.Option("--milk-at", "Temperature at which the milk was measured; 4 °C if not given.", "4C");
        var fat = Measured.Plain.Option("--fat", "Fat of the milk, per cent; the animal's average if not given.", "3.6");
        var protein = Measured.Plain.Option("--protein", "Protein of the milk, per cent; the animal's average if not given.", "3.3");
        var treatment = new Option<string>("--treatment") { Description = "raw, thermised or pasteurised.", DefaultValueFactory = _ => "not-said" };
        treatment.AcceptOnlyFromAmong("raw", "thermised", "pasteurised", "not-said");
        var rennet = Measured.Plain.Option("--rennet", "Strength of the rennet, IMCU to a millilitre; 200 if not given.", "200");
        var calcium = Measured.Plain.Option("--calcium", "Your calcium chloride solution, per cent (of crystals).", "33");
        var wheels = new Option<int>("--wheels") { Description = "Wheels the curd goes into.", DefaultValueFactory = _ => 1 };
        var mould = Measured.Length.Option("--mould", "Diameter of the mould; the recipe's if not given.", "16cm");
        var lever = Measured.Plain.Option("--lever", "Lever ratio of the press.", "4");
        var follower = Measured.Mass.Option("--follower", "Weight of follower and arm.", "1kg");
        var start = new Option<TimeOnly?>("--start") { Description = "When the day begins; times are then told by the clock.", HelpName = "09:00" };
        var units = new Option<string>("--units") { Description = "metric or us.", DefaultValueFactory = _ => "metric" };
        units.AcceptOnlyFromAmong("metric", "us");
        var workings = new Option<bool>("--workings") { Description = "Show how every number came about." };
        var command = new Command("make-sheet", "Work a recipe out for a vat of milk.") { recipe, milk, readAt, fat, protein, treatment, rennet, calcium, wheels, mould, lever, follower, start, units, workings };
        command.SetAction(async (parsed, cancellation) =>
        {
            if (parsed.GetValue(milk) is not { } litres) return await Telling.WrongAsync("Give --milk, as in --milk 12L.");
            var read = await RecipeInput.ReadAsync(parsed.GetValue(recipe)!, cancellation);
            if (!read.TryGet(out var known)) return await Telling.RefuseAsync(read.Problems.Select(problem => problem.Field.StartsWith("steps[", StringComparison.Ordinal) ? $"{problem.Field}: {problem.Sentence}" : problem.Sentence));
            var draft = new VatDraft
            {
                Litres = litres,
                ReadAtCelsius = parsed.GetValue(readAt) ?? 4,
                Fat = parsed.GetValue(fat),
                Protein = parsed.GetValue(protein),
                Treatment = parsed.GetValue(treatment) switch { "raw" => HeatTreatment.Raw, "thermised" => HeatTreatment.Thermised, "pasteurised" => HeatTreatment.Pasteurised, _ => HeatTreatment.NotSaid },
                RennetStrength = parsed.GetValue(rennet) ?? 200,
                CalciumSolution = parsed.GetValue(calcium),
                CalciumForm = CalciumForm.Dihydrate,
                Wheels = parsed.GetValue(wheels),
                MouldCentimetres = parsed.GetValue(mould),
                Lever = parsed.GetValue(lever) ?? 1,
                FollowerKilograms = parsed.GetValue(follower) ?? 0,
            };
            var vat = Vat.Read(draft, known.Recipe.Milk);
            if (!vat.TryGet(out var checkedVat)) return await Telling.RefuseAsync(vat.Problems.Select(problem => problem.Sentence));
            var sheet = MakeSheet.Of(known.Recipe, checkedVat);
            await Telling.WriteAsync(SheetText.Lines(sheet, [.. known.Questions.Select(question => $"{question.Field}: {question.Sentence}")], parsed.GetValue(units) == "us" ? UnitSystem.UsCustomary : UnitSystem.Metric, parsed.GetValue(start), parsed.GetValue(workings)));
            return CommandLine.Done;
        });
        return command;
    }
}
