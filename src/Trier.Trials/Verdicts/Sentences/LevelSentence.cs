using Trier.Trials.Verdicts.Findings;

namespace Trier.Trials.Verdicts.Sentences;

/// <summary>What is shown, one kind of sentence for each level of the ladder.</summary>
internal static class LevelSentence
{
    public static string Of(Verdict verdict)
    {
        var level = verdict.Level;
        if (level.Level == 0) return Count(verdict);
        var leaders = Naming.Of(verdict, verdict.Leaders);
        var luck = P(verdict);
        var others = Phrase.Wheels(verdict.Record);
        var alike = verdict.Wheels.Length == 2 ? $"both {others}" : $"all {others}";
        return level.Level switch
        {
            1 => verdict.Gate?.TieLuck is { } tie
                ? $"{leaders} came out level; with so many ballots luck alone ends in a shared lead {Chance.TimesInTen(tie)}."
                : $"{leaders} came out level; nobody should call one of them better.",
            2 => $"{leaders} came out ahead, but even if {alike} tasted alike, ballots this uneven would turn up {Chance.TimesInTen(luck)}: nobody should call {leaders} better.",
            3 => $"{leaders} came out ahead: a hint, not proof, for even if {alike} tasted alike, ballots this uneven would turn up {Chance.OneIn(luck)}.",
            4 => $"Our tasters did not treat these {others} alike (luck alone would part them this far {Chance.OneIn(luck)}), but which is best the ballots do not settle.{PairsShown(verdict)}",
            5 => $"Shown: {leaders} was placed above {Naming.Of(verdict, level.ShownOver)}; against {Naming.Of(verdict, level.Open)} it is open. Luck alone would part the {others} this far {Chance.OneIn(luck)}.",
            _ => $"Shown: our tasters placed {leaders} above {(verdict.Wheels.Length == 2 ? Naming.Of(verdict, verdict.Wheels[1].Id) : $"every other {Phrase.Wheel(verdict.Record)}")}. Luck alone would part the {others} this far {Chance.OneIn(luck)}.",
        };
    }

    /// <summary>The chance the ladder stands on: with two wheels the pair's own.</summary>
    public static double P(Verdict verdict) => verdict.Wheels.Length == 2 ? verdict.Pairs[0].P : verdict.Gate!.P.Value;

    private static string Count(Verdict verdict)
    {
        var ballots = verdict.Panel.Ballots;
        var counted = $"{Phrase.Number(ballots)} {Phrase.Ballots(ballots)} could be counted";
        return verdict.Level.Reason switch
        {
            NothingToTest.Pieces => $"{counted}; a comparison needs ballots that tie the {Phrase.Wheels(verdict.Record)} together.",
            NothingToTest.AllTied => $"{counted}; a comparison needs somebody who prefers one {Phrase.Wheel(verdict.Record)} to another.",
            _ => $"{counted}; a comparison needs at least two {Phrase.Wheels(verdict.Record)} and four voices.",
        };
    }

    private static string PairsShown(Verdict verdict)
    {
        var shown = verdict.Pairs.Where(p => p.Shown).ToList();
        if (shown.Count == 0) return "";
        return $" Shown: {string.Join("; ", shown.GroupBy(p => p.Better, StringComparer.Ordinal).Select(g => $"{Naming.Of(verdict, g.Key)} was placed above {Phrase.List(g.Select(p => Naming.Of(verdict, p.Worse)))}"))}.";
    }
}
