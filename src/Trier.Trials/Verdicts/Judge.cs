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
    /// <summary>Draws the whole verdict from a record. Same record, seed and effort: same verdict.</summary>
    /// <param name="record">A revealed tasting or a ballot file; sample and taster ids unique.</param>
    /// <param name="seed">Where chance comes from; the order of samples and tasters in the record changes nothing.</param>
    /// <param name="effort">How much work, in counts; <see cref="JudgingEffort.Usual"/> if null.</param>
    /// <returns>Always a verdict; where nothing can be tested its level is 0 and says why.</returns>
    public static Verdict Of(TastingRecord record, Seed seed, JudgingEffort? effort = null)
    {
        var headline = Headline(record, seed, effort);
        return headline.With(Deepen(headline, effort, null, CancellationToken.None));
    }

    /// <summary>The counts, the tests and the level: all that a page can wait for.</summary>
    /// <inheritdoc cref="Of" path="/param"/>
    /// <returns>A verdict whose <see cref="Verdict.Deep"/> is null and whose sentences say nothing of what is not worked out yet.</returns>
    public static Verdict Headline(TastingRecord record, Seed seed, JudgingEffort? effort = null)
    {
        ArgumentNullException.ThrowIfNull(record);
        var tests = (effort ?? JudgingEffort.Usual).Tests;
        var electorate = new Electorate(record);
        var judged = Judged(electorate, seed, tests);
        var friedman = Sections.FriedmanOf(electorate, judged, seed, tests);
        var wheels = InOrder(electorate, judged);
        var verdict = new Verdict
        {
            Record = record,
            Seed = seed.Value,
            Panel = Sections.Panel(electorate, judged),
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
            Salt = Answering.Salt(electorate, wheels),
            Properties = AskedAfter.Properties(electorate, wheels),
            Again = AskedAfter.Again(electorate, wheels),
            WordCounts = AskedAfter.Words(electorate, wheels),
            Unclear = AskedAfter.Unclear(record),
            Said = Answering.Said(electorate, wheels),
            Deep = null,
            Fewest = Tipping.Fewest(electorate, judged),
            Ballots = [.. electorate.Voters.Select(v => Sections.Strip(electorate, v))],
            Words = null!,
            Cautions = Cautioning.Of(electorate),
        };
        verdict = verdict with { OtherWeights = [.. OtherWeights.For(verdict).Select(points => Reweighing.Of(verdict, points))] };
        return verdict with { Words = Wording.Of(verdict) };
    }

    /// <summary>Works out what takes longer: other ways of counting, camps, chances.</summary>
    /// <param name="headline">The headline of the same record.</param>
    /// <param name="effort">How much work, in counts; <see cref="JudgingEffort.Usual"/> if null.</param>
    /// <param name="progress">Told the share done, from 0 to 1; null for nobody.</param>
    /// <param name="cancellation">Stops between two sections.</param>
    /// <exception cref="OperationCanceledException">It was stopped.</exception>
    public static DeepFindings Deepen(Verdict headline, JudgingEffort? effort, Action<double>? progress, CancellationToken cancellation)
    {
        ArgumentNullException.ThrowIfNull(headline);
        effort ??= JudgingEffort.Usual;
        var seed = new Seed(headline.Seed);
        var electorate = new Electorate(headline.Record);
        var tests = headline.Level.Reason == NothingToTest.None;
        var judged = Judged(electorate, seed, effort.Tests);
        var variants = Varying.Of(electorate, judged, headline.Wheels, seed, effort.Tests, cancellation);
        Next(0.4);
        var camps = tests ? Parting.Camps(electorate, headline.Wheels, seed, effort.Tests) : null;
        Next(0.5);
        var loved = tests ? Parting.Loved(electorate, headline.Wheels, seed, effort.Tests) : null;
        Next(0.55);
        var order = Ordering.Order(electorate, seed, effort.Tests);
        var sittings = tests ? Ordering.Sittings(electorate, seed, effort.Tests) : null;
        Next(0.6);
        var reach = Ordering.Reach(electorate, judged, seed, effort.Panels);
        Next(0.65);
        var steady = tests ? Steadying.Of(electorate, headline.Wheels, seed, effort.Redraws) : null;
        Next(0.7);
        var chances = tests ? Chances.Of(electorate, headline.Wheels, camps, seed, effort) : null;
        Next(0.8);
        var tastes = tests ? Tastes.Of(electorate, headline.Wheels, seed, effort.TastePanels) : null;
        progress?.Invoke(1);
        return new(variants, chances, camps, loved, order, sittings, reach, steady, tastes);

        void Next(double share)
        {
            progress?.Invoke(share);
            cancellation.ThrowIfCancellationRequested();
        }
    }

    /// <summary>Counts place points with other weights. A count to look at: the planned rule and its level stay the verdict.</summary>
    /// <param name="verdict">The verdict of the record.</param>
    /// <param name="points">Falling weights, one for each wheel; missing ones are 0, or as low as the last where that is below 0.</param>
    /// <exception cref="ArgumentException">The weights do not fall.</exception>
    public static Reweighed Reweigh(Verdict verdict, Plans.CountingRule.PlacePoints points)
    {
        ArgumentNullException.ThrowIfNull(verdict);
        ArgumentNullException.ThrowIfNull(points);
        if (!Plans.CountingRule.PlacePoints.Fall(points.Weights)) throw new ArgumentException("Place points fall from the first place to the last.", nameof(points));
        return Reweighing.Of(verdict, points);
    }

    private static Judged Judged(Electorate electorate, Seed seed, Effort tests) =>
        Ladder.Judge(Rules.Score(electorate, electorate.Headline, electorate.Record.Plan.Rule), seed.Child("gate"), tests);

    private static ImmutableArray<SampleRecord> InOrder(Electorate electorate, Judged judged)
    {
        var averages = judged.Standing.Averages;
        double Key(int i) => averages[i] is not { } average ? double.MaxValue : Math.Round(judged.Scores.LowerIsBetter ? average : -average, 9);
        return electorate.Wheels.IsEmpty ? [] : [.. Enumerable.Range(0, electorate.Wheels.Length).OrderBy(Key).ThenBy(i => electorate.Wheels[i].Id, StringComparer.Ordinal).Select(i => electorate.Wheels[i])];
    }
}
