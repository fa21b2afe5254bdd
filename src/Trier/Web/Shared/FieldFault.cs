namespace Trier.Web.Shared;

/// <summary>One thing to mend in a form.</summary>
/// <param name="FieldId">The id of the control it is about.</param>
/// <param name="Field">The field's name as the person sees it, for example "Made on".</param>
/// <param name="Sentence">One sentence that names the fix.</param>
public sealed record FieldFault(string FieldId, string Field, string Sentence)
{
    /// <summary>The id of the sentence under the field.</summary>
    public string SentenceId => SentenceIdOf(FieldId);

    /// <summary>The id of the sentence under a field.</summary>
    /// <param name="fieldId">The id of the control.</param>
    /// <returns>The id that <c>aria-describedby</c> names.</returns>
    public static string SentenceIdOf(string fieldId) => fieldId + "-fault";
}
