using System.Collections.Immutable;
using Trier.Statistics.Counting;
using Trier.Statistics.Randomness;
using Trier.Statistics.Rankings;
using Trier.Statistics.RankTests;

namespace Trier.Statistics.Power;

/// <summary>What panels of one size would conclude. Every share with its Monte Carlo error.</summary>
/// <param name="Voices">How many judges; joined pairs count two here.</param>
/// <param name="Panels">How many panels were drawn.</param>
/// <param name="Levels">Per level of <see cref="EvidenceLevel"/>, 0 to 6, the share that ends there; 0 where nothing could be tested.</param>
/// <param name="LeaderRight">The leader, alone, is the crowd's favourite (lowest true average place; any of several that are equally good).</param>
/// <param name="ShownRight">Level 5 or 6 with the crowd's favourite as leader.</param>
/// <param name="ShownWrong">Level 5 or 6 with another leader.</param>
/// <param name="AnyShown">Level 4 or more.</param>
/// <param name="FalsePair">Some pair is stated whose true average places are equal or the other way round.</param>
/// <param name="FalseAll">Level 6, although some other item is as good.</param>
/// <param name="Gate">How the gate's p was found.</param>
public sealed record PanelOutcome(
    int Voices, int Panels, ImmutableArray<Simulated> Levels, Simulated LeaderRight, Simulated ShownRight, Simulated ShownWrong, Simulated AnyShown,
    Simulated FalsePair, Simulated FalseAll, TestMethod Gate)
{
    /// <summary>Of the panels that end at a level, the share whose leader is the crowd's favourite; null where none ends there or leads are shared.</summary>
    public required ImmutableArray<Simulated?> RightAtLevel { get; init; }
}

/// <summary>
/// What a panel of a size is good for, by simulation: panels are drawn from a stated model and each is put through the rule of a verdict: gate, sign-flip tests, Shaffer's steps, level. The ratio just observed must not be put
/// into the model: it is seen too large. On plain ballots by average place the gate's p is looked up in the null distribution, exact where that can be counted; otherwise it is exact where the work is small, and from 999 shuffles
/// a panel where not.
/// </summary>
public static class PanelPower
{
    /// <summary>The usual number of panels: an error of at most 1.1 points.</summary>
    public const int UsualPanels = 2000;

    private const int Parts = 32;

    // A shuffle test keeps its size whatever the number of shuffles; 999 cost a little power against 99,999.
    private static readonly Effort Quick = new(1e6, 999, 999, double.MaxValue);
    private const double Equal = 1e-9;

    /// <summary>Simulates panels of one size.</summary>
    /// <param name="model">Where the ballots come from; 2 items or more.</param>
    /// <param name="voices">Judges, at least 2.</param>
    /// <param name="seed">Fixes every draw.</param>
    /// <param name="panels">How many panels, at least 1.</param>
    /// <param name="rule">The planned rule; average place if null.</param>
    /// <param name="threads">The most threads at once; null for all processors. Changes no result.</param>
    public static PanelOutcome Simulate(PanelModel model, int voices, Seed seed, int panels = UsualPanels, CountingRule? rule = null, int? threads = null)
    {
        ArgumentNullException.ThrowIfNull(model);
        ArgumentOutOfRangeException.ThrowIfLessThan(voices, 2);
        ArgumentOutOfRangeException.ThrowIfLessThan(panels, 1);
        rule ??= CountingRule.AveragePlace;
        var plain = model.IsPlain && rule == CountingRule.AveragePlace && model.Items <= OrderTable.LargestItems;
        return Simulate(model, voices, seed, panels, rule, threads, plain ? UntiedNull.Of(model.Items, voices, seed.Child("null")) : null, Quick);
    }

