using System.Collections;
using System.Collections.Immutable;
using System.Reflection;
using Trier.Statistics.Randomness;

namespace Trier.Architecture.Tests;

/// <summary>What the pure rooms hand out cannot be changed by whoever holds it.</summary>
public sealed class ImmutabilityTests
{
    /// <summary>A generator is its state; it is handed to one caller and never stored.</summary>
    private static readonly HashSet<Type> Changing = [typeof(Generator)];

    public static TheoryData<string> Rooms => ["Trier.Statistics", "Trier.Dairy", "Trier.Trials"];

    [Theory]
    [MemberData(nameof(Rooms))]
    public void No_public_type_of_a_pure_room_can_be_changed_from_outside(string room)
    {
        var types = Assembly.Load(room).GetExportedTypes().Where(type => !type.IsEnum && !type.IsSubclassOf(typeof(Delegate)) && !Changing.Contains(type)).ToList();
        Assert.True(types.Count > 20, $"Only {types.Count} types were looked at.");
        Assert.Empty(types.SelectMany(Changeable));
    }

    [Fact]
    public void The_check_notices_what_could_be_changed()
    {
        Assert.Equal(
            ["Loose.Field", "Loose.Items", "Loose.Numbers", "Loose.Property"],
            Changeable(typeof(Loose)).Order(StringComparer.Ordinal));
        Assert.Empty(Changeable(typeof(Firm)));
    }

    private static IEnumerable<string> Changeable(Type type)
    {
        const BindingFlags Public = BindingFlags.Public | BindingFlags.Instance | BindingFlags.Static | BindingFlags.DeclaredOnly;
        foreach (var field in type.GetFields(Public))
        {
            if (!field.IsInitOnly && !field.IsLiteral) yield return $"{type.Name}.{field.Name}";
            else if (IsChangeable(field.FieldType)) yield return $"{type.Name}.{field.Name}";
        }

        foreach (var property in type.GetProperties(Public))
        {
            var settable = property.SetMethod is { IsPublic: true } setter && !setter.ReturnParameter.GetRequiredCustomModifiers().Contains(typeof(System.Runtime.CompilerServices.IsExternalInit));
            if (settable || IsChangeable(property.PropertyType)) yield return $"{type.Name}.{property.Name}";
        }
    }

    private static bool IsChangeable(Type type)
    {
        if (type.IsArray) return true;
        if (type.Namespace == typeof(ImmutableArray).Namespace) return false;
        return !type.IsInterface && type != typeof(string) && typeof(IEnumerable).IsAssignableFrom(type)
            && type.GetInterfaces().Any(found => found.IsGenericType && found.GetGenericTypeDefinition() == typeof(ICollection<>));
    }

    private sealed class Loose
    {
        public int Field = 1;

        public int Property { get; set; }

        public List<int> Items { get; } = [];

        public int[] Numbers { get; } = [];

        public override string ToString() => $"{Field}";
    }

    private sealed record Firm(int Number, ImmutableArray<int> Numbers, IReadOnlyList<int> Listed)
    {
        public const int Fixed = 1;
    }
}
