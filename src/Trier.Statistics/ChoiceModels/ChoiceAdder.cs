using System.Numerics;
using Trier.Statistics.Rankings;

namespace Trier.Statistics.ChoiceModels;

/// <summary>Adds choices up.</summary>
internal sealed class ChoiceAdder(int items)
{
    private readonly double[] _chosen = new double[items];
    private readonly double[]? _sets = items <= ChoiceCounts.MostCounted ? new double[1 << items] : null;
    private readonly List<KeptOrder> _orders = [];
    private readonly List<TiedChoice> _ties = [];
    private readonly Dominance _above = new(items);
    private double _ballots;

    public Refusal? Add(Ranking ranking, double count)
    {
        if (ranking.IsAllTied) return null;
        _ballots += count;
        var groups = ranking.Groups;
        var last = ranking.Below.IsEmpty ? groups.Length - 1 : groups.Length;
        var untied = true;
        for (var g = 0; g < last; g++)
        {
            if (groups[g].Length == 1) continue;
            untied = false;
            if (groups[g].Length > ChoiceCounts.LargestTie)
                return new Refusal(RefusalKind.TooManyItems, $"A ballot ties {groups[g].Length} items above others: at most {ChoiceCounts.LargestTie} can be summed over.");
        }

        var left = ranking.Served.Length;
        Span<int> order = left <= 128 ? stackalloc int[left] : new int[left];
        var at = 0;
        foreach (var group in groups)
        {
            foreach (var item in group) order[at++] = item;
        }

        foreach (var item in ranking.Below) order[at++] = item;
        if (untied && _sets is null)
        {
            for (var g = 0; g < last; g++) _chosen[order[g]] += count;
            _above.AddOrder(order, last);
            _orders.Add(new KeptOrder(order.ToArray(), last, count));
            return null;
        }

        if (untied)
        {
            AddStages(order, last, count);
            return null;
        }

        at = 0;
        for (var g = 0; g < last; g++)
        {
            var group = order.Slice(at, groups[g].Length);
            var rest = order[(at + group.Length)..];
            at += group.Length;
            _above.AddTie(group, rest);
            if (group.Length > 1) _ties.Add(new TiedChoice(group.ToArray(), rest.ToArray(), count));
            else AddOne(order[(at - 1)..], count);
        }

        return null;
    }

    /// <summary>Adds one order of all items; false, and nothing added, where it does not name each once.</summary>
    public bool AddWhole(ReadOnlySpan<int> order)
    {
        var mask = 0u;
        foreach (var item in order)
        {
            if ((uint)item >= (uint)items) return false;
            mask |= 1u << item;
        }

        if (mask != (1u << items) - 1) return false;
        _ballots++;
        AddStages(order, items - 1, 1);
        return true;
    }

    public void Take(ChoiceAdder other)
    {
        _ballots += other._ballots;
        for (var i = 0; i < _chosen.Length; i++) _chosen[i] += other._chosen[i];
        for (var set = 0; set < _sets!.Length; set++) _sets[set] += other._sets![set];
        _above.Take(other._above);
    }

    public ChoiceCounts Sum()
    {
        var members = new List<int>();
        var starts = new List<int> { 0 };
        var counts = new List<double>();
        for (var set = 0u; _sets is not null && set < _sets.Length; set++)
        {
            if (_sets[set] == 0) continue;
            for (var left = set; left != 0; left &= left - 1) members.Add(BitOperations.TrailingZeroCount(left));
            starts.Add(members.Count);
            counts.Add(_sets[set]);
        }

        return new ChoiceCounts(items, _ballots, _chosen, new StageSets([.. members], [.. starts], [.. counts]), _orders, _ties, _above);
    }

    private void AddStages(ReadOnlySpan<int> order, int stages, double count)
    {
        var mask = 0u;
        for (var place = order.Length - 1; place >= 0; place--)
        {
            var item = order[place];
            if (place < stages)
            {
                _chosen[item] += count;
                _above.AddMask(item, mask);
                mask |= 1u << item;
                _sets![mask] += count;
            }
            else
            {
                mask |= 1u << item;
            }
        }
    }

    private void AddOne(ReadOnlySpan<int> chosenThenRest, double count)
    {
        _chosen[chosenThenRest[0]] += count;
        if (_sets is null)
        {
            _orders.Add(new KeptOrder(chosenThenRest.ToArray(), 1, count));
            return;
        }

        var mask = 0u;
        foreach (var item in chosenThenRest) mask |= 1u << item;
        _sets[mask] += count;
    }
}
