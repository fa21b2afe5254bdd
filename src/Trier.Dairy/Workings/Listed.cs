using System.Collections;
using System.Runtime.CompilerServices;

namespace Trier.Dairy.Workings;

/// <summary>A read-only list that compares by its elements, so that results compare by value.</summary>
/// <typeparam name="T">What it holds.</typeparam>
[CollectionBuilder(typeof(Listed), nameof(Listed.Of))]
public sealed class Listed<T> : IReadOnlyList<T>, IEquatable<Listed<T>>
{
    private readonly T[] _items;

    internal Listed(ReadOnlySpan<T> items) => _items = items.ToArray();

    /// <inheritdoc/>
    public int Count => _items.Length;

    /// <inheritdoc/>
    public T this[int index] => _items[index];

    /// <inheritdoc/>
    public bool Equals(Listed<T>? other) => other is not null && _items.AsSpan().SequenceEqual(other._items);

    /// <inheritdoc/>
    public override bool Equals(object? obj) => Equals(obj as Listed<T>);

    /// <inheritdoc/>
    public override int GetHashCode()
    {
        var hash = default(HashCode);
        foreach (var item in _items) hash.Add(item);
        return hash.ToHashCode();
    }

    /// <inheritdoc/>
    public IEnumerator<T> GetEnumerator() => ((IEnumerable<T>)_items).GetEnumerator();

    IEnumerator IEnumerable.GetEnumerator() => GetEnumerator();
}

/// <summary>Makes <see cref="Listed{T}"/> values.</summary>
public static class Listed
{
    /// <summary>A list of these items, copied.</summary>
    /// <typeparam name="T">What it holds.</typeparam>
    /// <param name="items">The items in order.</param>
    public static Listed<T> Of<T>(ReadOnlySpan<T> items) => new(items);
}
