namespace Trier.Statistics;

/// <summary>Why a method declined to answer: what kind of thing is missing.</summary>
public enum RefusalKind
{
    /// <summary>Fewer items than the method can compare.</summary>
    TooFewItems,

    /// <summary>More items than the exact method can carry.</summary>
    TooManyItems,

    /// <summary>Fewer ballots or voices than the method needs.</summary>
    TooFewBallots,

    /// <summary>Every ballot ties everything, so no order of the items is favoured over another.</summary>
    NoInformation,

    /// <summary>The method needs every ballot to have been served every item.</summary>
    NotComplete,

    /// <summary>The items fall into pieces that no ballot compares.</summary>
    Disconnected,

    /// <summary>The items can be split so that one side never beats the other: no finite estimate exists.</summary>
    Separated,

    /// <summary>The design lacks a property the method rests on, such as balance.</summary>
    WrongDesign,

    /// <summary>The numerical solution did not reach its equations.</summary>
    NotConverged,

    /// <summary>No design with the properties asked for was found.</summary>
    NotFound,
}

/// <summary>A method's reason for giving no answer: a kind to switch on and one sentence to show.</summary>
/// <param name="Kind">What is missing.</param>
/// <param name="Sentence">One English sentence that says what is missing.</param>
public sealed record Refusal(RefusalKind Kind, string Sentence);

/// <summary>Either a value or the reason why there is none. Never both, never neither.</summary>
/// <typeparam name="T">The value's type.</typeparam>
public readonly struct Answer<T>
    where T : notnull
{
    private readonly T? _value;
    private readonly bool _stands;
    private readonly Refusal? _refusal;

    /// <summary>An answer that stands.</summary>
    /// <param name="value">The value.</param>
    public Answer(T value)
    {
        _value = value;
        _stands = true;
        _refusal = null;
    }

    /// <summary>An answer declined.</summary>
    /// <param name="refusal">The reason.</param>
    public Answer(Refusal refusal)
    {
        ArgumentNullException.ThrowIfNull(refusal);
        _value = default;
        _stands = false;
        _refusal = refusal;
    }

    /// <summary>True where there is a value.</summary>
    public bool Stands => _stands;

    /// <summary>The value.</summary>
    /// <exception cref="InvalidOperationException">There is none: look at <see cref="Stands"/> first.</exception>
    public T Value => _stands ? _value! : throw new InvalidOperationException(Unanswered.Sentence);

    /// <summary>The reason, or null where the answer stands.</summary>
    public Refusal? Refusal => _stands ? null : Unanswered;

    private Refusal Unanswered => _refusal ?? new Refusal(RefusalKind.NoInformation, "Nothing was asked.");

    /// <summary>The value as an answer.</summary>
    /// <param name="value">The value.</param>
    public static implicit operator Answer<T>(T value) => new(value);

    /// <summary>The reason as an answer.</summary>
    /// <param name="refusal">The reason.</param>
    public static implicit operator Answer<T>(Refusal refusal) => new(refusal);
}
