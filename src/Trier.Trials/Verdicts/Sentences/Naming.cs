using System.Collections.Immutable;

namespace Trier.Trials.Verdicts.Sentences;

/// <summary>Wheels by their names.</summary>
internal static class Naming
{
    public static string Of(Verdict verdict, string id) => verdict.Sample(id).Name;

    /// <summary>"A leads", "A and B share the lead", "nobody leads".</summary>
    public static string Leading(Verdict verdict, ImmutableArray<string> ids) => ids.Length switch
    {
        0 => "nobody leads",
        1 => $"{Of(verdict, ids)} leads",
        _ => $"{Of(verdict, ids)} share the lead",
    };

    public static string Of(Verdict verdict, ImmutableArray<string> ids) => Phrase.List(ids.Select(id => Of(verdict, id)));
}
