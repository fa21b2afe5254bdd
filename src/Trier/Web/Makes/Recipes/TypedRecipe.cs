using System.Collections.Immutable;
using System.Globalization;
using Trier.Trials.Common;
using Trier.Trials.Makes.Recipes;
using Trier.Web.Hosting;

namespace Trier.Web.Makes.Recipes;

/// <summary>A recipe as it is typed: every field as text, so that nothing typed is lost while steps are added, moved and taken off.</summary>
internal sealed record TypedRecipe(string Name, string Style, string Milk, string About, string Credit, IReadOnlyDictionary<string, string> Cheese, ImmutableList<TypedStep> Steps)
{
    public static TypedRecipe Empty { get; } = new("", "tomme", "cow", "", "", new Dictionary<string, string>(StringComparer.Ordinal), []);

    public static TypedRecipe Of(RecipeDraft draft) => new(draft.Name, draft.Style, draft.Milk, draft.About, draft.Credit, Texts(draft.Cheese), [.. draft.Steps.Select(TypedStep.Of)]);

    public static TypedRecipe Read(Posted posted)
    {
        var count = Math.Clamp(posted.Number("count") ?? 0, 0, 80);
        return new(
            posted.Text("name"), posted.Text("style"), posted.Text("milk"), posted.Text("about"), posted.Text("credit"),
            Values(posted, "cheese-", StepShape.OfCheese),
            [.. Enumerable.Range(1, count).Select(number => TypedStep.Read(posted, number))]);
    }

    /// <summary>Does what a key of the form asks: add, up, drop. Anything else changes nothing.</summary>
    public TypedRecipe Do(string key, string kind)
    {
        var parts = key.Split(':');
        var at = parts.Length > 1 && int.TryParse(parts[1], NumberStyles.None, CultureInfo.InvariantCulture, out var number) ? number - 1 : -1;
        return parts[0] switch
        {
            "add" when StepKinds.Named(kind) is { } known => this with { Steps = Steps.Insert(Math.Clamp(at + 1, 0, Steps.Count), TypedStep.New(known)) },
            "up" when at > 0 && at < Steps.Count => this with { Steps = Steps.RemoveAt(at).Insert(at - 1, Steps[at]) },
            "drop" when at >= 0 && at < Steps.Count => this with { Steps = Steps.RemoveAt(at) },
            _ => this,
        };
    }

    public Outcome<ReadRecipe> ToRecipe()
    {
        var problems = new List<Problem>();
        var draft = new RecipeDraft
        {
            Name = Name,
            Style = Style,
            Milk = Milk,
            About = About,
            Credit = Credit,
            Cheese = Aims(Cheese, "cheese", problems),
            Steps = [.. Steps.Select((step, index) => step.ToDraft(string.Create(CultureInfo.InvariantCulture, $"steps[{index + 1}]"), problems))],
        };
        var read = Recipe.Read(draft);
        // A value that is no number is told once, not also as missing.
        var numbers = problems.Select(problem => problem.Field).ToHashSet(StringComparer.Ordinal);
        return problems.Count == 0 ? read : Outcome.Fault<ReadRecipe>([.. problems, .. read.Problems.Where(problem => !numbers.Contains(problem.Field))]);
    }

    internal static ImmutableArray<AimDraft> Aims(IReadOnlyDictionary<string, string> texts, string path, List<Problem> problems)
    {
        var aims = ImmutableArray.CreateBuilder<AimDraft>();
        foreach (var (key, text) in texts)
        {
            if (Target.Named(key) is not { } target) continue;
            var tolerance = MakerUnits.Read(texts.GetValueOrDefault(key + "-tol") ?? "", $"{path}.{key}Tolerance", $"Tolerance of {target.Field.Name}", problems);
            if (MakerUnits.Read(text, $"{path}.{key}", target.Field.Name, problems) is { } value) aims.Add(new(key, value, tolerance));
        }

        return aims.ToImmutable();
    }

    internal static IReadOnlyDictionary<string, string> Texts(ImmutableArray<AimDraft> aims)
    {
        var texts = new Dictionary<string, string>(StringComparer.Ordinal);
        foreach (var aim in aims)
        {
            texts[aim.Key] = Number(aim.Value);
            if (aim.Tolerance is { } off) texts[aim.Key + "-tol"] = Number(off);
        }

        return texts;
    }

    internal static IReadOnlyDictionary<string, string> Values(Posted posted, string prefix, ImmutableArray<Wanted> shape) =>
        shape.SelectMany(wanted => new[] { wanted.Target.Key, wanted.Target.Key + "-tol" })
            .Select(key => KeyValuePair.Create(key, posted.Text(prefix + key))).Where(pair => pair.Value.Length > 0).ToDictionary(StringComparer.Ordinal);

    private static string Number(double value) => value.ToString("0.######", CultureInfo.InvariantCulture).Replace('.', ',');
}

/// <summary>A step as it is typed.</summary>
internal sealed record TypedStep(string Kind, string Title, string Note, string What, string Called, string Per, IReadOnlyDictionary<string, string> Aims)
{
    public StepKind Known => StepKinds.Named(Kind) ?? StepKind.Stir;

    public static TypedStep New(StepKind kind) => new(kind.Key(), "", "", kind == StepKind.Add ? "culture" : "", "", kind == StepKind.Add ? "% of milk" : "", new Dictionary<string, string>(StringComparer.Ordinal));

    public static TypedStep Of(StepDraft draft) => new(draft.Kind, draft.Title, draft.Note, draft.What, draft.Called, draft.Per, TypedRecipe.Texts(draft.Aims));

    public static TypedStep Read(Posted posted, int number)
    {
        var prefix = string.Create(CultureInfo.InvariantCulture, $"s{number}-");
        var kind = posted.Text(prefix + "kind");
        return new(
            kind, posted.Text(prefix + "title"), posted.Text(prefix + "note"), posted.Text(prefix + "what"), posted.Text(prefix + "called"), posted.Text(prefix + "per"),
            TypedRecipe.Values(posted, prefix, StepShape.Of(StepKinds.Named(kind) ?? StepKind.Stir)));
    }

    public StepDraft ToDraft(string path, List<Problem> problems) =>
        new() { Kind = Kind, Title = Title, Note = Note, What = What, Called = Called, Per = Per, Aims = TypedRecipe.Aims(Aims, path, problems) };
}
