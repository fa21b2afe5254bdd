using System.CommandLine;
using Trier.Dairy.Quantities;
using Trier.Dairy.Rennet;
using Trier.Trials.Makes.Sheets;

namespace Trier.Commands.Makes;

/// <summary><c>trier rennet</c>: the dose, the cut after flocculation, the next dose.</summary>
internal static class RennetCommand
{
    public static Command Create()
    {
        var milk = Measured.Volume.Option("--milk", "Milk in the vat.");
        var level = Measured.Plain.Option("--level", "Clotting activity the milk is to get, IMCU to a litre; 40 is common for cow's milk.", "40");
        var strength = Measured.Plain.Option("--strength", "Strength of the rennet, IMCU to a millilitre; 200 is usual for single strength.", "200");
        var floc = Measured.Time.Option("--floc", "Flocculation time seen: says when to cut, and the next dose.", "14min");
        var multiplier = Measured.Plain.Option("--multiplier", "Flocculation multiplier; 3 is common for pressed cheese.", "3");
        var used = Measured.Volume.Option("--used", "Rennet used for that flocculation.", "4mL");
        var wanted = Measured.Time.Option("--wanted", "Flocculation time wanted next time.", "13min");
        var command = new Command("rennet", "How much rennet, when to cut, how much next time.") { milk, level, strength, floc, multiplier, used, wanted };
        command.SetAction(async (parsed, _) => (parsed.GetValue(milk), parsed.GetValue(floc), parsed.GetValue(used), parsed.GetValue(wanted)) switch
        {
            ({ } litres, _, _, _) => await Telling.TellAsync(
                RennetDose.ByActivity(Volume.FromLitres(litres), RennetLevel.FromImcuPerLitre(parsed.GetValue(level) ?? 40), RennetStrength.FromImcuPerMillilitre(parsed.GetValue(strength) ?? 200)),
                dose => $"{Telling.Number(dose.Millilitres)} mL of rennet{(Spoonful.Nearest(dose.Litres) is { } spoon ? $" ({spoon.InWords()})" : "")}, in 10 to 20 times as much cold water without chlorine."),
            (_, { } seen, { } dose, { } next) => await Telling.TellAsync(
                Flocculation.NextDose(Volume.FromLitres(dose), TimeSpan.FromMinutes(seen), TimeSpan.FromMinutes(next)),
                volume => $"{Telling.Number(volume.Millilitres)} mL of rennet next time, at the same pH and temperature."),
            (_, { } seen, _, _) => await Telling.TellAsync(
                Flocculation.Cut(TimeSpan.FromMinutes(seen), parsed.GetValue(multiplier) ?? 3),
                cut => $"Cut {Telling.Number(cut.FromRennet.TotalMinutes)} min after rennet, {Telling.Number(cut.AfterFlocculation.TotalMinutes)} min after flocculation; check the break."),
            _ => await Telling.WrongAsync("Give --milk for a dose, --floc for the cut, or --floc, --used and --wanted for the next dose."),
        });
        return command;
    }
}
