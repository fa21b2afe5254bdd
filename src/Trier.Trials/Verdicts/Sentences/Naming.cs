using System.Collections.Immutable;

namespace Trier.Trials.Verdicts.Sentences;

/// <summary>Wheels by their names.</summary>
internal static class Naming
{
    public static string Of(Verdict verdict, string id) => verdict.Sample(id).Name;

    public static string Of(Verdict verdict, ImmutableArray<string> ids) => Phrase.List(ids.Select(id => Of(verdict, id)));
}
