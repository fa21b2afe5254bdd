using System.CommandLine;
using Trier.Dairy.Brine;
using Trier.Dairy.Eyes;
using Trier.Dairy.Quantities;
using Trier.Dairy.Workings;

namespace Trier.Commands.Makes;

/// <summary><c>trier eyes-possible</c>: whether a wheel this small can make eyes at all.</summary>
internal static class EyesPossibleCommand
{
    public static Command Create()
    {
        var wheel = TypedWheel.Option();
        var days = Measured.Days.Option("--days", "Days in the warm room; 21 if not given.", "21d");
        var at = Measured.Temperature.Option("--at", "Temperature of the warm room; 20 °C if not given.", "20C");
        var lactic = Measured.Plain.Option("--lactic", "Lactic acid of the cheese, per cent; 1.4 if not given.", "1.4");
        var coat = Measured.Plain.Option("--coat", "Part of the gas a coat lets through: 1 for a bare rind, near 0 for a vacuum bag.", "1");
        var command = new Command("eyes-possible", "Can a wheel of this size make eyes at all?") { wheel, days, at, lactic, coat };
        command.SetAction(async (parsed, _) =>
        {
            if (parsed.GetValue(wheel) is not { } typed) return await Telling.WrongAsync("Give --wheel, diameter by height.");
            if (!WheelSize.Create(Length.FromCentimetres(typed.DiameterCentimetres), Length.FromCentimetres(typed.HeightCentimetres)).TryAnswer(out var size, out var problems)) return await Telling.RefuseAsync(problems.Select(problem => problem.Sentence));
            var acid = parsed.GetValue(lactic) ?? 1.4;
            return await Telling.TellAsync(
                GasBudget.For(
                    size.Value,
                    Estimate.Between(Share.FromPercent(acid * 1.2 / 1.4), Share.FromPercent(acid), Share.FromPercent(acid * 1.7 / 1.4)),
                    GasBudget.UsuallyTurned,
                    TimeSpan.FromDays(parsed.GetValue(days) ?? 21),
                    Temperature.FromCelsius(parsed.GetValue(at) ?? 20),
                    Estimate.Exactly(parsed.GetValue(coat) ?? 1),
                    Density.FromKilogramsPerCubicMetre(1070)),
                Say);
        });
        return command;
    }

    private static string Say(GasBudget budget)
    {
        var room = $"room for {Telling.Number(100 * budget.Void.Likely)} % of holes ({Telling.Number(100 * budget.Void.Low)} to {Telling.Number(100 * budget.Void.High)} %)";
        return budget.Verdict switch
        {
            EyesPossible.Likely => $"Eyes are likely: {room}.",
            EyesPossible.CannotTell => $"It may go either way: {room}; the error is larger than the answer.",
            _ => $"Eyes are unlikely: {room}; {SheetText.Blind(budget)}{(budget.SizeDecides ? " Coat it, bag it or make it larger." : "")}",
        };
    }
}