    /// <summary>Simulates panels of one size from several crowds, each from its own stream; the null distribution is found once for all.</summary>
    /// <param name="crowds">Models about the same number of items, each with what fixes its draws.</param>
    /// <param name="voices">Judges, at least 2.</param>
    /// <param name="seed">Fixes the null distribution where it has to be drawn.</param>
    /// <param name="panels">Panels a crowd, at least 1.</param>
    /// <param name="rule">The planned rule; average place if null.</param>
    /// <exception cref="ArgumentException">The models are about different numbers of items.</exception>
    public static ImmutableArray<PanelOutcome> Simulate(ImmutableArray<(PanelModel Model, Seed Seed)> crowds, int voices, Seed seed, int panels = UsualPanels, CountingRule? rule = null)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(voices, 2);
        ArgumentOutOfRangeException.ThrowIfLessThan(panels, 1);
        if (crowds.IsDefaultOrEmpty) return [];
        var items = crowds[0].Model.Items;
        if (crowds.Any(crowd => crowd.Model.Items != items)) throw new ArgumentException("The models are about different numbers of items.", nameof(crowds));
        rule ??= CountingRule.AveragePlace;
        bool Plain(PanelModel model) => model.IsPlain && rule == CountingRule.AveragePlace && items <= OrderTable.LargestItems;
        var table = crowds.Any(crowd => Plain(crowd.Model)) ? UntiedNull.Of(items, voices, seed) : null;
        return [.. crowds.Select(crowd => Simulate(crowd.Model, voices, crowd.Seed, panels, rule, null, Plain(crowd.Model) ? table : null, Quick))];
    }

    /// <summary>Simulates panels of several sizes, each from its own stream.</summary>
    /// <param name="model">Where the ballots come from.</param>
    /// <param name="sizes">The sizes.</param>
    /// <param name="seed">Fixes every draw.</param>
    /// <param name="panels">Panels a size.</param>
    /// <param name="rule">The planned rule; average place if null.</param>
    public static ImmutableArray<PanelOutcome> Curve(PanelModel model, IEnumerable<int> sizes, Seed seed, int panels = UsualPanels, CountingRule? rule = null)
    {
        ArgumentNullException.ThrowIfNull(sizes);
        return [.. sizes.Select(size => Simulate(model, size, seed.Child(size), panels, rule))];
    }

    /// <summary>
    /// The smallest preference that such a panel shows with a stated chance: the ratio t of one favourite among equals at which "shown over some or all" is reached, found by halving on a common
    /// stream of draws; so its error is that of the share, about (panels)^-1/2, over the slope.
    /// </summary>
    /// <param name="items">2 to 7.</param>
    /// <param name="voices">At least 2.</param>
    /// <param name="seed">Fixes every draw.</param>
    /// <param name="chance">Wanted, such as 0.8.</param>
    /// <param name="panels">Panels a step.</param>
    /// <returns>Refused where even a preference of 1,000 to 1 is not shown so often.</returns>
    public static Answer<double> SmallestPreference(int items, int voices, Seed seed, double chance = 0.8, int panels = UsualPanels)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(items, 2);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(items, OrderTable.LargestItems);
        var table = UntiedNull.Of(items, voices, seed.Child("null"));
        double Shown(double ratio) => Simulate(PanelModel.Favourite(items, ratio), voices, seed, panels, CountingRule.AveragePlace, null, table, Quick).ShownRight.Share;
        double low = 0, high = Math.Log(1000);
        if (Shown(Math.Exp(high)) < chance)
            return new Refusal(RefusalKind.TooFewBallots, $"With {voices} voices not even a preference of all would be shown so often.");
        while (high - low > 0.02)
        {
            var middle = (low + high) / 2;
            if (Shown(Math.Exp(middle)) >= chance) high = middle;
            else low = middle;
        }

        return Math.Exp((low + high) / 2);
    }

    internal static PanelOutcome Simulate(PanelModel model, int voices, Seed seed, int panels, CountingRule rule, int? threads, UntiedNull? table, Effort effort)
    {
        var draw = new PanelDraw(model);
        var truth = model.AveragePlaces();
        var parts = Streams.Run(
            Parts,
            seed.Child("panels"),
            (i, generator) =>
            {
                var counts = new Counts(truth);
                for (var panel = Streams.Share(panels, Parts, i); panel > 0; panel--)
                {
                    if (table is null) Judge(draw.Panel(voices, generator), rule, effort, new Seed(generator.NextUInt64()), counts);
                    else JudgePlain(draw, voices, table, generator, counts);
                }

                return counts;
            },
            threads);
        var all = new Counts(truth);
        foreach (var part in parts) all.Add(part);
        return all.Outcome(voices, panels, table is { IsExact: true } ? TestMethod.Exact : TestMethod.Permutation);
    }

    private static void Judge(RankingSet set, CountingRule rule, Effort effort, Seed seed, Counts counts)
    {
        var scores = ScoreSet.FromRankings(set, rule);
        var standing = Standing.Of(scores);
        if (scores.Rows.IsEmpty || !standing.IsConnected)
        {
            counts.Nothing();
            return;
        }

        var two = scores.Items == 2;
        var p = two ? 1 : Gate.Test(scores, seed, effort).Value.P.Value;
        var pairs = two || p <= Pairs.Level ? Pairs.Compare(scores, p) : [];
        counts.Add(two ? pairs[0].P : p, standing.Leaders, pairs);
    }

    private static void JudgePlain(PanelDraw draw, int voices, UntiedNull table, Generator generator, Counts counts)
    {
        var orders = draw.Orders!;
        var k = orders.Items;
        Span<long> totals = stackalloc long[k];
        Span<ulong> ballots = voices <= 512 ? stackalloc ulong[voices] : new ulong[voices];
        for (var judge = 0; judge < voices; judge++)
        {
            ballots[judge] = draw.Packed!.Draw(generator);
            for (var i = 0; i < k; i++) totals[i] += (long)(ballots[judge] >> (i * orders.LaneBits) & ((1UL << orders.LaneBits) - 1));
        }

        var squares = 0L;
        var least = long.MaxValue;
        foreach (var total in totals)
        {
            squares += total * total;
            least = Math.Min(least, total);
        }

        var leaders = ImmutableArray.CreateBuilder<int>();
        for (var i = 0; i < k; i++)
        {
            if (totals[i] == least) leaders.Add(i);
        }

        var p = table.P(squares);
        if (k > 2 && p > Pairs.Level)
        {
            counts.Add(p, leaders.DrainToImmutable(), []);
            return;
        }

        var rows = new List<RankingRow>(voices);
        foreach (var ballot in ballots) rows.Add(new RankingRow(draw.RankingOf(ballot)));
        var pairs = Pairs.Compare(ScoreSet.FromRankings(RankingSet.Create(k, rows), CountingRule.AveragePlace), p);
        counts.Add(k == 2 ? pairs[0].P : p, leaders.DrainToImmutable(), pairs);
    }

    /// <summary>Conclusions counted.</summary>
    private sealed class Counts(ImmutableArray<double> truth)
    {
        private readonly long[] _levels = new long[7];
        private readonly long[] _right = new long[7];
        private readonly double _best = truth.Min();
        private readonly bool _alone = truth.Count(place => place - truth.Min() <= Equal) == 1;
        private long _wrong;
        private long _shownRight;
        private long _falsePair;
        private long _falseAll;

        public void Nothing() => _levels[0]++;

        public void Add(double p, ImmutableArray<int> leaders, ImmutableArray<PairResult> pairs)
        {
            var (level, _) = EvidenceLevel.Of(p, leaders, pairs);
            _levels[level]++;
            var right = leaders.Length == 1 && truth[leaders[0]] - _best <= Equal;
            if (right) _right[level]++;
            if (level >= 5 && right) _shownRight++;
            if (level >= 5 && !right) _wrong++;
            if (level == 6 && !(right && _alone)) _falseAll++;
            if (pairs.Any(pair => pair.Shown && truth[pair.Better] >= truth[pair.Worse] - Equal)) _falsePair++;
        }

        public void Add(Counts other)
        {
            for (var level = 0; level < _levels.Length; level++)
            {
                _levels[level] += other._levels[level];
                _right[level] += other._right[level];
            }

            _wrong += other._wrong;
            _shownRight += other._shownRight;
            _falsePair += other._falsePair;
            _falseAll += other._falseAll;
        }

        public PanelOutcome Outcome(int voices, int panels, TestMethod gate) => new(
            voices, panels, [.. _levels.Select(hits => Simulated.Of(hits, panels))], Simulated.Of(_right.Sum(), panels), Simulated.Of(_shownRight, panels),
            Simulated.Of(_wrong, panels), Simulated.Of(_levels[4] + _levels[5] + _levels[6], panels), Simulated.Of(_falsePair, panels), Simulated.Of(_falseAll, panels), gate)
        {
            RightAtLevel = [.. _levels.Select((hits, level) => hits == 0 || level < 2 ? null : Simulated.Of(_right[level], hits))],
        };
    }
}
