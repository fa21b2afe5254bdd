using System.Numerics;

namespace Trier.Statistics.Randomness;

/// <summary>
/// The xoshiro256** generator, its 256 bits of state filled from a <see cref="Seed"/> by SplitMix64. Period 2^256 - 1. Its
/// draws depend on nothing but the seed, so that a result can be made again after any upgrade. Not for secrets. One thread
/// at a time. Source: [BlackmanVigna2021].
/// </summary>
public sealed class Generator
{
    private ulong _a;
    private ulong _b;
    private ulong _c;
    private ulong _d;
    private double _spareNormal = double.NaN;

    /// <summary>A generator at the start of a seed's stream.</summary>
    /// <param name="seed">The seed.</param>
    public Generator(Seed seed)
    {
        unchecked
        {
            var z = seed.Value;
            _a = SplitMix64.Mix(z += SplitMix64.Step);
            _b = SplitMix64.Mix(z += SplitMix64.Step);
            _c = SplitMix64.Mix(z += SplitMix64.Step);
            _d = SplitMix64.Mix(z + SplitMix64.Step);
        }
    }

    internal Generator(ulong a, ulong b, ulong c, ulong d) => (_a, _b, _c, _d) = (a, b, c, d);

    /// <summary>64 random bits.</summary>
    public ulong NextUInt64()
    {
        unchecked
        {
            var result = BitOperations.RotateLeft(_b * 5, 7) * 9;
            var t = _b << 17;
            _c ^= _a;
            _d ^= _b;
            _b ^= _c;
            _a ^= _d;
            _c ^= t;
            _d = BitOperations.RotateLeft(_d, 45);
            return result;
        }
    }

    /// <summary>A whole number from 0 to <paramref name="bound"/> - 1, each equally likely. Source: [Lemire2019].</summary>
    /// <param name="bound">At least 1.</param>
    public int NextInt(int bound)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(bound, 1);
        return (int)NextBelow((uint)bound);
    }

    /// <summary>A number from 0 inclusive to 1 exclusive, a multiple of 2^-53.</summary>
    public double NextDouble() => (NextUInt64() >> 11) * (1.0 / (1UL << 53));

    /// <summary>A number from 0 exclusive to 1 exclusive.</summary>
    public double NextOpenDouble() => ((NextUInt64() >> 12) + 0.5) * (1.0 / (1UL << 52));

    /// <summary>A standard exponential number, by inversion.</summary>
    public double NextExponential() => -Math.Log(NextOpenDouble());

    /// <summary>A standard normal number, by Marsaglia's polar method. Source: [MarsagliaBray1964].</summary>
    public double NextNormal()
    {
        if (!double.IsNaN(_spareNormal))
        {
            var spare = _spareNormal;
            _spareNormal = double.NaN;
            return spare;
        }

        while (true)
        {
            var u = (2 * NextDouble()) - 1;
            var v = (2 * NextDouble()) - 1;
            var s = (u * u) + (v * v);
            if (s is >= 1 or 0) continue;
            var factor = Math.Sqrt(-2 * Math.Log(s) / s);
            _spareNormal = v * factor;
            return u * factor;
        }
    }

    /// <summary>A gamma number with scale 1, by Marsaglia and Tsang's squeeze; below shape 1 by a power of a uniform. Source: [MarsagliaTsang2000].</summary>
    /// <param name="shape">Above 0.</param>
    public double NextGamma(double shape)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(shape);
        if (shape < 1) return NextGamma(shape + 1) * Math.Pow(NextOpenDouble(), 1 / shape);
        var d = shape - (1.0 / 3);
        var c = 1 / Math.Sqrt(9 * d);
        while (true)
        {
            var x = NextNormal();
            var v = 1 + (c * x);
            if (v <= 0) continue;
            v = v * v * v;
            var u = NextOpenDouble();
            if (u < 1 - (0.0331 * x * x * x * x) || Math.Log(u) < (0.5 * x * x) + (d * (1 - v + Math.Log(v)))) return d * v;
        }
    }

    /// <summary>Puts a span's elements into a random order, every order equally likely (Fisher and Yates).</summary>
    /// <typeparam name="T">Any type.</typeparam>
    /// <param name="span">The elements.</param>
    public void Shuffle<T>(Span<T> span)
    {
        for (var i = span.Length - 1; i > 0; i--)
        {
            var j = (int)NextBelow((uint)i + 1);
            (span[i], span[j]) = (span[j], span[i]);
        }
    }

    internal uint NextBelow(uint bound)
    {
        unchecked
        {
            var product = (NextUInt64() >> 32) * bound;
            if ((uint)product < bound)
            {
                var threshold = (0u - bound) % bound;
                while ((uint)product < threshold) product = (NextUInt64() >> 32) * bound;
            }

            return (uint)(product >> 32);
        }
    }
}
