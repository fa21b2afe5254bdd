using System.Numerics;
using Trier.Statistics.Randomness;
using Trier.Statistics.Rankings;

namespace Trier.Statistics.ChoiceModels;

/// <summary>
/// Ballots by voice, as sets chosen from and ties above others, so that the likelihood of each voice and any weighing of the voices cost a few sums. A member of a joined voice weighs one over its size.
/// </summary>
internal sealed class VoicePanel
{
    private VoicePanel(int items, Part[] voices, StageSets sets, List<TiedChoice> ties)
    {
        Items = items;
        Voices = voices;
        Sets = sets;
        Ties = ties;
    }

    public int Items { get; }

    public Part[] Voices { get; }

    public StageSets Sets { get; }

    public List<TiedChoice> Ties { get; }

    /// <summary>Every voice's ballots of a set; voices that tie everything are left out.</summary>
    public static List<(Ranking[] Ballots, int Count)> Gather(RankingSet set)
    {
        var voices = new List<(Ranking[] Ballots, int Count)>();
        foreach (var group in set.Rows.Select((row, r) => (row, Key: row.Voice is { } voice ? (long)voice : -1L - r)).GroupBy(pair => pair.Key))
        {
            Ranking[] ballots = [.. group.Select(pair => pair.row.Ranking).Where(ranking => !ranking.IsAllTied)];
            if (ballots.Length > 0) voices.Add((ballots, (int)group.First().row.Count));
        }

        return voices;
    }

    public static VoicePanel Of(int items, IEnumerable<(Ranking[] Ballots, int Count)> voices)
    {
        var at = new Dictionary<uint, int>();
        var members = new List<int>();
        var starts = new List<int> { 0 };
        var ties = new List<TiedChoice>();
        var parts = new List<Part>();
        foreach (var (ballots, count) in voices)
        {
            var part = new Part(new double[items], [], [], count);
            foreach (var ballot in ballots)
            {
                var groups = ballot.Below.IsEmpty ? ballot.Groups : ballot.Groups.Add(ballot.Below);
                var left = 0u;
                foreach (var item in ballot.Served) left |= 1u << item;
                var weight = 1.0 / ballots.Length;
                for (var g = 0; g < groups.Length - 1; g++)
                {
                    var chosen = 0u;
                    foreach (var item in groups[g]) chosen |= 1u << item;
                    if (groups[g].Length > 1)
                    {
                        part.Ties.Add((ties.Count, weight));
                        ties.Add(new TiedChoice([.. groups[g]], Members(left & ~chosen), 0));
                    }
                    else
                    {
                        part.Chosen[groups[g][0]] += weight;
                        if (!at.TryGetValue(left, out var set))
                        {
                            at.Add(left, set = at.Count);
                            members.AddRange(Members(left));
                            starts.Add(members.Count);
                        }

                        part.Sets.Add((set, weight));
                    }

                    left &= ~chosen;
                }
            }

            parts.Add(part);
        }

        return new VoicePanel(items, [.. parts], new StageSets([.. members], [.. starts], new double[at.Count]), ties);
    }

    /// <summary>The same pattern of ties and items served, filled by one order a voice drawn with given worths.</summary>
    public static List<(Ranking[] Ballots, int Count)> Draw(List<(Ranking[] Ballots, int Count)> pattern, double[] worths, Generator generator)
    {
        var keys = new double[worths.Length];
        var drawn = new List<(Ranking[] Ballots, int Count)>();
        foreach (var (ballots, count) in pattern)
        {
            for (var copy = 0; copy < count; copy++)
            {
                for (var i = 0; i < keys.Length; i++) keys[i] = generator.NextExponential() / worths[i];
                drawn.Add(([.. ballots.Select(ballot => Filled(ballot, keys))], 1));
            }
        }

        return drawn;
    }

    /// <summary>Choices with room for the weights of one class.</summary>
    public ChoiceCounts Weighed() => new(
        Items, Voices.Length, new double[Items], Sets with { Counts = new double[Sets.Counts.Length] }, [], [.. Ties.Select(tie => new TiedChoice(tie.Group, tie.Rest, 0))], new Dominance(Items));

    private static Ranking Filled(Ranking ballot, double[] keys)
    {
        int[] order = [.. ballot.Served];
        Array.Sort(order, (a, b) => keys[a].CompareTo(keys[b]));
        var groups = new List<int[]>();
        var at = 0;
        foreach (var group in ballot.Groups)
        {
            groups.Add(order[at..(at + group.Length)]);
            at += group.Length;
        }

        return Ranking.Create(ballot.Items, groups, order[at..]);
    }

    private static int[] Members(uint set)
    {
        var members = new int[BitOperations.PopCount(set)];
        for (var i = 0; set != 0; set &= set - 1) members[i++] = BitOperations.TrailingZeroCount(set);
        return members;
    }

    /// <summary>One voice: what it chose, from which sets and over which ties, each with its weight.</summary>
    internal sealed record Part(double[] Chosen, List<(int Set, double Weight)> Sets, List<(int Tie, double Weight)> Ties, int Count);
}
