using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;

namespace Trier.Statistics.Randomness;

/// <summary>Four xoshiro256** streams side by side, their states filled from a generator: the same words on every processor, several times as fast where vectors of 256 bits are at hand. Source: [BlackmanVigna2021].</summary>
[StructLayout(LayoutKind.Auto)]
internal struct WideXoshiro
{
    private const int Lanes = 4;

    private Vector256<ulong> _a;
    private Vector256<ulong> _b;
    private Vector256<ulong> _c;
    private Vector256<ulong> _d;

    public WideXoshiro(Generator generator)
    {
        Span<ulong> words = stackalloc ulong[4 * Lanes];
        for (var i = 0; i < words.Length; i++) words[i] = generator.NextUInt64();

        // A state of nothing but zeros would stay there.
        for (var lane = 0; lane < Lanes; lane++)
        {
            if ((words[lane] | words[Lanes + lane] | words[(2 * Lanes) + lane] | words[(3 * Lanes) + lane]) == 0) words[lane] = 1;
        }

        _a = Vector256.Create<ulong>(words[..Lanes]);
        _b = Vector256.Create<ulong>(words[Lanes..]);
        _c = Vector256.Create<ulong>(words[(2 * Lanes)..]);
        _d = Vector256.Create<ulong>(words[(3 * Lanes)..]);
    }

    /// <summary>Fills a span, whose length is a multiple of 4, with random words.</summary>
    public void Fill(Span<ulong> words)
    {
        var (a, b, c, d) = (_a, _b, _c, _d);
        foreach (ref var four in MemoryMarshal.Cast<ulong, Vector256<ulong>>(words)) four = Step(ref a, ref b, ref c, ref d);
        (_a, _b, _c, _d) = (a, b, c, d);
    }

    /// <summary>
    /// Fills a span, whose length is a multiple of 8, with whole numbers below a bound, each equally likely: both halves of every word times the bound, the upper half of the product. Eight are drawn again where one of them falls among the
    /// words that would make some numbers likelier. Source: [Lemire2019].
    /// </summary>
    public void FillBelow(Span<uint> numbers, uint bound)
    {
        var (a, b, c, d) = (_a, _b, _c, _d);
        var threshold = Vector256.Create(unchecked((0u - bound) % bound));
        var factor = Vector256.Create((ulong)bound);
        var low = Vector256.Create(0xFFFFFFFFUL);
        foreach (ref var eight in MemoryMarshal.Cast<uint, Vector256<uint>>(numbers))
        {
            Vector256<ulong> even, odd;
            Vector256<uint> rest;
            do
            {
                var words = Step(ref a, ref b, ref c, ref d);
                even = Multiply(words & low, factor);
                odd = Multiply(words >>> 32, factor);
                rest = ((even & low) | (odd << 32)).AsUInt32();
            }
            while (Vector256.LessThanAny(rest, threshold));
            eight = ((even >>> 32) | (odd & ~low)).AsUInt32();
        }

        (_a, _b, _c, _d) = (a, b, c, d);
    }

    /// <summary>Products of numbers below 2^32; with the processor's own instruction where there is one.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static Vector256<ulong> Multiply(Vector256<ulong> x, Vector256<ulong> y) =>
        System.Runtime.Intrinsics.X86.Avx2.IsSupported ? System.Runtime.Intrinsics.X86.Avx2.Multiply(x.AsUInt32(), y.AsUInt32()) : x * y;

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static Vector256<ulong> Step(ref Vector256<ulong> a, ref Vector256<ulong> b, ref Vector256<ulong> c, ref Vector256<ulong> d)
    {
        // Times 5 and times 9 by shifts: there is no cheap product of 64 bits.
        var five = (b << 2) + b;
        var turned = (five << 7) | (five >>> 57);
        var result = (turned << 3) + turned;
        var t = b << 17;
        c ^= a;
        d ^= b;
        b ^= c;
        a ^= d;
        c ^= t;
        d = (d << 45) | (d >>> 19);
        return result;
    }
}
