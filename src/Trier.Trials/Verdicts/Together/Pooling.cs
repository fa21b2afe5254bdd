using System.Collections.Immutable;
using Trier.Statistics.ChoiceModels;
using Trier.Statistics.Rankings;
using Trier.Trials.Common;

namespace Trier.Trials.Verdicts.Together;

/// <summary>
/// All ballots of several tastings over all wheels as served. One person, told by name, is one voice over all of them; whoever compared notes with somebody is one voice with them. Those who knew the key, and juniors where a plan leaves them apart, stay out.
/// </summary>
internal sealed record Pooling(ImmutableArray<string> Recipes, ImmutableArray<(WheelId Id, string Name)> Wheels, ImmutableArray<Served> Items, RankingSet Ballots, int People)
{
    public static Pooling Of(IReadOnlyList<HeldTasting> held)
    {
        var recipes = new List<string>();
        var wheels = new List<(WheelId Id, string Name)>();
        var items = new List<Served>();
        var at = new Dictionary<(TrialId, string), int>();
        var makes = new Dictionary<(int, DateOnly), int>();
        foreach (var tasting in held)
        {
            foreach (var sample in tasting.Record.Samples.Where(sample => sample.RepeatOf is null).OrderBy(sample => sample.Id, StringComparer.Ordinal))
            {
                var entry = tasting.Entries.First(entry => entry.Label == sample.Id);
                // A wheel keeps the recipe it first came up with, so that a corrected name does not make two of it.
                var known = wheels.FindIndex(wheel => wheel.Id == entry.Wheel);
                var recipe = known >= 0 ? items.First(item => item.Wheel == known).Recipe : At(recipes, entry.Facts.Recipe ?? entry.Name);
                if (known < 0)
                {
                    known = wheels.Count;
                    wheels.Add((entry.Wheel, entry.Name));
                }

                at[(tasting.Trial, sample.Id)] = items.Count;
                // Wheels of one recipe and one day are taken to be of one vat.
                int? make = entry.Facts.MadeOn is { } day ? makes.TryGetValue((recipe, day), out var found) ? found : makes[(recipe, day)] = makes.Count : null;
                items.Add(new(recipe, known, tasting.AgeOf(entry)) { Make = make });
            }
        }

        var voters = held.SelectMany(tasting => tasting.Record.Voters.Where(voter => voter.Role == VoterRole.Guest && (tasting.Record.Plan.JuniorsCount || !voter.Marks.HasFlag(VoterMarks.Junior))).Select(voter => (tasting.Trial, Voter: voter))).ToList();
        var voices = Voices(voters);
        var rows = new List<RankingRow>();
        foreach (var ((trial, voter), i) in voters.Select((voter, i) => (voter, i)))
        {
            int[] Kept(IEnumerable<string> ids) => [.. ids.Where(id => at.ContainsKey((trial, id))).Select(id => at[(trial, id)])];
            var groups = voter.Places.Select(group => Kept(group)).Where(group => group.Length > 0).ToList();
            var below = Kept(voter.Below);
            if (groups.Sum(group => group.Length) + below.Length < 2) continue;
            rows.Add(new RankingRow(Ranking.Create(Math.Max(1, items.Count), groups, below), 1, voices[i]));
        }

        return new([.. recipes], [.. wheels], [.. items], RankingSet.Create(Math.Max(1, items.Count), rows), rows.Select(row => row.Voice).Distinct().Count());
    }

    private static int At(List<string> names, string name)
    {
        var found = names.FindIndex(other => string.Equals(other, name, StringComparison.OrdinalIgnoreCase));
        if (found >= 0) return found;
        names.Add(name);
        return names.Count - 1;
    }

    /// <summary>One number a voice: joined by name over the tastings, and by compared notes within one.</summary>
    private static int[] Voices(List<(TrialId Trial, VoterRecord Voter)> voters)
    {
        var root = Enumerable.Range(0, voters.Count).ToArray();
        int Find(int i)
        {
            while (root[i] != i) i = root[i];
            return i;
        }

        void Join(IEnumerable<int> members)
        {
            var all = members.ToList();
            foreach (var other in all.Skip(1))
            {
                var (a, b) = (Find(all[0]), Find(other));
                root[Math.Max(a, b)] = Math.Min(a, b);
            }
        }

        var numbered = voters.Select((voter, i) => (voter.Trial, voter.Voter, Number: i)).ToList();
        foreach (var person in numbered.GroupBy(pair => pair.Voter.Name.Trim(), StringComparer.OrdinalIgnoreCase)) Join(person.Select(pair => pair.Number));
        foreach (var joined in numbered.Where(pair => pair.Voter.Voice is not null).GroupBy(pair => (pair.Trial, pair.Voter.Voice))) Join(joined.Select(pair => pair.Number));
        return [.. numbered.Select(pair => Find(pair.Number))];
    }
}
