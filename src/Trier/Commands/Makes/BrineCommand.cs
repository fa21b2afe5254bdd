using System.CommandLine;
using Trier.Dairy.Brine;
using Trier.Dairy.Quantities;
using Trier.Dairy.Tables;
using Trier.Trials.Makes.Recipes;

namespace Trier.Commands.Makes;

/// <summary><c>trier brine</c>: make a brine, or how long a wheel lies in it.</summary>
internal static class BrineCommand
{
    public static Command Create()
    {
        var strength = Measured.Plain.Option("--strength", "Salt by weight, per cent; 20 if not given.", "20");
        var volume = Measured.Volume.Option("--volume", "Brine to make.", "8L");
        var at = Measured.Temperature.Option("--at", "Temperature of the brine; 12 °C if not given.", "12C");
        var wheel = TypedWheel.Option();
        var mass = Measured.Mass.Option("--mass", "Mass of the wheel; from its size if not given.", "1.8kg");
        var moisture = Measured.Plain.Option("--moisture", "Moisture of the cheese, per cent; 40 if not given.", "40");
        var salt = Measured.Plain.Option("--salt", "Salt wanted in the cheese, per cent.", "1.2");
        var style = new Option<string>("--style") { Description = "Style, for how fast salt moves: alpine, swiss, cheddar, gouda, tomme ...", DefaultValueFactory = _ => "other pressed" };
        var command = new Command("brine", "Salt and water for a brine, or the time a wheel lies in it.") { strength, volume, at, wheel, mass, moisture, salt, style };
        command.SetAction(async (parsed, _) =>
        {
            var share = Share.FromPercent(parsed.GetValue(strength) ?? 20);
            if (parsed.GetValue(volume) is { } litres)
            {
                return await Telling.TellAsync(
                    BrineBatch.Make(Volume.FromLitres(litres), share, Temperature.FromCelsius(parsed.GetValue(at) ?? 12)),
                    batch => $"{Telling.Number(batch.Salt.Kilograms)} kg of salt in {Telling.Number(batch.Water.Kilograms)} kg of water make {Telling.Number(litres)} L of {Telling.Number(share.Percent)} % brine.");
            }

            if (parsed.GetValue(wheel) is not { } size || parsed.GetValue(salt) is not { } wanted) return await Telling.WrongAsync("Give --volume to make a brine, or --wheel and --salt for the time in it.");
            if (StyleWords.Named(parsed.GetValue(style)) is not { } known) return await Telling.WrongAsync($"--style {parsed.GetValue(style)}: choose {string.Join(", ", Enum.GetValues<Style>().Select(StyleWords.Key))}.");
            var cylinder = WheelSize.Create(Length.FromCentimetres(size.DiameterCentimetres), Length.FromCentimetres(size.HeightCentimetres));
            if (!cylinder.TryAnswer(out var shaped, out var problems)) return await Telling.RefuseAsync(problems.Select(problem => problem.Sentence));
            // 1.08 kg/L for want of a scale.
            var kilograms = parsed.GetValue(mass) ?? shaped.Value.Volume.Litres * 1.08;
            return await Telling.TellAsync(
                BriningTime.Plan(shaped.Value, Mass.FromKilograms(kilograms), Share.FromPercent(parsed.GetValue(moisture) ?? 40), share, Share.FromPercent(wanted), SaltDiffusivity.Of(known).Value),
                plan => plan.ByDiffusion is { } band
                    ? $"About {Telling.Number(band.Likely.TotalHours)} h ({Telling.Number(band.Low.TotalHours)} to {Telling.Number(band.High.TotalHours)} h) for {Telling.Number(wanted)} % salt; the rule of an hour a pound an inch says {Telling.Number(plan.ByRule.TotalHours)} h."
                    : $"The rule of an hour a pound an inch says {Telling.Number(plan.ByRule.TotalHours)} h; the diffusion model does not hold here.");
        });
        return command;
    }
}
