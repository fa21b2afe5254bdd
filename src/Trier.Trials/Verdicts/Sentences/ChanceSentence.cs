using Trier.Trials.Tastings;
using Trier.Trials.Verdicts.Findings;

namespace Trier.Trials.Verdicts.Sentences;

/// <summary>How good a bet the best bet is. Where camps are parted it is said for each camp, for one favourite of all would be nobody's.</summary>
internal static class ChanceSentence
{
    private const double Strong = 0.90;
    private const double Good = 0.70;
    // Between these two the odds read "about 5 in 10", and nobody may be told that 5 in 10 is more, or less, likely than not.
    private const double Likely = 0.55;
    private const double Even = 0.45;
    private const double Quarter = 0.25;
    private const double ThreeQuarters = 0.75;
    private const double Near = 0.025;

    /// <summary>The sentence; null where the chances are not worked out, do not settle, or the lead is shared.</summary>
    public static string? Of(Verdict verdict)
    {
        if (verdict.Deep?.Chances is not { Settled: true } chances) return null;
        if (!chances.InCamps.IsEmpty) return Camps(verdict, chances);
        if (verdict.Leaders.Length != 1) return null;
        var own = chances.Of(verdict.Leaders[0]);
        var leader = Naming.Of(verdict, own.Id);
        var bet = own.Chance switch
        {
            >= Strong => $"{leader} is a strong bet, {Tenths(own.Chance)}, to be",
            >= Good => $"{leader} is a good bet, {Tenths(own.Chance)}, to be",
            >= Likely => $"{leader} is more likely than not, {Tenths(own.Chance)}, to be",
            >= Even => $"{leader} is as likely as not, {Tenths(own.Chance)}, to be",
            _ => $"{leader} is the best guess we have, and more likely wrong than right: {Tenths(own.Chance)} that it is",
        };
        var other = chances.Best.Id == own.Id ? "" : $" The model behind these odds leans to {Naming.Of(verdict, chances.Best.Id)} instead, {Tenths(chances.Best.Chance)}.";
        return $"{bet} the favourite of people like these; a blind guess is right 1 time in {Phrase.Number(verdict.Wheels.Length)}.{other}";
    }

    /// <summary>"about 8 in 10"; the quarters, which tenths would misstate, as "about 3 in 4".</summary>
    public static string Tenths(double chance) => chance switch
    {
        >= ThreeQuarters - Near and < ThreeQuarters + Near => "about 3 in 4",
        >= Quarter - Near and < Quarter + Near => "about 1 in 4",
        _ => InTen(chance),
    };

    private static string InTen(double chance) => Math.Round(10 * chance, MidpointRounding.AwayFromZero) switch
    {
        >= 10 => "more than 9 in 10",
        <= 0 => "less than 1 in 10",
        var tenths => $"about {Phrase.Number((long)tenths)} in 10",
    };

    private static string Camps(Verdict verdict, ChanceFinding chances)
    {
        var camps = chances.InCamps.Select(camp =>
        {
            var best = camp.Wheels.MaxBy(wheel => wheel.Chance)!;
            return $"among the {Phrase.Number(camp.Voices)} who like {Name(camp.Taste)} cheese {Naming.Of(verdict, best.Id)} is the bet, {Tenths(best.Chance)}";
        });
        return $"The bet depends on whom you make it for: {string.Join("; ", camps)}.";
    }

    public static string Name(DeclaredTaste taste) => taste == DeclaredTaste.Milder ? "milder" : "stronger";
}
