using System.Collections.Immutable;
using Trier.Statistics.Randomness;
using Trier.Statistics.RankTests;
using Trier.Trials.Verdicts.Counting;
using Trier.Trials.Verdicts.Findings;
using Trier.Trials.Verdicts.Sentences;

namespace Trier.Trials.Verdicts;

/// <summary>Judges a tasting.</summary>
public static class Judge
{
    /// <summary>Draws the verdict from a record. Same record, seed and effort: same verdict.</summary>
    /// <param name="record">A revealed tasting or a ballot file; sample and taster ids unique.</param>
    /// <param name="seed">Where chance comes from; the order of samples and tasters in the record changes nothing.</param>
    /// <param name="effort">How much work, in counts; <see cref="Effort.Usual"/> if null.</param>
    /// <returns>Always a verdict; where nothing can be tested its level is 0 and says why.</returns>
    public static Verdict Of(TastingRecord record, Seed seed, Effort? effort = null)
    {
        ArgumentNullException.ThrowIfNull(record);
        effort ??= Effort.Usual;
        var electorate = new Electorate(record);
        var scores = Rules.Score(electorate, electorate.Headline, record.Plan.Rule);
        var judged = Ladder.Judge(scores, seed.Child("gate"), effort);
        var friedman = Sections.FriedmanOf(electorate, judged, seed, effort);
        var wheels = InOrder(electorate, judged);
        var verdict = new Verdict
        {
            Record = record,
            Seed = seed.Value,
            Panel = Sections.Panel(electorate),
            Wheels = wheels,
            Leaders = [.. judged.Leaders.Select(i => electorate.Wheels[i].Id)],
            Level = Sections.Level(electorate, judged, wheels),
            Tally = Tallying.Lines(electorate, wheels, electorate.Headline),
            TallyWithTheKey = electorate.Voters.Any(v => v.Role == VoterRole.KnewTheKey && electorate.Placed(v) >= 2)
                ? Tallying.Lines(electorate, wheels, Sections.WithTheKey(electorate))
                : [],
            Gate = Sections.Gate(judged, friedman, seed),
            Friedman = Sections.Friedman(friedman),
            Pairs = Sections.Pairs(electorate, judged),
            HeadToHead = Tallying.HeadToHead(electorate, wheels),
            Kemeny = Tallying.Kemeny(electorate),
            Places = Tallying.Places(electorate, wheels),
            Repeats = Repeating.Of(electorate),
            SameRecipe = Repeating.SameRecipe(electorate, judged),
            Variants = Varying.Of(electorate, judged, wheels, seed, effort),
            Fewest = Tipping.Fewest(electorate, judged),
            Ballots = [.. electorate.Voters.Select(v => Sections.Strip(electorate, v))],
            Words = null!,
            Cautions = Cautioning.Of(electorate),
        };
        return verdict with { Words = Wording.Of(verdict) };
    }

    private static ImmutableArray<SampleRecord> InOrder(Electorate electorate, Judged judged)
    {
        var averages = judged.Standing.Averages;
        double Key(int i) => averages[i] is not { } average ? double.MaxValue : Math.Round(judged.Scores.LowerIsBetter ? average : -average, 9);
        return electorate.Wheels.IsEmpty ? [] : [.. Enumerable.Range(0, electorate.Wheels.Length).OrderBy(Key).ThenBy(i => electorate.Wheels[i].Id, StringComparer.Ordinal).Select(i => electorate.Wheels[i])];
    }
}
