using System.Collections.Immutable;
using Trier.Dairy.Milk;
using Trier.Dairy.Tables;
using Trier.Trials.Common;

namespace Trier.Trials.Makes.Recipes;

/// <summary>Makes recipes of drafts. Fields of faults are paths: "name", "steps[3].celsius"; steps count from 1 as the maker counts.</summary>
internal static class RecipeReading
{
    public const int MostSteps = 60;
    private const int LongestName = 80;
    private const int LongestText = 2000;

    public static Outcome<ReadRecipe> Read(RecipeDraft draft)
    {
        var problems = new List<Problem>();
        var questions = new List<Problem>();
        var name = draft.Name.Trim();
        if (name.Length == 0) problems.Add(new("name", "The recipe has no name: write one, such as “House tomme”."));
        if (name.Length > LongestName) problems.Add(new("name", $"The name has {Write.Number(name.Length)} letters; {Write.Number(LongestName)} are the most."));
        if (draft.About.Length > LongestText) problems.Add(new("about", "The description is longer than 2000 letters: shorten it."));
        if (draft.Credit.Length > LongestText) problems.Add(new("credit", "The credit is longer than 2000 letters: shorten it."));
        if (StyleWords.Named(draft.Style) is null)
            problems.Add(new("style", $"“{draft.Style}” is no style the tables know: choose {OneOf(Enum.GetValues<Style>().Select(StyleWords.Key))}."));
        if (Animal(draft.Milk) is null)
            problems.Add(new("milk", $"“{draft.Milk}” is no animal the tables know: choose {OneOf(Enum.GetNames<Species>().Select(word => word.ToLowerInvariant()))}."));
        Check("cheese", draft.Cheese, StepShape.OfCheese, null, problems, questions);
        if (draft.Steps.Length == 0) problems.Add(new("steps", "The recipe has no step: give at least one, such as warming the milk."));
        if (draft.Steps.Length > MostSteps) problems.Add(new("steps", $"The recipe has {Write.Number(draft.Steps.Length)} steps; {Write.Number(MostSteps)} are the most."));
        for (var i = 0; i < draft.Steps.Length; i++) Check($"steps[{Write.Number(i + 1)}]", draft.Steps[i], problems, questions);
        if (problems.Count > 0) return Outcome.Fault<ReadRecipe>(problems);
        var recipe = Stored(draft);
        questions.AddRange(OrderQuestions(recipe));
        return Outcome.Of(new ReadRecipe(recipe, [.. questions]));
    }

    public static Recipe Stored(RecipeDraft draft) => new(
        draft.Name.Trim(),
        StyleWords.Named(draft.Style) ?? throw Damaged(draft.Style),
        Animal(draft.Milk) ?? throw Damaged(draft.Milk),
        draft.About.Trim(),
        draft.Credit.Trim(),
        Aims(draft.Cheese, StepShape.OfCheese),
        [.. draft.Steps.Select(Stored)]);

    private static Step Stored(StepDraft draft)
    {
        var kind = StepKinds.Named(draft.Kind) ?? throw Damaged(draft.Kind);
        var addition = kind != StepKind.Add ? null : new Addition(
            Addition.KindNamed(draft.What) ?? throw Damaged(draft.What), draft.Called.Trim(), Addition.UnitNamed(draft.Per) ?? throw Damaged(draft.Per));
        return new Step(kind, draft.Title.Trim(), draft.Note.Trim(), addition, Aims(draft.Aims, StepShape.Of(kind)));
    }

    private static ImmutableArray<Aim> Aims(ImmutableArray<AimDraft> drafts, ImmutableArray<Wanted> shape) =>
        [.. shape.Select(wanted => drafts.FirstOrDefault(aim => aim.Key == wanted.Target.Key) is { } found ? new Aim(wanted.Target, found.Value, found.Tolerance) : null).OfType<Aim>()];

    private static void Check(string path, StepDraft step, List<Problem> problems, List<Problem> questions)
    {
        if (StepKinds.Named(step.Kind) is not { } kind)
        {
            problems.Add(new($"{path}.kind", $"“{step.Kind}” is no kind of step: choose {OneOf(Enum.GetValues<StepKind>().Select(known => known.Key()))}."));
            return;
        }

        if (step.Title.Length > LongestName) problems.Add(new($"{path}.title", $"The heading has {Write.Number(step.Title.Length)} letters; {Write.Number(LongestName)} are the most."));
        if (step.Note.Length > LongestText) problems.Add(new($"{path}.note", "The note is longer than 2000 letters: shorten it."));
        Addition? addition = null;
        if (kind == StepKind.Add)
        {
            var (what, per) = (Addition.KindNamed(step.What), Addition.UnitNamed(step.Per));
            if (what is null) problems.Add(new($"{path}.what", $"“{step.What}” is nothing a step can add: choose {OneOf(Enum.GetValues<AdditionKind>().Select(Addition.Words))}."));
            if (per is null) problems.Add(new($"{path}.per", $"“{step.Per}” is no unit of doses: choose {OneOf(Enum.GetValues<DoseUnit>().Select(Addition.Words))}."));
            if (what == AdditionKind.Other && step.Called.Trim().Length == 0) problems.Add(new($"{path}.called", "Something else is added: say what it is, since guests may have to be told."));
            if (what is { } known && per is { } unit) addition = new Addition(known, step.Called.Trim(), unit);
        }

        Check(path, step.Aims, StepShape.Of(kind), addition, problems, questions);
    }

