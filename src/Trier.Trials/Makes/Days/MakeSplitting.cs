using System.Collections.Immutable;
using Trier.Trials.Common;
using Trier.Trials.Makes.Recipes;
using Trier.Trials.Makes.Sheets;

namespace Trier.Trials.Makes.Days;

/// <summary>Splitting a vat into treatments.</summary>
public sealed partial record Make
{
    private const int LongestPart = 20;

    /// <summary>Why the vat cannot be split now, or null where it can: from the step in hand on each part would go its own way.</summary>
    public string? NoSplitNow =>
        Split is not null ? "This vat was split already."
        : !Wheels.IsEmpty ? "The wheels have their numbers; a vat is split before that."
        : Lanes[0].Current is not { } now ? "All steps are done; what differs between the wheels is written as they get their numbers."
        : now is { Step.Kind: StepKind.Renneting, Started: not null } || SetsAt(now) ? "The milk is setting: a gel cannot be divided. Split the vat after the cut."
        : null;

    /// <summary>Splits the vat: from the step in hand on each part has its own marks, readings and times.</summary>
    /// <param name="at">Now.</param>
    /// <param name="parts">The parts, 2 to 4; their shares add up to the whole vat.</param>
    public Outcome<ImmutableArray<MakeEvent>> Divide(DateTimeOffset at, ImmutableArray<VatPart> parts)
    {
        if (NoSplitNow is { } reason) return Fault("parts", reason);
        if (parts.Length is < 2 or > VatPart.Most) return Fault("parts", "A vat is split into 2 to 4 parts.");
        var problems = new List<Problem>();
        for (var i = 0; i < parts.Length; i++) Check(parts[i], FigureText.Whole(i + 1), problems);
        if (parts.DistinctBy(part => part.Name.Trim(), StringComparer.OrdinalIgnoreCase).Count() < parts.Length) problems.Add(new("name-2", "Two parts have one name: give each its own."));
        if (problems.Count == 0 && Math.Abs(parts.Sum(part => part.Percent) - 100) > 0.5)
            problems.Add(new("share-2", $"The shares add up to {Write.Number(parts.Sum(part => part.Percent))} %; they must make 100 % of the vat."));
        if (parts.All(part => part.Changes.IsEmpty && part.Differs.Trim().Length == 0))
            problems.Add(new("differs-2", "Say what is done otherwise with one of the parts; else it is one vat with several wheels."));
        return problems.Count > 0
            ? Outcome.Fault<ImmutableArray<MakeEvent>>(problems)
            : Do(new VatSplit(at, Lanes[0].Current!.Number, [.. parts.Select(part => part with { Name = part.Name.Trim(), Differs = part.Differs.Trim() })]));
    }

    private bool SetsAt(DayStep now) => now.Step.Kind == StepKind.Cut && Lanes[0].Steps.LastOrDefault(step => step.Number < now.Number) is { Step.Kind: StepKind.Renneting };

    private void Check(VatPart part, string place, List<Problem> problems)
    {
        if (part.Name.Trim().Length is 0 or > LongestPart) problems.Add(new($"name-{place}", "Give the part a name of 1 to 20 letters, such as “washed”."));
        if (!(part.Percent is > 0 and < 100)) problems.Add(new($"share-{place}", $"The share of this part is {Write.Number(part.Percent)} %; it must be above 0 and below 100 (usual: 50)."));
        if (part.Differs.Length > LongestNote) problems.Add(new($"differs-{place}", "What differs is longer than 400 letters: shorten it."));
        for (var i = 0; i < part.Changes.Length; i++) Check(part.Changes[i], $"{place}-{FigureText.Whole(i + 1)}", problems);
        if (part.Changes.GroupBy(change => (change.Step, change.Target)).Any(group => group.Count() > 1)) problems.Add(new($"what-{place}-2", "One aim is changed twice: keep one."));
    }

    private void Check(PartChange change, string place, List<Problem> problems)
    {
        if (Lanes[0].Find(change.Step) is not { Done: null } step) problems.Add(new($"what-{place}", "Choose a step that is still to come."));
        else if (change.Target is null && step.Step.Kind is StepKind.Renneting or StepKind.Hoop && change.Value is null) problems.Add(new($"what-{place}", $"No wheel comes about without “{step.Step.Heading}”."));
        else if (change.Target is { } key)
        {
            var wanted = StepShape.Of(step.Step.Kind).FirstOrDefault(one => one.Target.Key == key);
            if (wanted is null) problems.Add(new($"what-{place}", $"“{step.Step.Heading}” aims at nothing of that kind."));
            else if (change.Value is not { } value) problems.Add(new($"value-{place}", $"Say what {wanted.Field.Name} shall be in this part."));
            else if ((wanted.Target == Target.Dose && step.Step.Addition is { } added ? added.DoseField : wanted.Field).ProblemWith(value) is { } wrong) problems.Add(new($"value-{place}", wrong.Sentence));
        }
    }
}
