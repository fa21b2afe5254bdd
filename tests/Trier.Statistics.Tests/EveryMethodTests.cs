using System.Collections;
using System.Collections.Immutable;
using System.Reflection;
using CsCheck;
using Trier.Statistics.Agreement;
using Trier.Statistics.ChoiceModels;
using Trier.Statistics.Counting;
using Trier.Statistics.Influence;
using Trier.Statistics.Randomness;
using Trier.Statistics.Rankings;
using Trier.Statistics.RankTests;
using Trier.Statistics.Ratings;

namespace Trier.Statistics.Tests;

/// <summary>What holds for every method, on ballots of any shape: one item, no ballot, nothing but ties, pieces that nothing joins, unanimity.</summary>
public sealed class EveryMethodTests
{
    private static readonly Seed Seed = new(61);
    private static readonly Effort Few = Effort.Usual with { ExactWork = 1e5, Draws = 200, CloseDraws = 200 };

    /// <summary>Places 1 to 4 or none, counts 1 to 3, some ballots joined.</summary>
    private static readonly Gen<RankingSet> AnyBallots =
        from items in Gen.Int[1, 5]
        from places in Gen.Int[0, 4].Array[items].Array[0, 7]
        from counts in Gen.Int[1, 3].Array[places.Length]
        from joined in Gen.Bool
        select RankingSet.Create(items, places.Select((row, r) => new RankingRow(
            Ranking.FromPlaces([.. row.Select(place => place == 0 ? (double?)null : place)]), joined && r < 2 ? 1 : counts[r], joined && r < 2 ? 9 : null)));

    private static readonly Gen<RankingSet> CompleteBallots =
        from items in Gen.Int[2, 5]
        from places in Gen.Int[1, 4].Array[items].Array[1, 7]
        select RankingSet.Create(items, places.Select(row => new RankingRow(Ranking.FromPlaces([.. row.Select(place => (double?)place)]))));

    [Fact]
    public void Nothing_is_not_a_number_and_every_refusal_is_one_sentence() =>
        AnyBallots.Sample(
            set =>
            {
                var last = "";
                try
                {
                    foreach (var (name, answer) in Answers(set)) Walk(last = name, answer);
                }
                catch (Exception e) when (e is not Xunit.Sdk.XunitException)
                {
                    Assert.Fail($"After {last}: {e}");
                }
            },
            iter: 120, threads: 1);

    [Fact]
    public void Relabelling_items_changes_nothing_but_labels() =>
        (from set in CompleteBallots from keys in Gen.Double[0, 1].Array[5] select (set, keys)).Sample(
            sample =>
            {
                var (set, keys) = sample;
                int[] turn = [.. Enumerable.Range(0, set.Items).OrderBy(i => keys[i])];
                var turned = set.Restrict(turn);
                var (a, b) = (Friedman.Test(set, Seed, Few), Friedman.Test(turned, Seed, Few));
                Assert.Equal(a.Stands, b.Stands);
                if (a.Stands)
                {
                    Assert.Equal(a.Value.Statistic, b.Value.Statistic, 1e-9);
                    if (a.Value.P.Method == TestMethod.Exact) Assert.Equal(a.Value.P.Value, b.Value.P.Value, 1e-12);
                    Assert.Equal(turn.Select(i => a.Value.RankSums[i]), b.Value.RankSums);
                }

                var (c, d) = (PlackettLuce.Fit(set, ghosts: 0.1).Value, PlackettLuce.Fit(turned, ghosts: 0.1).Value);
                for (var i = 0; i < set.Items; i++) Assert.Equal(c.Worths[turn[i]], d.Worths[i], 1e-7);
                var (e, f) = (RankSumComparisons.Nemenyi(set), RankSumComparisons.Nemenyi(turned));
                Assert.Equal(e.Stands, f.Stands);
                if (e.Stands) Assert.Equal(e.Value.Pairs.Select(pair => pair.P).Order(), f.Value.Pairs.Select(pair => pair.P).Order());
                var (g, h) = (Kemeny.Optima(set).Value, Kemeny.Optima(turned).Value);
                Assert.Equal((g.Distance, g.Optima), (h.Distance, h.Optima));
            },
            iter: 200, threads: 1);

