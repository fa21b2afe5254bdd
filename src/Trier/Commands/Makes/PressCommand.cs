using System.CommandLine;
using Trier.Dairy.Pressing;
using Trier.Dairy.Quantities;
using Trier.Dairy.Workings;

namespace Trier.Commands.Makes;

/// <summary><c>trier press</c>: the pressure of a weight, the weight for a pressure, the same pressure on another mould.</summary>
internal static class PressCommand
{
    public static Command Create()
    {
        var mould = Measured.Length.Option("--mould", "Diameter of the round mould.", "14.5cm");
        var weight = Measured.Mass.Option("--weight", "Weight on the press.", "10kg");
        var pressure = Measured.Pressure.Option("--pressure", "Pressure wanted: kPa, psi or kgf/cm2.", "12kPa");
        var lever = Measured.Plain.Option("--lever", "Lever ratio: fulcrum to weight over fulcrum to plunger; 1 without a lever.", "4");
        var follower = Measured.Mass.Option("--follower", "Weight of follower and arm.", "1kg");
        var other = Measured.Length.Option("--other-mould", "Another mould to give the same pressure on.", "16cm");
        var command = new Command("press", "Pressure from weight, lever and mould, and back.") { mould, weight, pressure, lever, follower, other };
        command.SetAction(async (parsed, _) =>
        {
            if (parsed.GetValue(mould) is not { } diameter) return await Telling.WrongAsync("Give --mould, and --weight or --pressure.");
            var (ratio, arm) = (parsed.GetValue(lever) ?? 1, Mass.FromKilograms(parsed.GetValue(follower) ?? 0));
            if (!MouldFace.Round(Length.FromCentimetres(diameter)).TryAnswer(out var face, out var problems)) return await Refuse(problems);
            if (parsed.GetValue(weight) is { } kilograms && parsed.GetValue(other) is { } second)
            {
                if (!MouldFace.Round(Length.FromCentimetres(second)).TryAnswer(out var wider, out problems)) return await Refuse(problems);
                return await Telling.TellAsync(PressPressure.SameOnAnotherMould(Mass.FromKilograms(kilograms), face.Value, wider.Value), mass => $"{Telling.Number(mass.Kilograms)} kg on {Telling.Number(second)} cm press as {Telling.Number(kilograms)} kg on {Telling.Number(diameter)} cm.");
            }

            return (parsed.GetValue(weight), parsed.GetValue(pressure)) switch
            {
                ({ } load, null) => await Telling.TellAsync(PressPressure.Of(Mass.FromKilograms(load), ratio, arm, face.Value), found => $"{Telling.Number(found.Kilopascals)} kPa, which is {Telling.Number(found.PoundsPerSquareInch)} psi or {Telling.Number(found.KilogramsForcePerSquareCentimetre)} kgf/cm2."),
                (null, { } wanted) => await Telling.TellAsync(PressPressure.WeightFor(Pressure.FromKilopascals(wanted), ratio, arm, face.Value), mass => $"{Telling.Number(mass.Kilograms)} kg ({Telling.Number(mass.Pounds)} lb) give {Telling.Number(wanted)} kPa."),
                _ => await Telling.WrongAsync("Give either --weight or --pressure."),
            };
        });
        return command;

        static Task<int> Refuse(Listed<Problem> problems) => Telling.RefuseAsync(problems.Select(problem => problem.Sentence));
    }
}
