using Trier.Trials.Plans;
using Trier.Trials.Verdicts.Findings;

namespace Trier.Trials.Verdicts.Sentences;

/// <summary>The best bet for the next vat: the leader by the planned rule, with why.</summary>
internal static class BetSentence
{
    public static string Of(Verdict verdict)
    {
        if (verdict.Level.Reason != NothingToTest.None) return Untested(verdict);
        var names = Naming.Of(verdict, verdict.Leaders);
        var rule = verdict.Record.Plan.Rule;
        if (verdict.Leaders.Length != 1)
            return $"{names} share {Phrase.Lead(rule)}, and we leave it a tie.";
        return verdict.Level.Level <= 2
            ? $"{names} is the best guess we have: {Reason(verdict)}."
            : $"{names} is our best bet: {Reason(verdict)}.";
    }

    private static string Reason(Verdict verdict)
    {
        var line = verdict.Tally.First(t => t.Id == verdict.Leaders[0]);
        var rule = verdict.Record.Plan.Rule;
        var lead = $"it has {Phrase.Lead(rule)}";
        if (line.Lasts == 0 && verdict.Panel.Ballots >= 4 && !verdict.Ballots.Any(ballot => ballot.Standing is StripStanding.Counted or StripStanding.Partial && PutsLast(ballot, line.Id))) return $"nobody put it last and {lead}";
        var mostFirsts = rule is not CountingRule.Firsts && verdict.Tally.All(t => t.Id == line.Id || t.Firsts < line.Firsts);
        return mostFirsts ? $"{lead} and the most firsts" : lead;
    }

    // A ballot that is not in the headline's count hangs in the picture below all the same.
    private static bool PutsLast(BallotStrip ballot, string id) =>
        ballot.Below.IsEmpty ? ballot.Groups.Length > 1 && ballot.Groups[^1].Contains(id) : ballot.Below.Contains(id);

    private static string Untested(Verdict verdict) => verdict.Level.Reason switch
    {
        NothingToTest.TooFewWheels => $"Fewer than two {Phrase.Wheels(verdict.Record)} are left to compare, so nothing can be tested; here is what was said.",
        NothingToTest.AllTied => "Every ballot ties everything, so nothing can be tested; here they are.",
        NothingToTest.Pieces => $"No ballot compares {Phrase.List(verdict.Level.Pieces.Select(p => Naming.Of(verdict, p)), "with")}, so nothing can be tested across them; here are the counts.",
        _ => "Too few answers to judge, so nothing can be tested; here they are.",
    };
}
