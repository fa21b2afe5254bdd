using System.Collections.Immutable;

namespace Trier.Trials.Makes.Recipes;

/// <summary>One step of a recipe. Made only by reading a <see cref="StepDraft"/>, so that it has what its kind asks for.</summary>
public sealed record Step
{
    internal Step(StepKind kind, string title, string note, Addition? addition, ImmutableArray<Aim> aims)
    {
        Kind = kind;
        Title = title;
        Note = note;
        Addition = addition;
        Aims = aims;
    }

    /// <summary>What sort of step.</summary>
    public StepKind Kind { get; }

    /// <summary>The maker's heading; empty for the plain one.</summary>
    public string Title { get; }

    /// <summary>How it is done, in the maker's words; may be empty.</summary>
    public string Note { get; }

    /// <summary>What is added; only in an adding step.</summary>
    public Addition? Addition { get; }

    /// <summary>What it aims at, in the order of <see cref="StepShape.Of"/>.</summary>
    public ImmutableArray<Aim> Aims { get; }

    /// <summary>The heading of the step.</summary>
    public string Heading => Title.Length > 0 ? Title : Kind == StepKind.Add ? $"Add {Addition!.Called}" : Kind.Heading();

    /// <summary>The aim for a target, or null.</summary>
    /// <param name="target">The target.</param>
    public Aim? this[Target target] => Aims.FirstOrDefault(aim => aim.Target == target);

    /// <summary>
    /// How long the step takes: its time and rest; for renneting the flocculation time and multiplier. Null where the recipe gives no time.
    /// </summary>
    public TimeSpan? Takes
    {
        get
        {
            if (this[Target.FlocMinutes] is { } floc && this[Target.Multiplier] is { } times) return TimeSpan.FromMinutes(floc.Value * times.Value);
            double? minutes = this[Target.Minutes]?.Value;
            var rest = this[Target.RestMinutes]?.Value;
            return minutes is null && rest is null ? null : TimeSpan.FromMinutes((minutes ?? 0) + (rest ?? 0));
        }
    }

    /// <summary>An aim in words, with the addition's own unit for a dose.</summary>
    /// <param name="aim">One of <see cref="Aims"/>.</param>
    public string InWords(Aim aim) => aim.Target == Target.Dose
        ? $"{Write.Number(aim.Value)} {Recipes.Addition.Words(Addition!.Per)}"
        : aim.InWords();

    /// <inheritdoc/>
    public bool Equals(Step? other) =>
        other is not null && Kind == other.Kind && Title == other.Title && Note == other.Note && Addition == other.Addition && Aims.SequenceEqual(other.Aims);

    /// <inheritdoc/>
    public override int GetHashCode() => HashCode.Combine(Kind, Title, Note, Addition, Aims.Length);
}