    [Fact]
    public void A_ballot_that_ties_everything_adds_no_evidence() =>
        CompleteBallots.Sample(
            set =>
            {
                var more = RankingSet.Create(set.Items, set.Rows.Add(new RankingRow(Ranking.FromPlaces([.. Enumerable.Repeat((double?)1, set.Items)]), 3)));
                var scores = (ScoreSet.FromRankings(set, CountingRule.AveragePlace), ScoreSet.FromRankings(more, CountingRule.AveragePlace));
                Assert.Equal(Pairs.Compare(scores.Item1, 1).Select(pair => pair.P), Pairs.Compare(scores.Item2, 1).Select(pair => pair.P));
                var (a, b) = (Gate.Test(set, Seed, Few).Value.P, Gate.Test(more, Seed, Few).Value.P);
                if (a.Method == TestMethod.Exact) Assert.Equal(a.Value, b.Value, 1e-12);
                var (c, d) = (LovedAndHated.Test(set, Seed, Few), LovedAndHated.Test(more, Seed, Few));
                if (c.Stands) Assert.Equal((c.Value.Measure, c.Value.P), (d.Value.Measure, d.Value.P));
                Assert.Equal(PlackettLuce.Fit(set, ghosts: 0.2).Value.LogWorths, PlackettLuce.Fit(more, ghosts: 0.2).Value.LogWorths);
                var (e, f) = (RankSumComparisons.SignsByHolm(set).Value, RankSumComparisons.SignsByHolm(more).Value);
                Assert.Equal(e.Pairs, f.Pairs);
            },
            iter: 200, threads: 1);

    /// <summary>Without ties the classical statistic is Friedman's; with ties only its corrected one is.</summary>
    [Fact]
    public void Skillings_and_Mack_on_complete_ballots_are_Friedman() =>
        CompleteBallots.Sample(
            set =>
            {
                if (Friedman.Test(set, Seed, Few) is not { Stands: true } friedman) return;
                var found = SkillingsMack.Test(set, Seed, Few).Value;
                Assert.Equal(friedman.Value.Uncorrected, found.Statistic, 1e-8);
                Assert.Equal(friedman.Value.Statistic, found.Gate.Statistic, 1e-8);
                Assert.Equal(friedman.Value.DegreesOfFreedom, found.DegreesOfFreedom);
            },
            iter: 100, threads: 1);

    [Fact]
    public void Kemenys_order_of_a_unanimous_profile_is_that_order() =>
        Gen.Shuffle(Enumerable.Range(0, 6).ToArray()).Sample(order =>
        {
            var kemeny = Kemeny.Optima(RankingSet.Create(6, [new RankingRow(Ranking.FromOrder(6, order), 5)])).Value;
            Assert.Equal(1, kemeny.Optima);
            Assert.Equal(order, kemeny.Orders[0]);
            Assert.Equal(0, kemeny.Distance);
        });

    /// <summary>Two-item ballots: Friedman's statistic is the sign test's without continuity correction.</summary>
    [Fact]
    public void Two_items_make_Friedman_a_sign_test()
    {
        for (var wins = 0; wins <= 9; wins++)
        {
            var rows = new[] { (wins, new[] { 0, 1 }), (9 - wins, new[] { 1, 0 }) }.Where(row => row.Item1 > 0).Select(row => new RankingRow(Ranking.FromOrder(2, row.Item2), row.Item1));
            var found = Friedman.Test(RankingSet.Create(2, rows), Seed).Value;
            Assert.Equal(Math.Pow((2 * wins) - 9, 2) / 9, found.Statistic, 1e-9);
            Assert.Equal(SignTest.TwoSided(wins, 9), found.P.Value, 1e-12);
        }
    }

