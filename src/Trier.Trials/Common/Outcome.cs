using System.Collections.Immutable;
using System.Diagnostics.CodeAnalysis;

namespace Trier.Trials.Common;

/// <summary>
/// Either a value or everything that is wrong with the input, told at once. Expected failures travel this way;
/// exceptions are kept for defects of the program.
/// </summary>
/// <typeparam name="T">What stands when nothing is wrong.</typeparam>
public sealed class Outcome<T>
{
    private readonly T? _value;

    internal Outcome(T value)
    {
        _value = value;
        Problems = [];
    }

    internal Outcome(ImmutableArray<Problem> problems)
    {
        if (problems.IsDefaultOrEmpty) throw new ArgumentException("A failed outcome needs at least one problem.", nameof(problems));
        Problems = problems;
    }

    /// <summary>What is wrong; empty when <see cref="Ok"/>.</summary>
    public ImmutableArray<Problem> Problems { get; }

    /// <summary>Whether there is a value.</summary>
    public bool Ok => Problems.IsEmpty;

    /// <summary>The value. Reading it from a failed outcome is a defect and throws.</summary>
    public T Value => Ok ? _value! : throw new InvalidOperationException($"No value: {string.Join(" ", Problems.Select(p => p.Sentence))}");

    /// <summary>Takes the value out where there is one.</summary>
    /// <param name="value">The value, or default.</param>
    /// <returns>Whether there is a value.</returns>
    public bool TryGet([MaybeNullWhen(false)] out T value)
    {
        value = _value;
        return Ok;
    }

    /// <summary>Goes on with the value, or carries the problems over.</summary>
    /// <typeparam name="TNext">What the next step yields.</typeparam>
    /// <param name="next">The next step.</param>
    public Outcome<TNext> Then<TNext>(Func<T, Outcome<TNext>> next) => Ok ? next(_value!) : new(Problems);
}

/// <summary>Makes outcomes.</summary>
public static class Outcome
{
    /// <summary>A value and no problem.</summary>
    /// <typeparam name="T">Type of the value.</typeparam>
    /// <param name="value">The value.</param>
    public static Outcome<T> Of<T>(T value) => new(value);

    /// <summary>One problem.</summary>
    /// <typeparam name="T">Type of the value there would have been.</typeparam>
    /// <param name="field">The field or line the problem is about.</param>
    /// <param name="sentence">One sentence that says what is wrong and how to mend it.</param>
    public static Outcome<T> Fault<T>(string field, string sentence) => new([new Problem(field, sentence)]);

    /// <summary>Several problems, told at once.</summary>
    /// <typeparam name="T">Type of the value there would have been.</typeparam>
    /// <param name="problems">At least one problem.</param>
    public static Outcome<T> Fault<T>(IEnumerable<Problem> problems) => new([.. problems]);
}
