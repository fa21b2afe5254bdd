namespace Trier.Dairy.Workings;

/// <summary>Why an input was refused.</summary>
/// <param name="Kind">What sort of refusal.</param>
/// <param name="Field">The field at fault.</param>
/// <param name="Sentence">One sentence that names the field, the value and the range.</param>
public sealed record Problem(ProblemKind Kind, Field Field, string Sentence);

/// <summary>The sorts of refusal.</summary>
public enum ProblemKind
{
    /// <summary>No such value exists: negative milk, pH 15.</summary>
    Impossible,

    /// <summary>The value may be real, but the formula does not hold there.</summary>
    OutsideTheDomain,

    /// <summary>Two inputs contradict each other.</summary>
    Contradiction,

    /// <summary>There is too little to go on.</summary>
    NotEnough,
}
