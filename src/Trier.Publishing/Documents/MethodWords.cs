using System.Collections.Immutable;
using System.Globalization;
using Trier.Publishing.Bundles;
using Trier.Publishing.Writing;
using Trier.Statistics.RankTests;
using Trier.Trials.Verdicts;
using Trier.Trials.Verdicts.Findings;

namespace Trier.Publishing.Documents;

/// <summary>What was done, so that somebody else could do it again.</summary>
public static class MethodWords
{
    /// <summary>Sentences, one paragraph each.</summary>
    /// <param name="publication">What is published.</param>
    public static ImmutableArray<string> Of(Publication publication)
    {
        ArgumentNullException.ThrowIfNull(publication);
        var verdict = publication.Verdict;
        var words = ImmutableArray.CreateBuilder<string>();
        words.Add(Serving(verdict));
        words.Add(Counting(verdict));
        if (verdict.Gate is { } gate) words.Add(Testing(verdict, gate));
        if (verdict.Deep?.Chances is { } chances) words.Add(string.Create(CultureInfo.InvariantCulture, $"Chances of being the favourite are worked out by the model of Plackett and Luce. Log-worths are taken to be normal, their spread half-normal with scale {chances.PriorScale:0.##}, so that two wheels typically stand 1.5 to 1. They are drawn until {chances.EffectiveSize:0} draws are independent and the chains agree (R-hat {chances.RHat:0.000}). Such a chance is right on average over what was taken beforehand, not for one given truth."));
        if (verdict.Deep?.Camps is { } camps) words.Add(string.Create(CultureInfo.InvariantCulture, $"Camps are held only against what tasters had said before tasting: {camps.Milder} milder, {camps.Stronger} stronger; the labels are dealt anew over the voices in {camps.Ways:0} ways (chance {Chance(camps.P)}, {Method(camps.P.Method)}; 0.01 needed), single wheels by Holm at 0.05."));
        if (publication.Key is { Words: { } sealedAs }) words.Add($"Which code was which wheel was sealed beforehand and read aloud as five words: {sealedAs}. key.json holds all that is needed to work them out again.");
        words.Add(string.Create(CultureInfo.InvariantCulture, $"Methods version {Verdict.MethodsVersion}, seed {verdict.Seed}: the same record gives the same verdict. Tasters are numbers unless they agreed to be named; remarks stand here only where their writer agreed to be quoted."));
        return words.ToImmutable();
    }

    private static string Serving(Verdict verdict)
    {
        var record = verdict.Record;
        if (record.Head.FromFile) return $"The ballots come from a file, which says nothing of how {Numbers.Plain(record.Samples.Length)} samples were served.";
        var repeats = record.Samples.Count(sample => sample.RepeatOf is not null);
        return $"{Numbers.Plain(verdict.Panel.Tasters)} people tasted blind; {Numbers.Plain(verdict.Wheels.Length)} wheels were served, each under a three-digit code{(repeats > 0 ? ", one of them under two" : "")}, in serving orders balanced over the company. Who knew the key stands apart and is in no test.";
    }

    private static string Counting(Verdict verdict)
    {
        var planned = verdict.Record.Head.FromFile ? "The rule is the usual one, average place." : "The rule was fixed at the sealing, before the first plate.";
        var main = verdict.Panel.Main == MainCount.CompleteBallots ? "Ballots that place every wheel are counted" : "All ballots that place two or more are counted, places adjusted for what each was served";
        return $"{planned} {main}: {Numbers.Plain(verdict.Panel.Ballots)} ballots, {Numbers.Plain(verdict.Panel.Voices)} independent voices, for those who compared notes are one. Tied wheels share the mean of their places; a tie for the lead stays a tie.";
    }

    private static string Testing(Verdict verdict, GateFinding gate) =>
        string.Create(CultureInfo.InvariantCulture, $"Whether there is any difference at all is tested by shuffling each voice’s wheels (Q {gate.Statistic:0.000}, chance {Chance(gate.P)}, {Method(gate.P.Method)}; on complete ballots this is Friedman’s test with ties put right). Single pairs are tested by flipping the sign of each voice’s gap, exactly, stepped down after Shaffer (1986); their chances are listed always, and a pair is shown only where the first chance is at most 0.05. The level on the ladder of seven is {verdict.Level.Level}. Gaps carry 90 % intervals over voices.");

    private static string Chance(PValue p) => p.Value < 0.001 ? p.Value.ToString("0.######", CultureInfo.InvariantCulture) : p.Value.ToString("0.####", CultureInfo.InvariantCulture);

    private static string Method(TestMethod method) => method switch
    {
        TestMethod.Exact => "exact",
        TestMethod.Permutation => "drawn shuffles",
        _ => "chi-square approximation",
    };
}
