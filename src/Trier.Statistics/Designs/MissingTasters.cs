using System.Collections.Immutable;
using System.Runtime.InteropServices;

namespace Trier.Statistics.Designs;

/// <summary>What is left of the balance when tasters stay away.</summary>
/// <param name="PositionSpread">The largest spread of position counts, whoever is missing.</param>
/// <param name="CarryOverSpread">The largest spread of neighbour counts, whoever is missing.</param>
[StructLayout(LayoutKind.Auto)]
public readonly record struct MissingTasters(int PositionSpread, int CarryOverSpread)
{
    /// <summary>Tries every choice of missing tasters.</summary>
    /// <param name="items">How many items, numbered from 0.</param>
    /// <param name="orders">One order per taster.</param>
    /// <param name="missing">How many stay away, 0 to 3 and fewer than there are orders.</param>
    /// <returns>The worst of all choices, position and neighbours each for itself.</returns>
    public static MissingTasters Worst(int items, ImmutableArray<ImmutableArray<int>> orders, int missing)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(missing);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(missing, 3);
        ArgumentOutOfRangeException.ThrowIfGreaterThanOrEqual(missing, orders.Length);
        var counts = new Counts(items, orders);
        var worst = new MissingTasters(0, 0);
        Without(counts, orders, 0, missing, ref worst);
        return worst;
    }

    private static void Without(Counts counts, ImmutableArray<ImmutableArray<int>> orders, int from, int missing, ref MissingTasters worst)
    {
        if (missing == 0)
        {
            worst = new MissingTasters(Math.Max(worst.PositionSpread, counts.PositionSpread), Math.Max(worst.CarryOverSpread, counts.CarryOverSpread));
            return;
        }

        for (var taster = from; taster <= orders.Length - missing; taster++)
        {
            counts.Add(orders[taster], -1);
            Without(counts, orders, taster + 1, missing - 1, ref worst);
            counts.Add(orders[taster], 1);
        }
    }

    private sealed class Counts
    {
        private readonly int _items;
        private readonly int _places;
        private readonly int[] _positions;
        private readonly int[] _follows;

        public Counts(int items, ImmutableArray<ImmutableArray<int>> orders)
        {
            _items = items;
            _places = orders.Max(order => order.Length);
            _positions = new int[items * _places];
            _follows = new int[items * items];
            foreach (var order in orders) Add(order, 1);
        }

        public int PositionSpread
        {
            get
            {
                int low = int.MaxValue, high = int.MinValue;
                foreach (var n in _positions) (low, high) = (Math.Min(low, n), Math.Max(high, n));
                return high - low;
            }
        }

        public int CarryOverSpread
        {
            get
            {
                int low = int.MaxValue, high = 0;
                for (var i = 0; i < _follows.Length; i++)
                {
                    if (i / _items != i % _items) (low, high) = (Math.Min(low, _follows[i]), Math.Max(high, _follows[i]));
                }

                return high - low;
            }
        }

        public void Add(ImmutableArray<int> order, int times)
        {
            for (var i = 0; i < order.Length; i++)
            {
                _positions[(order[i] * _places) + i] += times;
                if (i > 0) _follows[(order[i - 1] * _items) + order[i]] += times;
            }
        }
    }
}
