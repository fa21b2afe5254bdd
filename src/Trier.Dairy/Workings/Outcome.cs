using System.Diagnostics.CodeAnalysis;

namespace Trier.Dairy.Workings;

/// <summary>What a computation gives: an <see cref="Answer{T}"/> or a <see cref="Refusal{T}"/>.</summary>
/// <typeparam name="T">The type of the value.</typeparam>
public abstract record Outcome<T>
{
    private protected Outcome()
    {
    }

    /// <summary>Takes the answer if there is one, else the problems.</summary>
    /// <param name="answer">The answer, or null.</param>
    /// <param name="problems">All problems at once; empty beside an answer.</param>
    public bool TryAnswer([NotNullWhen(true)] out Answer<T>? answer, out Listed<Problem> problems)
    {
        answer = this as Answer<T>;
        problems = this is Refusal<T> refusal ? refusal.Problems : [];
        return answer is not null;
    }

    /// <summary>The answer, where the caller has made sure that there is one.</summary>
    /// <exception cref="InvalidOperationException">It was refused; the message holds the sentences.</exception>
    public Answer<T> OrThrow() =>
        this as Answer<T> ?? throw new InvalidOperationException(
            string.Join(' ', ((Refusal<T>)this).Problems.Select(problem => problem.Sentence)));
}

/// <summary>A value, how it came about, and what should be asked about it.</summary>
/// <typeparam name="T">The type of the value.</typeparam>
/// <param name="Value">The value.</param>
/// <param name="Working">Formula, inputs, source and status.</param>
/// <param name="Questions">Unusual things the maker should look at; empty if none.</param>
public sealed record Answer<T>(T Value, Working Working, Listed<Question> Questions) : Outcome<T>;

/// <summary>Why no value was given.</summary>
/// <typeparam name="T">The type the value would have had.</typeparam>
/// <param name="Problems">Every problem of the input, at least one.</param>
public sealed record Refusal<T>(Listed<Problem> Problems) : Outcome<T>;
