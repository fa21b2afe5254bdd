using Trier.Statistics.Randomness;
using Trier.Statistics.Rankings;

namespace Trier.Statistics.Power;

/// <summary>Draws ballots of a model.</summary>
internal sealed class PanelDraw
{
    private readonly PanelModel _model;
    private readonly OrderTable? _orders;
    private readonly AliasTable? _alias;
    private readonly Dictionary<ulong, int>? _numbers;
    private readonly Ranking[]? _rankings;

    public PanelDraw(PanelModel model)
    {
        _model = model;
        if (model.Items > OrderTable.LargestItems) return;
        _orders = new OrderTable(model.Items);
        var chances = new double[_orders.Count];
        foreach (var (worths, share) in model.Tastes)
        {
            var own = _orders.Chances(worths);
            for (var i = 0; i < chances.Length; i++) chances[i] += (1 - model.Noise) * share * own[i];
        }

        for (var i = 0; i < chances.Length; i++) chances[i] += model.Noise / chances.Length;
        _alias = new AliasTable(chances, [.. Enumerable.Range(0, _orders.Count).Select(order => (ulong)order)]);
        _rankings = [.. Enumerable.Range(0, _orders.Count).Select(order => Ranking.FromPlaces([.. _orders.PlacesOf(order).ToArray().Select(place => (double?)place + 1)]))];
        Packed = new AliasTable(chances, _orders.Packed);
        _numbers = _orders.Packed.Select((packed, order) => (packed, order)).ToDictionary(entry => entry.packed, entry => entry.order);
    }

    /// <summary>Draws packed places; null beyond the largest table.</summary>
    public AliasTable? Packed { get; }

    public OrderTable? Orders => _orders;

    /// <summary>The complete untied ballot of packed places.</summary>
    public Ranking RankingOf(ulong packed) => _rankings![_numbers![packed]];

    /// <summary>A whole panel.</summary>
    public RankingSet Panel(int ballots, Generator generator)
    {
        var rows = new List<RankingRow>(ballots);
        var k = _model.Items;
        for (var judge = 0; judge < ballots; judge++)
        {
            var pair = judge / 2;
            if (pair < _model.JoinedPairs && judge % 2 == 1)
            {
                rows[^1] = rows[^1] with { Voice = pair };
                rows.Add(rows[^1]);
                continue;
            }

            rows.Add(new RankingRow(Ballot(k, generator)));
        }

        return RankingSet.Create(k, rows);
    }

    private Ranking Ballot(int k, Generator generator)
    {
        if (_model.IsPlain && _alias is not null) return _rankings![_alias.Draw(generator)];
        var order = Order(k, generator);
        var kept = k;
        if (k > 2 && generator.NextDouble() < _model.PartialChance)
        {
            // Which items are left out must not depend on their places: a random set, kept in the judge's order.
            kept = 2 + generator.NextInt(k - 2);
            var stays = Enumerable.Range(0, k).ToArray();
            generator.Shuffle<int>(stays);
            var keep = stays.AsSpan(0, kept).ToArray();
            order = [.. order.Where(keep.Contains)];
        }

        var places = new double?[k];
        var place = 1;
        for (var i = 0; i < kept; i++)
        {
            if (i > 0 && !(_model.TieChance > 0 && generator.NextDouble() < _model.TieChance)) place++;
            places[order[i]] = place;
        }

        return Ranking.FromPlaces(places);
    }

    /// <summary>Items from best to worst.</summary>
    private int[] Order(int k, Generator generator)
    {
        var order = new int[k];
        if (_alias is not null)
        {
            var places = _orders!.PlacesOf((int)_alias.Draw(generator));
            for (var item = 0; item < k; item++) order[places[item]] = item;
            return order;
        }

        // An exponential race: item i arrives after a time of rate w(i), so that who comes next is chosen by worth.
        var noisy = generator.NextDouble() < _model.Noise;
        var pick = generator.NextDouble();
        var taste = _model.Tastes[^1];
        foreach (var candidate in _model.Tastes)
        {
            pick -= candidate.Share;
            if (pick >= 0) continue;
            taste = candidate;
            break;
        }

        var times = new double[k];
        for (var i = 0; i < k; i++)
        {
            order[i] = i;
            times[i] = generator.NextExponential() / (noisy ? 1 : taste.Worths[i]);
        }

        Array.Sort(times, order);
        return order;
    }
}
