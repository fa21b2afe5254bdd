namespace Trier.Dairy.Workings;

/// <summary>A value that is not exact, with the band it may lie in.</summary>
/// <remarks>The band is a judgement of the sources named in the working, about as wide as two times in three unless the working says otherwise.</remarks>
/// <typeparam name="T">The quantity.</typeparam>
/// <param name="Low">The low end of the band.</param>
/// <param name="Likely">The central value.</param>
/// <param name="High">The high end of the band.</param>
public readonly record struct Estimate<T>(T Low, T Likely, T High)
    where T : IComparable<T>
{
    /// <summary>Whether the band is a single point.</summary>
    public bool IsExact => Low.CompareTo(High) == 0;
}

/// <summary>Makes <see cref="Estimate{T}"/> values.</summary>
public static class Estimate
{
    /// <summary>A value known exactly, or whose error is of no matter here.</summary>
    /// <typeparam name="T">The quantity.</typeparam>
    /// <param name="value">The value.</param>
    public static Estimate<T> Exactly<T>(T value)
        where T : IComparable<T> => new(value, value, value);

    /// <summary>A value with its band.</summary>
    /// <typeparam name="T">The quantity.</typeparam>
    /// <param name="low">The low end.</param>
    /// <param name="likely">The central value.</param>
    /// <param name="high">The high end.</param>
    /// <exception cref="ArgumentException">The three are not in order.</exception>
    public static Estimate<T> Between<T>(T low, T likely, T high)
        where T : IComparable<T> =>
        low.CompareTo(likely) <= 0 && likely.CompareTo(high) <= 0
            ? new(low, likely, high)
            : throw new ArgumentException($"Low, likely and high are not in order: {low}, {likely}, {high}.", nameof(likely));
}
