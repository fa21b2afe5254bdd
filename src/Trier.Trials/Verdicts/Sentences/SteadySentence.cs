using Trier.Trials.Verdicts.Findings;

namespace Trier.Trials.Verdicts.Sentences;

/// <summary>How steady the lead is among these same ballots; for the fold, and never as a chance to be best.</summary>
internal static class SteadySentence
{
    public static string? Of(Verdict verdict)
    {
        if (verdict.Deep?.Steady is not { } steady || verdict.Leaders.Length != 1) return null;
        var leader = steady.Wheels.First(wheel => wheel.Id == verdict.Leaders[0]);
        var rivals = steady.Wheels.Where(wheel => wheel.Id != leader.Id && wheel.Leads >= 0.05).OrderByDescending(wheel => wheel.Leads).Select(wheel => $"{Naming.Of(verdict, wheel.Id)} {Tenths(wheel)}").ToList();
        var others = rivals.Count == 0 ? "; no other leads in more than 1 of 20" : $", {Phrase.List(rivals)}";
        return $"Drawing as many voices again from these same ballots, {Naming.Of(verdict, leader.Id)} leads {Tenths(leader)}{others}: that tells how steady the lead is among these same ballots, not how likely {Naming.Of(verdict, leader.Id)} is the favourite.";
    }

    private static string Tenths(SteadyLine line) => line.Leads >= 0.995 ? "nearly every time" : $"in about {Phrase.Number((long)Math.Round(100 * line.Leads, MidpointRounding.AwayFromZero))} of 100 draws";
}