    private static IEnumerable<(string Name, object Answer)> Answers(RankingSet set)
    {
        var short2 = new SamplingEffort(2, 20, 60);
        yield return ("gate", Gate.Test(set, Seed, Few));
        yield return ("friedman", Friedman.Test(set, Seed, Few));
        yield return ("skillings", SkillingsMack.Test(set, Seed, Few));
        yield return ("durbin", Durbin.Test(set, Seed, Few));
        yield return ("page", PageTrend.Test(set, [.. Enumerable.Range(0, set.Items)]));
        yield return ("conover", RankSumComparisons.Conover(set));
        yield return ("normal", RankSumComparisons.Normal(set));
        yield return ("nemenyi", RankSumComparisons.Nemenyi(set));
        yield return ("signs", RankSumComparisons.SignsByHolm(set));
        yield return ("plackett", PlackettLuce.Fit(set));
        yield return ("ghosts", PlackettLuce.Fit(set, ghosts: 0.1));
        yield return ("pairs", BradleyTerry.Fit(set));
        yield return ("pairs halved", BradleyTerry.Fit(set, TieModel.Halves, 0.1));
        yield return ("gibbs", GammaPlackettLuce.Sample(set, Seed, effort: short2));
        yield return ("slices", BayesianPlackettLuce.Sample(set, Seed, effort: short2));
        yield return ("classes", TwoClasses.Fit(set, Seed));
        yield return ("classes test", TwoClasses.Test(set, Seed, panels: 2));
        yield return ("kemeny", Kemeny.Optima(set));
        yield return ("loved", LovedAndHated.Test(set, Seed, Few));
        yield return ("camps", Camps.Test(set, [.. set.Rows.Select((_, r) => (int?)(r % 2))], Seed, Few));
        if (set.Items >= 2) yield return ("repeat", HiddenRepeat.Compare(set, 0, 1));
        var scores = ScoreSet.FromRankings(set, CountingRule.AveragePlace);
        yield return ("fewest", FewestBallots.Of(scores));
        yield return ("compare", Pairs.Compare(scores, 0.01));
        ImmutableArray<ServedPlate> plates =
            [.. set.Rows.Select((row, r) => new ServedPlate([.. row.Ranking.Served.OrderBy(item => ((item * 7) + r) % 5)], row.Ranking.Midranks()))];
        yield return ("order", ServingOrder.Test(set.Items, plates, Seed, Few));
        yield return ("sittings", Sittings.Test([.. set.Rows.Select(row => row.Ranking.Midranks())], [.. set.Rows.Select((_, r) => r % 2)], Seed, Few));
        var rows = set.Rows.SelectMany((row, r) => row.Ranking.Served.Select(item => new RatingRow([item == 0 ? 1 : 0, r], row.Ranking.DoubledMidranks()[item], row.Count)));
        var table = RatingTable.Create(rows);
        yield return ("odds", ProportionalOdds.Fit(table));
        yield return ("probit", ProportionalOdds.Fit(table, CumulativeLink.Probit));
        yield return ("no effect", RatingTests.NoEffect(table));
        yield return ("cuts", RatingTests.SameAtEveryCut(table, InformationKind.Expected));
        yield return ("wald", RatingTests.Wald(table, InformationKind.Observed));
    }

    /// <summary>Every number reached from an answer is one. Infinite are only the F of full agreement and what is not bounded by its own words.</summary>
    private static void Walk(string name, object? value, int depth = 0)
    {
        if (value is null || depth > 8) return;
        if (value is double number)
        {
            Assert.False(double.IsNaN(number), name);
            return;
        }

        if (value is Refusal refusal)
        {
            Assert.True(refusal.Sentence.Length > 10 && refusal.Sentence.EndsWith('.') && !refusal.Sentence.Contains(". ", StringComparison.Ordinal), $"{name}: {refusal.Sentence}");
            return;
        }

        var type = value.GetType();
        if (type.IsPrimitive || type.IsEnum || value is string) return;
        if (value is IEnumerable many)
        {
            if (type.IsGenericType && type.GetGenericTypeDefinition() == typeof(ImmutableArray<>) && (bool)type.GetProperty("IsDefault")!.GetValue(value)!)
            {
                Assert.Fail($"{name}: an array that is not there.");
            }

            foreach (var each in many) Walk(name, each, depth + 1);
            return;
        }

        if (type.IsGenericType && type.GetGenericTypeDefinition() == typeof(Answer<>))
        {
            var stands = (bool)type.GetProperty("Stands")!.GetValue(value)!;
            Walk(name, type.GetProperty(stands ? "Value" : "Refusal")!.GetValue(value), depth + 1);
            return;
        }

        foreach (var property in type.GetProperties(BindingFlags.Public | BindingFlags.Instance).Where(property => property.GetIndexParameters().Length == 0 && property.Name != "EqualityContract"))
            Walk($"{name}.{property.Name}", property.GetValue(value), depth + 1);
    }
}
