using System.Collections.Immutable;
using Trier.Statistics.Power;
using Trier.Trials.Tastings;
using Trier.Trials.Verdicts.Findings;

namespace Trier.Trials.Verdicts.Sentences;

/// <summary>What to make next, and what it would take to settle what is open.</summary>
internal static class NextSentences
{
    private const double UsualPreference = 2;

    // A preference beyond this is met so seldom that its size tells a reader nothing (our choice, no source).
    private const int HardlyEver = 20;

    // Found exactly once: the smallest panel that shows a preference of 2 : 1 between two wheels every other time, and from which it stays so.
    private static readonly (int? Reaching, int? Lasting) HeadToHead = HeadToHeadPower.PanelSize(UsualPreference, 0.5);

    public static ImmutableArray<string> All(Verdict verdict)
    {
        if (verdict.Level.Reason != NothingToTest.None) return [$"Nothing can be concluded from these answers yet: taste again with at least two {Phrase.Wheels(verdict.Record)} and four people; to tell two of {Phrase.Number(Math.Max(2, verdict.Wheels.Length))} {Phrase.Wheels(verdict.Record)} apart takes {Phrase.Number(Trier.Statistics.RankTests.Shaffer.SmallestPanel(Math.Max(2, verdict.Wheels.Length)))} at the very least."];
        var sentences = ImmutableArray.CreateBuilder<string>();
        sentences.Add(Vat(verdict));
        if (Settle(verdict) is { } settle) sentences.Add(settle);
        if (!verdict.Record.Head.FromFile && verdict.Wheels.Length > 1)
            sentences.Add("To speak of recipes instead of wheels, make each again on another day: two makes of each tell a good recipe from a lucky day a little, and only four of each can show it.");
        return sentences.ToImmutable();
    }

    private static string Vat(Verdict verdict)
    {
        if (verdict.Deep?.Chances is { InCamps: { IsEmpty: false } camps })
        {
            var bets = camps.Select(camp => (camp.Taste, Again(verdict, camp.Wheels.MaxBy(wheel => wheel.Chance)!.Id))).ToList();
            if (bets.Select(bet => bet.Item2).Distinct(StringComparer.Ordinal).Count() > 1)
                return $"Split the vat and make both {string.Join(", and ", bets.Select(bet => $"{bet.Item2}, for those who like it {ChanceSentence.Name(bet.Taste)}"))}. For one that is to please them all, {Naming.Of(verdict, verdict.Leaders)} {Phrase.Verb(verdict.Leaders.Length, "is", "are")} the bet.";
        }

        if (verdict.Leaders.Length != 1) return $"Make {Naming.Of(verdict, verdict.Leaders)} again: the ballots do not choose between them.";
        var leader = Naming.Of(verdict, verdict.Leaders);
        return verdict.Level.Level switch
        {
            <= 2 => $"If you make one again, make {leader}; your own taste is as good a guide, for these ballots hardly choose.",
            _ => $"For the next vat make {leader}.",
        };
    }

    // A vat of today cannot be an old wheel: its age has to be made again, too.
    private static string Again(Verdict verdict, string id)
    {
        var name = Naming.Of(verdict, id);
        return Limits.Aged(verdict).FirstOrDefault(aged => aged.Wheel.Id == id) is { Wheel: not null } old
            ? $"{old.Wheel.Facts.Recipe ?? name} (to be kept as long as {name}, {Phrase.Number(old.Days)} days, for its age may be what they liked)"
            : name;
    }

    private static string? Settle(Verdict verdict)
    {
        if (verdict.Level.Level == 6 || verdict.Wheels.Length < 2 || HeadToHead is not { Reaching: { } reaching, Lasting: { } lasting }) return null;
        var (first, second) = (Naming.Of(verdict, verdict.Wheels[0].Id), Naming.Of(verdict, verdict.Wheels[1].Id));
        return $"To settle {first} against {second}, taste those two alone: if twice as many people prefer one of them, {Phrase.Number(reaching)} to {Phrase.Number(lasting)} tasters would show it every other time.";
    }

    /// <summary>What a panel like this can show; null where that was not worked out.</summary>
    public static string? Reach(Verdict verdict)
    {
        if (verdict.Deep?.Reach is not { } reach || verdict.Level.Level == 6) return null;
        var panel = $"{Phrase.Number(verdict.Panel.Voices)} voices and {Phrase.Number(verdict.Wheels.Length)} {Phrase.Wheels(verdict.Record)}";
        return reach.SmallestPreference switch
        {
            null => $"With {panel} not even a favourite of everybody would have been shown 8 times in 10.",
            > HardlyEver => $"With {panel} only a favourite that people prefer more than {Phrase.Number(HardlyEver)} to 1 over each other {Phrase.Wheel(verdict.Record)} would have been shown 8 times in 10; weaker preferences mostly stay open.",
            { } ratio => $"With {panel} only a favourite that people prefer some {Phrase.Tenths(ratio)} to 1 over each other {Phrase.Wheel(verdict.Record)} would have been shown 8 times in 10; weaker preferences mostly stay open.",
        };
    }
}
