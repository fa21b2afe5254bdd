namespace Trier.Trials.Common;

/// <summary>One thing that is wrong with an input.</summary>
/// <param name="Field">The form field, file line or argument it is about, as the person knows it.</param>
/// <param name="Sentence">One clear sentence: what is wrong and how to mend it. No stack traces, no codes.</param>
public sealed record Problem(string Field, string Sentence);
