namespace Trier.Dairy.Workings;

/// <summary>Something unusual but possible about an input or a result: the answer stands, and the maker is asked.</summary>
/// <param name="Field">The field it is about.</param>
/// <param name="Sentence">One sentence.</param>
public sealed record Question(Field Field, string Sentence);
