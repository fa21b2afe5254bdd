namespace Trier.Statistics.Randomness;

/// <summary>
/// Random work in a fixed number of parts, each with a stream of its own split from one seed. A part's draws depend on the seed and its number alone, so that any number of threads, one included, gives
/// the same results bit for bit.
/// </summary>
public static class Streams
{
    /// <summary>Runs the parts and returns their results in order.</summary>
    /// <typeparam name="T">What a part gives.</typeparam>
    /// <param name="parts">How many, 0 or more; part of the result, so never the number of processors.</param>
    /// <param name="seed">Part i draws from its child i.</param>
    /// <param name="part">The work: the part's number and its generator in, its result out. Must touch nothing that another part changes.</param>
    /// <param name="threads">The most threads at once, at least 1; null for as many as there are processors.</param>
    public static T[] Run<T>(int parts, Seed seed, Func<int, Generator, T> part, int? threads = null)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(parts);
        ArgumentNullException.ThrowIfNull(part);
        if (threads is { } most) ArgumentOutOfRangeException.ThrowIfLessThan(most, 1, nameof(threads));
        var results = new T[parts];
        if (threads == 1)
        {
            for (var i = 0; i < parts; i++) results[i] = part(i, seed.Child(i).Generator());
            return results;
        }

        Parallel.For(0, parts, new ParallelOptions { MaxDegreeOfParallelism = threads ?? -1 }, i => results[i] = part(i, seed.Child(i).Generator()));
        return results;
    }

    /// <summary>The size of one part where a number of draws is split as evenly as may be.</summary>
    /// <param name="draws">All draws.</param>
    /// <param name="parts">All parts.</param>
    /// <param name="part">The part's number.</param>
    public static int Share(int draws, int parts, int part) => (draws / parts) + (part < draws % parts ? 1 : 0);
}
