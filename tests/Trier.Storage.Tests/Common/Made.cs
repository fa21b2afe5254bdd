using System.Collections.Immutable;
using System.Reflection;
using Trier.Trials.Makes;
using Trier.Trials.Plans;
using Trier.Trials.Tastings;

namespace Trier.Storage.Common;

/// <summary>Makes values of any type an event is built from, so that an event added tomorrow is covered without a line here.</summary>
internal sealed class Made(int seed)
{
    private static readonly string[] Words = ["Thistle", "two words", "“quoted” \"twice\"", "línea\nnueva", "½ kg < 1 & <b>", "сыр 🧀", "{\"event\":\"closed\"}", "\\ '; --"];

    private readonly Random _random = new(seed);
    private readonly NullabilityInfoContext _nullability = new();

    public object Of(Type type)
    {
        if (type == typeof(string)) return Words[_random.Next(Words.Length)];
        if (type == typeof(int)) return _random.Next(1, 1000);
        if (type == typeof(bool)) return _random.Next(2) == 1;
        if (type == typeof(decimal)) return _random.Next(-500, 500) / 8m;
        if (type == typeof(Guid)) return Id();
        if (type == typeof(DateOnly)) return new DateOnly(2026, 1, 1).AddDays(_random.Next(700));
        if (type == typeof(DateTimeOffset)) return new DateTimeOffset(2026, 5, 16, 0, 0, 0, TimeSpan.FromMinutes(_random.Next(-56, 57) * 15)).AddTicks(_random.NextInt64(TimeSpan.TicksPerDay));
        if (type == typeof(BlindCode)) return BlindCode.Of(Enumerable.Range(0, 100_000).Select(_ => _random.Next(100, 1000)).First(BlindCode.Allowed));
        if (type == typeof(Ballot)) return AnyBallot();
        if (type == typeof(WheelFacts)) return WheelFacts.Of(Enumerable.Range(0, _random.Next(5)).Select(at => KeyValuePair.Create($"fact {at} é", (string?)Of(typeof(string)))));
        if (type.IsEnum) return Enum.GetValuesAsUnderlyingType(type) is var values ? Enum.ToObject(type, values.GetValue(_random.Next(values.Length))!) : 0;
        if (type == typeof(CountingRule)) return Of(OneOf([.. type.GetNestedTypes().Where(nested => nested.IsSubclassOf(type))]));
        if (type.IsGenericType && type.GetGenericTypeDefinition() == typeof(ImmutableArray<>)) return Several(type.GetGenericArguments()[0]);
        return Built(type);
    }

    private object Built(Type type)
    {
        var constructor = type.GetConstructors().OrderByDescending(candidate => candidate.GetParameters().Length).FirstOrDefault()
            ?? throw new NotSupportedException($"Say how a {type.Name} is made.");
        return constructor.Invoke([.. constructor.GetParameters().Select(Argument)]);
    }

    private object? Argument(ParameterInfo parameter)
    {
        var bare = Nullable.GetUnderlyingType(parameter.ParameterType);
        var mayBeNull = bare is not null || _nullability.Create(parameter).WriteState == NullabilityState.Nullable;
        return mayBeNull && _random.Next(3) == 0 ? null : Of(bare ?? parameter.ParameterType);
    }

    private object Several(Type item)
    {
        var items = Array.CreateInstance(item, _random.Next(4));
        for (var at = 0; at < items.Length; at++) items.SetValue(Of(item), at);
        return typeof(ImmutableCollectionsMarshalled).GetMethod(nameof(ImmutableCollectionsMarshalled.Of))!.MakeGenericMethod(item).Invoke(null, [items])!;
    }

    private Type OneOf(Type[] types) => types[_random.Next(types.Length)];

    private Guid Id()
    {
        var bytes = new byte[16];
        _random.NextBytes(bytes);
        return new Guid(bytes);
    }

    private static class ImmutableCollectionsMarshalled
    {
        public static ImmutableArray<T> Of<T>(T[] items) => [.. items];
    }

    private Ballot AnyBallot()
    {
        ImmutableArray<BlindCode> codes = [.. Enumerable.Range(0, 4).Select(_ => (BlindCode)Of(typeof(BlindCode))).Distinct()];
        return Ballot.Stored(
            [.. codes.Select(code => ImmutableArray.Create(code))],
            ImmutableSortedDictionary<BlindCode, SampleAnswer>.Empty.Add(codes[0], new SampleAnswer { Liking = _random.Next(1, 10), Remark = (string)Of(typeof(string)) }));
    }
}
