using System.CommandLine;
using Trier.Dairy.Milk;
using Trier.Dairy.Quantities;

namespace Trier.Commands.Makes;

/// <summary><c>trier standardise</c>: how much skim or cream brings a milk to a fat content or a protein-to-fat ratio.</summary>
internal static class StandardiseCommand
{
    public static Command Create()
    {
        var milk = Measured.Mass.Option("--milk", "Milk, by weight: a litre is about 1.03 kg.", "20kg");
        var fat = Measured.Plain.Option("--fat", "Fat of the milk, per cent.", "4.0");
        var protein = Measured.Plain.Option("--protein", "Protein of the milk, per cent; 3.3 if not given.", "3.3");
        var toFat = Measured.Plain.Option("--to-fat", "Fat wanted, per cent.", "3.0");
        var toRatio = Measured.Plain.Option("--to-ratio", "Protein to fat wanted.", "1.10");
        var skim = Measured.Plain.Option("--skim", "Do it with skim of this fat, per cent; 0.05 if neither is given.", "0.05");
        var cream = Measured.Plain.Option("--cream", "Do it with cream of this fat, per cent.", "35");
        var command = new Command("standardise", "How much skim or cream brings a milk to a target.") { milk, fat, protein, toFat, toRatio, skim, cream };
        command.SetAction(async (parsed, _) =>
        {
            if (parsed.GetValue(milk) is not { } kilograms || parsed.GetValue(fat) is not { } percent) return await Telling.WrongAsync("Give --milk and --fat, and --to-fat or --to-ratio.");
            var read = MilkComposition.Create(Share.FromPercent(percent), Share.FromPercent(parsed.GetValue(protein) ?? 3.3));
            if (!read.TryAnswer(out var composition, out var problems)) return await Telling.RefuseAsync(problems.Select(problem => problem.Sentence));
            var (mass, stream) = (Mass.FromKilograms(kilograms), parsed.GetValue(cream) ?? parsed.GetValue(skim) ?? 0.05);
            var plan = (parsed.GetValue(toFat), parsed.GetValue(toRatio)) switch
            {
                ({ } target, null) => Standardising.ToFat(composition.Value, mass, Share.FromPercent(target), Share.FromPercent(stream)),
                (null, { } ratio) when parsed.GetValue(cream) is not null => Standardising.WithCream(composition.Value, mass, ratio, Share.FromPercent(stream)),
                (null, { } ratio) => Standardising.WithSkim(composition.Value, mass, ratio, Share.FromPercent(stream)),
                _ => null,
            };
            if (plan is null) return await Telling.WrongAsync("Give either --to-fat or --to-ratio.");
            return await Telling.TellAsync(plan, done => $"{Words(done.Step)} {Telling.Number(done.Amount.Kilograms)} kg of {(stream >= 5 ? "cream" : "skim")} of {Telling.Number(stream)} % fat: {Telling.Number(done.Result.Mass.Kilograms)} kg of milk with {Telling.Number(done.Result.Fat.Percent)} % fat, protein to fat {Telling.Number(done.ProteinToFat)}.");
        });
        return command;
    }

    private static string Words(StandardisingStep step) => step is StandardisingStep.AddSkim or StandardisingStep.AddCream ? "Add" : "Take off";
}
