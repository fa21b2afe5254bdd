using System.Collections.Immutable;
using System.Numerics;
using System.Runtime.InteropServices;
using Trier.Statistics.Randomness;

namespace Trier.Statistics.Designs;

/// <summary>
/// Balanced incomplete blocks: every item in r blocks, every pair together in lambda. The smallest numbers that the counting conditions allow, r(m-1) = lambda(v-1), bm = vr, b >= v (Fisher),
/// are tried first. Blocks are sought as whole orbits under a rotation of the items, in which the number of times each orbit of pairs is covered must come out at lambda; blocks larger than half are
/// complements. Sources: conditions and Fisher's inequality [Fisher1940]; orbits [KramerMesner1976].
/// </summary>
public static class BalancedBlocks
{
    /// <summary>The largest number of items treated.</summary>
    public const int LargestItems = 12;

    // Where there are many solutions a short search in another order finds one sooner than a long search in one.
    private const long Patience = 20_000;
    private const int Searches = 12;

    /// <summary>The smallest balanced design.</summary>
    /// <param name="items">v, 3 to 12.</param>
    /// <param name="blockSize">m, from 2 to v - 1.</param>
    /// <returns>Always a design: all subsets where nothing smaller was found. Refused beyond 12 items.</returns>
    public static Answer<BlockDesign> Smallest(int items, int blockSize)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(items, 3);
        ArgumentOutOfRangeException.ThrowIfLessThan(blockSize, 2);
        ArgumentOutOfRangeException.ThrowIfGreaterThanOrEqual(blockSize, items);
        if (items > LargestItems) return new Refusal(RefusalKind.TooManyItems, $"Balanced blocks are known here for up to {LargestItems} items.");

        // The complement of a balanced design is one, with as many blocks; a block of one item has no pairs, so v - 1 of v is built directly.
        var turned = blockSize * 2 > items && blockSize < items - 1;
        var size = turned ? items - blockSize : blockSize;
        var blocks = Masks(items, size);
        return BlockDesign.Create(items, blocks.Select(mask => Members(turned ? ~mask & ((1 << items) - 1) : mask, items)));
    }

    private static List<int> Masks(int items, int size)
    {
        var all = Enumerable.Range(0, 1 << items).Where(mask => BitOperations.PopCount((uint)mask) == size).ToList();
        var pairs = items * (items - 1);
        for (var lambda = 1; ; lambda++)
        {
            if (lambda * (items - 1) % (size - 1) != 0) continue;
            var replicates = lambda * (items - 1) / (size - 1);
            if (items * replicates % size != 0) continue;
            var blocks = items * replicates / size;
            if (blocks < items) continue;
            if (blocks >= all.Count) return all;
            foreach (var rotation in Rotations(items))
            {
                var search = new OrbitSearch(items, all, rotation, lambda);
                for (var i = 0; i < Searches; i++)
                {
                    if (search.Find(Patience, new Seed(0).Child(i).Generator()) is { } found) return found;
                }
            }
        }
    }

    /// <summary>Rotations of all items, of all but one, of halves, of halves of all but one, and of thirds.</summary>
    private static IEnumerable<int[]> Rotations(int items)
    {
        foreach (var cycles in new[] { 1, 2, 3 })
        {
            foreach (var still in new[] { 0, 1 })
            {
                var length = (items - still) / cycles;
                if (length < 2 || length * cycles != items - still) continue;
                yield return [.. Enumerable.Range(0, items).Select(i => i >= items - still ? i : (i / length * length) + ((i + 1) % length))];
            }
        }
    }

    private static IEnumerable<int> Members(int mask, int items) => Enumerable.Range(0, items).Where(i => (mask >> i & 1) == 1);
}

/// <summary>Chooses orbits of blocks so that every pair is covered lambda times, by trying in a shuffled order with a bound on the tries.</summary>
internal sealed class OrbitSearch
{
    private readonly int _lambda;
    private readonly List<(List<int> Blocks, int[] Covers)> _orbits = [];
    private readonly int[] _left;
    private readonly List<int> _chosen = [];
    private long _patience;

    public OrbitSearch(int items, List<int> blocks, int[] rotation, int lambda)
    {
        _lambda = lambda;
        var pairOf = PairOrbits(items, rotation, out var sizes);
        var seen = new HashSet<int>();
        foreach (var start in blocks)
        {
            if (!seen.Add(start)) continue;
            var orbit = new List<int> { start };
            for (var next = Turn(start, rotation); next != start; next = Turn(next, rotation))
            {
                seen.Add(next);
                orbit.Add(next);
            }

            // Times that all blocks of the orbit together cover each single pair of a pair orbit.
            var covers = new int[sizes.Count];
            foreach (var block in orbit)
            {
                for (var i = 0; i < items; i++)
                {
                    for (var j = 0; j < i; j++)
                    {
                        if ((block >> i & 1) == 1 && (block >> j & 1) == 1) covers[pairOf[i, j]]++;
                    }
                }
            }

            for (var p = 0; p < covers.Length; p++) covers[p] /= sizes[p];
            if (covers.All(c => c <= lambda)) _orbits.Add((orbit, covers));
        }

        _left = new int[sizes.Count];
    }

    public List<int>? Find(long patience, Generator generator)
    {
        _patience = patience;
        _chosen.Clear();
        Array.Fill(_left, _lambda);
        generator.Shuffle(CollectionsMarshal.AsSpan(_orbits));
        return Choose(0) ? [.. _chosen.SelectMany(o => _orbits[o].Blocks)] : null;
    }

    private bool Choose(int from)
    {
        if (_left.All(left => left == 0)) return true;
        for (var o = from; o < _orbits.Count; o++)
        {
            if (--_patience < 0) return false;
            var covers = _orbits[o].Covers;
            if (!Fits(covers)) continue;
            for (var p = 0; p < covers.Length; p++) _left[p] -= covers[p];
            _chosen.Add(o);
            if (Choose(o + 1)) return true;
            _chosen.RemoveAt(_chosen.Count - 1);
            for (var p = 0; p < covers.Length; p++) _left[p] += covers[p];
        }

        return false;
    }

    private bool Fits(int[] covers)
    {
        for (var p = 0; p < covers.Length; p++)
        {
            if (covers[p] > _left[p]) return false;
        }

        return true;
    }

    private static int Turn(int block, int[] rotation)
    {
        var turned = 0;
        for (var i = 0; i < rotation.Length; i++)
        {
            if ((block >> i & 1) == 1) turned |= 1 << rotation[i];
        }

        return turned;
    }

    private static int[,] PairOrbits(int items, int[] rotation, out List<int> sizes)
    {
        var orbit = new int[items, items];
        sizes = [];
        for (var i = 0; i < items; i++)
        {
            for (var j = 0; j < i; j++)
            {
                if (orbit[i, j] != 0) continue;
                var size = 0;
                for (var (a, b) = (i, j); orbit[a, b] == 0; (a, b) = (rotation[a], rotation[b]))
                {
                    orbit[a, b] = orbit[b, a] = sizes.Count + 1;
                    size++;
                }

                sizes.Add(size);
            }
        }

        for (var i = 0; i < items; i++)
        {
            for (var j = 0; j < items; j++) orbit[i, j]--;
        }

        return orbit;
    }
}
