using System.Globalization;
using Trier.Trials.Tastings;
using Trier.Trials.Tastings.Plates;

namespace Trier.Web.Tastings.Plates;

/// <summary>How even the plates are, in plain sentences. None of them names a wheel.</summary>
internal static class PlateWords
{
    public static IEnumerable<string> Of(DayBook book)
    {
        if (PlateFacts.Of(book) is not { } facts) yield break;
        var counts = facts.Balance.Positions.SelectMany(row => row).ToList();
        // Once a wheel is out, the rows close up; what was balanced is the plates as they were dealt.
        var dealt = book.Withdrawals.Any(gone => gone.WhileTasting);
        yield return counts.Min() == counts.Max()
            ? $"{(dealt ? "Of the plates as they are now, every" : "Every")} sample is served in every position {Times(counts.Min())}."
            : $"{(dealt ? "Of the plates as they are now, every" : "Every")} sample is served in every position between {counts.Min()} and {counts.Max()} times.";
        var next = facts.Balance.CarryOver.SelectMany((row, item) => row.Where((_, other) => other != item)).ToList();
        yield return next.Min() == next.Max()
            ? $"Each sample comes right after each other one {Times(next.Min())}."
            : $"Each sample comes right after each other one between {next.Min()} and {next.Max()} times.";
        if (book.Repeat is not null && book.RevealedAt is null)
        {
            yield return facts.Adjacent > 0
                ? $"One wheel is served twice; with so few samples its two codes stand side by side {Times(facts.Adjacent)}."
                : facts.Plain is { } plain
                ? string.Create(CultureInfo.InvariantCulture, $"One wheel is served twice, never right after itself. That costs a little: how often samples follow each other strays by {facts.Balance.CarryOverUnevenness:0.0} from even, where without a repeat it would be {plain.CarryOverUnevenness:0.0}.")
                : "One wheel is served twice, never right after itself.";
        }

        if (facts.Efficiency is { } efficiency)
        {
            var served = facts.Balance.Positions.Select(row => row.Sum()).ToList();
            yield return string.Create(CultureInfo.InvariantCulture, $"Everybody gets {facts.Each} of {facts.Samples} samples, each sample goes to {Between(served.Min(), served.Max())} people. A comparison of two is worth {100 * efficiency:0} in 100 of one for which as many samples were eaten with everybody tasting all.");
        }

        if (book.Plan.Serving is { OwnCodes: true }) yield return book.Key!.OwnCodes ? "Every plate has codes of its own." : "Own codes for every plate would be too many: a sample has the same code for everybody.";
        if (book.SecondFlight.Any(wheel => !book.IsWithdrawn(wheel))) yield return "The last of each plate is the second flight: liked, and not placed among the others.";
        if (book.Plan.Serving?.WarmUp is not null) yield return "Before all of them stands the warm-up, without a code.";
    }

    private static string Between(int least, int most) => least == most ? $"{least}" : $"{least} to {most}";

    private static string Times(int number) => number switch { 1 => "once", 2 => "twice", _ => $"{number} times" };
}
