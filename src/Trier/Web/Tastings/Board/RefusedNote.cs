using Trier.Web.Hosting;
using Trier.Web.Shared;

namespace Trier.Web.Tastings.Board;

/// <summary>A note of the room that was refused: its form opens again with what was typed.</summary>
/// <param name="Deed">Which form.</param>
/// <param name="Typed">Every field's values as posted.</param>
/// <param name="Faults">What to mend, each by the id of its field.</param>
public sealed record RefusedNote(string Deed, IReadOnlyDictionary<string, IReadOnlyList<string>> Typed, IReadOnlyList<FieldFault> Faults)
{
    private static readonly string[] Fields = ["who", "people", "first", "second", "words", "reason", "witness", "replaced", "taster"];

    /// <summary>Names the faults as the form names its fields.</summary>
    /// <param name="deed">Which form.</param>
    /// <param name="posted">What was posted.</param>
    /// <param name="problems">What is wrong with it.</param>
    internal static RefusedNote Of(string deed, Posted posted, IEnumerable<Trier.Trials.Common.Problem> problems) => new(
        deed,
        Fields.ToDictionary(field => field, posted.All, StringComparer.Ordinal),
        [.. problems.Select(problem => Fault(deed, problem.Field, problem.Sentence))]);

    private static FieldFault Fault(string deed, string field, string sentence) => (deed, field) switch
    {
        ("compared", _) => new("compared-people", "Who", sentence),
        ("newcomer", _) => new("newcomer", "Name of the newcomer", sentence),
        ("parted", "second" or "name") => new("parted-second", "Name of the second person", sentence),
        ("swapped", "first" or "codes") => new("swapped-first", "One of the two codes", sentence),
        ("swapped", "second") => new("swapped-second", "The other code", sentence),
        ("swapped", "reason") => new("swapped-reason", "How it was noticed", sentence),
        ("swapped", "witness") => new("swapped-witness", "Who saw it", sentence),
        ("spoken", _) => new("spoken-first", "Which sample", sentence),
        ("dropped", "first" or "dropped") => new("dropped-first", "Which sample", sentence),
        _ => new($"who-{deed}", "Who", sentence),
    };
}
