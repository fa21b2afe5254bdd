namespace Trier.Statistics.Randomness;

/// <summary>
/// Where chance comes from: a number that fixes every draw made from it. Children are seeds of their own, so that parts of a
/// computation can be drawn in any order, or on several threads, with the same result.
/// </summary>
/// <param name="Value">Any 64 bits.</param>
public readonly record struct Seed(ulong Value)
{
    /// <summary>A generator at the start of this seed's stream.</summary>
    public Generator Generator() => new(this);

    /// <summary>The seed of part <paramref name="index"/> of a computation; different indices give unrelated streams.</summary>
    /// <param name="index">Any number, 0 or more by habit.</param>
    public Seed Child(long index)
    {
        unchecked
        {
            return new Seed(SplitMix64.Mix(SplitMix64.Mix(Value + SplitMix64.Step) ^ ((ulong)index * 0xD1342543DE82EF95UL)));
        }
    }

    /// <summary>The seed of a named part of a computation, such as "gate". The name is hashed by 64-bit FNV-1a over its UTF-16 units.</summary>
    /// <param name="name">Any text.</param>
    public Seed Child(string name)
    {
        ArgumentNullException.ThrowIfNull(name);
        unchecked
        {
            var hash = 14695981039346656037UL;
            foreach (var unit in name) hash = (hash ^ unit) * 1099511628211UL;
            return Child((long)hash);
        }
    }
}

/// <summary>The SplitMix64 sequence and its mixing function, used to spread a seed over a larger state. Source: [SteeleLeaFlood2014].</summary>
internal static class SplitMix64
{
    public const ulong Step = 0x9E3779B97F4A7C15UL;

    public static ulong Mix(ulong z)
    {
        unchecked
        {
            z = (z ^ (z >> 30)) * 0xBF58476D1CE4E5B9UL;
            z = (z ^ (z >> 27)) * 0x94D049BB133111EBUL;
            return z ^ (z >> 31);
        }
    }
}
