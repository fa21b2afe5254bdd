using Trier.Statistics.Counting;
using Trier.Statistics.Distributions;
using Trier.Statistics.Randomness;
using Trier.Statistics.Rankings;

namespace Trier.Statistics.RankTests;

/// <summary>What the test of "is there any difference?" found.</summary>
/// <param name="Statistic">Q = A' V^+ A; on complete ballots by average place, Friedman's tie-corrected T1. 0 where nothing varies.</param>
/// <param name="P">The chance of Q or more when each voice's item names are shuffled.</param>
/// <param name="ChiSquareP">The chi-square approximation, for the small print only: its true size is 5.8 % at 3 items and 12 judges.</param>
/// <param name="DegreesOfFreedom">Items minus connected pieces.</param>
/// <param name="Voices">Independent voices.</param>
/// <param name="Ballots">Ballots.</param>
/// <param name="LeadLuck">The chance, in the same shuffles, that first and second end at least this far apart; null where the items fall into pieces.</param>
public sealed record GateResult(
    double Statistic, PValue P, double ChiSquareP, int DegreesOfFreedom, long Voices, long Ballots, PValue? LeadLuck);

/// <summary>
/// Is there any difference between the items? Under the hypothesis that within each ballot every order of its items was equally
/// likely, A = sum of w d over ballots, with d the centred scores of the planned rule and w = sqrt(12/(m+1)) where ballots differ in
/// length m, 1 otherwise; V = sum of w^2 v (I - J/m) with v = sum d^2/(m-1), which corrects for ties; Q = A' V^+ A. The p-value shuffles the item names of
/// each voice: one shuffle for a joined voice, over the items all its ballots served.
/// Sources: [Friedman1937], [SkillingsMack1981]; the tie correction by each ballot's own variance as in [Conover1999].
/// </summary>
public static class Gate
{
    private const double LargestWalk = 2e6;
    private const int FewestDraws = 999;

    /// <summary>How many times as long a ballot takes that cannot be packed into one word.</summary>
    private const double GeneralCost = 25;

    /// <summary>Tests the ballots by average place.</summary>
    /// <param name="set">At least 2 items; ballots that served fewer than two items are left out.</param>
    /// <param name="seed">Where chance comes from, if arrangements must be drawn.</param>
    /// <param name="effort">How much work; <see cref="Effort.Usual"/> if null.</param>
    public static Answer<GateResult> Test(RankingSet set, Seed seed, Effort? effort = null) =>
        Test(ScoreSet.FromRankings(set, CountingRule.AveragePlace), seed, effort);

    /// <summary>Tests the ballots by any additive rule.</summary>
    /// <param name="scores">The ballots' scores by the planned rule.</param>
    /// <param name="seed">Where chance comes from, if arrangements must be drawn.</param>
    /// <param name="effort">How much work; <see cref="Effort.Usual"/> if null.</param>
    /// <returns>Refused with fewer than 2 items or no ballot. Where every ballot ties everything the statistic is 0 and p is 1.</returns>
    public static Answer<GateResult> Test(ScoreSet scores, Seed seed, Effort? effort = null)
    {
        ArgumentNullException.ThrowIfNull(scores);
        effort ??= Effort.Usual;
        if (scores.Items < 2) return new Refusal(RefusalKind.TooFewItems, "There is one item: nothing can be compared.");
        if (scores.Rows.IsEmpty) return new Refusal(RefusalKind.TooFewBallots, "No ballot compares two items.");
        var table = VoiceTable.Of(scores);
        var connected = table.Normal.Pieces().Length == 1;
        var general = new GeneralShuffles(
            table, table.Covariance.PseudoInverse(), connected ? table.Normal.PseudoInverse() : null, scores.LowerIsBetter);
        var whole = table.IsComplete && table.Voices.All(voice => voice.Common.Length == table.Items) ? WholeBallots.Of(table) : null;
        var freedom = scores.Items - table.Covariance.Pieces().Length;
        var chiSquare = Tails.ChiSquare(general.Statistic, freedom);
        if (freedom == 0)
            return new GateResult(0, PValue.Exact(1), 1, 0, table.Count, scores.Ballots, connected ? PValue.Exact(1) : null);
        var packed = whole is null ? null : PackedShuffles.For(whole, scores.LowerIsBetter);
        var most = effort.LargestDrawWork / table.Count / (packed is null ? GeneralCost : 1);
        var draws = (int)Math.Min(effort.Draws, most);
        if (draws < Math.Min(FewestDraws, effort.Draws))
        {
            return new GateResult(
                general.Statistic, new PValue(chiSquare, TestMethod.ChiSquare), chiSquare, freedom, table.Count, scores.Ballots, null);
        }

        Hits Drawn(int count, string stream) =>
            DrawParts.Run(count, seed.Child(stream), (n, generator) => packed?.Draw(n, generator) ?? general.Draw(n, generator));

        var first = Drawn(draws, "shuffles");
        var lead = connected ? PValue.Drawn(first.Lead, draws) : null;
        PValue p;
        if (whole is not null && ShuffleConvolution.Work(whole) <= effort.ExactWork)
        {
            p = PValue.Exact(ShuffleConvolution.UpperTail(whole));
        }
        else if (general.Combinations <= Math.Min(LargestWalk, effort.ExactWork))
        {
            p = PValue.Exact(general.UpperTail());
        }
        else
        {
            p = PValue.Drawn(first.Statistic, draws);
            if ((IsClose(p, 0.05) || IsClose(p, 0.20)) && effort.CloseDraws <= most)
            {
                var more = Drawn(effort.CloseDraws, "more shuffles");
                p = PValue.Drawn(more.Statistic, effort.CloseDraws);
                lead = connected ? PValue.Drawn(more.Lead, effort.CloseDraws) : null;
            }
        }

        return new GateResult(general.Statistic, p, chiSquare, freedom, table.Count, scores.Ballots, lead);
    }

    private static bool IsClose(PValue p, double threshold) => Math.Abs(p.Value - threshold) <= 3 * p.Error;
}