    private static void Check(string path, ImmutableArray<AimDraft> aims, ImmutableArray<Wanted> shape, Addition? addition, List<Problem> problems, List<Problem> questions)
    {
        foreach (var stranger in aims.Where(aim => shape.All(wanted => wanted.Target.Key != aim.Key)))
            problems.Add(new($"{path}.{stranger.Key}", $"“{stranger.Key}” does not belong here: this has {OneOf(shape.Select(wanted => wanted.Target.Key), "and")}."));
        foreach (var twice in aims.GroupBy(aim => aim.Key).Where(group => group.Count() > 1))
            problems.Add(new($"{path}.{twice.Key}", $"“{twice.Key}” is given twice: keep one."));
        foreach (var wanted in shape)
        {
            var field = wanted.Target == Target.Dose && addition is not null ? addition.DoseField : wanted.Field;
            var place = $"{path}.{wanted.Target.Key}";
            if (aims.FirstOrDefault(aim => aim.Key == wanted.Target.Key) is not { } aim)
            {
                if (wanted.Required) problems.Add(new(place, $"{field.Name} is missing; usual: {Write.Number(field.UsuallyFrom)} to {Write.Number(field.UsuallyTo)} {field.Unit}".TrimEnd() + "."));
                continue;
            }

            if (field.ProblemWith(aim.Value) is { } problem) problems.Add(new(place, problem.Sentence));
            else if (field.QuestionAbout(aim.Value) is { } question) questions.Add(new(place, question.Sentence));
            if (aim.Tolerance is { } off && !(off >= 0 && off <= Math.Max(field.Highest - field.Lowest, 0)))
                problems.Add(new($"{place}Tolerance", $"Tolerance of {field.Name} is {Write.Number(off)} {field.Unit}".TrimEnd() + "; it must be at least 0 and smaller than the whole range."));
        }
    }

    // Asked, not refused: a maker may know why.
    private static IEnumerable<Problem> OrderQuestions(Recipe recipe)
    {
        int First(params StepKind[] kinds) => recipe.Steps.TakeWhile(step => !kinds.Contains(step.Kind)).Count();
        var (rennet, cut, press) = (First(StepKind.Renneting), First(StepKind.Cut), First(StepKind.Press));
        if (rennet == recipe.Steps.Length) yield return new("steps", "No step adds rennet: is that right?");
        else if (cut < rennet) yield return new($"steps[{Write.Number(cut + 1)}]", "The curd is cut before rennet is added: are the two swapped?");
        if (press < cut && cut < recipe.Steps.Length) yield return new($"steps[{Write.Number(press + 1)}]", "Pressing comes before the cut: are the two swapped?");
        if (First(StepKind.Brine, StepKind.Salt) == recipe.Steps.Length) yield return new("steps", "No step salts the cheese: is that right? Salt also guards against spoilage.");
        double? last = null;
        for (var i = 0; i < recipe.Steps.Length; i++)
        {
            if (recipe.Steps[i][Target.Ph] is not { } ph || recipe.Steps[i].Kind is StepKind.Brine or StepKind.Dry) continue;
            if (last is { } before && ph.Value > before + 0.005)
                yield return new($"steps[{Write.Number(i + 1)}].pH", $"pH is {Write.Number(ph.Value)} here and {Write.Number(before)} at an earlier step; in the vat it falls: is that right?");
            last = ph.Value;
        }
    }

    private static Species? Animal(string? text) => Enum.TryParse<Species>(text?.Trim(), ignoreCase: true, out var animal) && Enum.IsDefined(animal) && !int.TryParse(text, System.Globalization.NumberStyles.AllowLeadingSign, System.Globalization.CultureInfo.InvariantCulture, out _) ? animal : null;

    private static string OneOf(IEnumerable<string> words, string link = "or")
    {
        var all = words.ToList();
        return all.Count == 1 ? all[0] : $"{string.Join(", ", all.Take(all.Count - 1))} {link} {all[^1]}";
    }

    private static InvalidOperationException Damaged(string what) => new($"A stored recipe holds “{what}”, which this program does not know.");
}
