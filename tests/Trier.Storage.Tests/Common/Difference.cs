using System.Collections;
using System.Reflection;

namespace Trier.Storage.Common;

/// <summary>
/// Finds the first place where two values differ, property by property and item by item: the equality of a record that holds an array asks
/// only whether it is the same array.
/// </summary>
internal static class Difference
{
    public static string? Between(object? left, object? right, string path = "")
    {
        if (left is null || right is null) return left is null && right is null ? null : $"{path}: {left ?? "nothing"} and {right ?? "nothing"}";
        if (left.GetType() != right.GetType()) return $"{path}: {left.GetType().Name} and {right.GetType().Name}";
        // Two times of one moment in different zones are equal, and yet tell different times on the wall.
        if (left is DateTimeOffset time) return time.EqualsExact((DateTimeOffset)right) ? null : $"{path}: {left:O} and {right:O}";
        if (left is string or Guid or decimal or DateOnly || left.GetType().IsPrimitive || left.GetType().IsEnum) return left.Equals(right) ? null : $"{path}: {left} and {right}";
        if (left is IEnumerable items) return BetweenItems(items, (IEnumerable)right, path);
        return left.GetType().GetProperties(BindingFlags.Public | BindingFlags.Instance)
            .Where(property => property.GetIndexParameters().Length == 0)
            .Select(property => Between(property.GetValue(left), property.GetValue(right), $"{path}.{property.Name}"))
            .FirstOrDefault(difference => difference is not null);
    }

    private static string? BetweenItems(IEnumerable left, IEnumerable right, string path)
    {
        var (some, others) = (left.Cast<object>().ToList(), right.Cast<object>().ToList());
        return some.Count != others.Count
            ? $"{path}: {some.Count} and {others.Count} items"
            : some.Select((item, at) => Between(item, others[at], $"{path}[{at}]")).FirstOrDefault(difference => difference is not null);
    }
}
