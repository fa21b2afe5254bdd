using System.Collections.Immutable;
using Trier.Dairy.Milk;
using Trier.Dairy.Tables;
using Trier.Trials.Common;

namespace Trier.Trials.Makes.Recipes;

/// <summary>A recipe: what a cheese aims at and the steps to it. Frozen: a change makes another value.</summary>
public sealed record Recipe
{
    internal Recipe(string name, Style style, Species milk, string about, string credit, ImmutableArray<Aim> cheese, ImmutableArray<Step> steps)
    {
        Name = name;
        Style = style;
        Milk = milk;
        About = about;
        Credit = credit;
        Cheese = cheese;
        Steps = steps;
    }

    /// <summary>Name, at most 80 letters.</summary>
    public string Name { get; }

    /// <summary>Style, for the published tables.</summary>
    public Style Style { get; }

    /// <summary>Animal.</summary>
    public Species Milk { get; }

    /// <summary>What kind of cheese it gives; may be empty.</summary>
    public string About { get; }

    /// <summary>Whose recipe it is; may be empty.</summary>
    public string Credit { get; }

    /// <summary>Aims of the finished cheese and the vat milk.</summary>
    public ImmutableArray<Aim> Cheese { get; }

    /// <summary>The steps in order; at least one.</summary>
    public ImmutableArray<Step> Steps { get; }

    /// <summary>An aim of the finished cheese or the vat milk, or null.</summary>
    /// <param name="target">The target.</param>
    public Aim? this[Target target] => Cheese.FirstOrDefault(aim => aim.Target == target);

    /// <summary>Whether a step adds this.</summary>
    /// <param name="kind">What.</param>
    public bool Adds(AdditionKind kind) => Steps.Any(step => step.Addition?.Kind == kind);

    /// <summary>Checks a draft: every fault at once, each with its field and plausible range, or a recipe with what should be asked about it.</summary>
    /// <param name="draft">The draft.</param>
    public static Outcome<ReadRecipe> Read(RecipeDraft draft) => RecipeReading.Read(draft);

    /// <summary>A recipe written down earlier: ranges that have narrowed since do not make it unreadable.</summary>
    /// <param name="draft">The draft as it was kept.</param>
    /// <exception cref="InvalidOperationException">A kind or target is unknown: the record is damaged.</exception>
    public static Recipe Stored(RecipeDraft draft) => RecipeReading.Stored(draft);

    /// <summary>The recipe as a form or a file holds it.</summary>
    public RecipeDraft ToDraft() => new()
    {
        Name = Name,
        Style = StyleWords.Key(Style),
        Milk = Milk.ToString().ToLowerInvariant(),
        About = About,
        Credit = Credit,
        Cheese = [.. Cheese.Select(Draft)],
        Steps =
        [
            .. Steps.Select(step => new StepDraft
            {
                Kind = step.Kind.Key(),
                Title = step.Title,
                Note = step.Note,
                What = step.Addition is { } added ? Addition.Words(added.Kind) : "",
                Called = step.Addition?.Name ?? "",
                Per = step.Addition is { } dosed ? Addition.Words(dosed.Per) : "",
                Aims = [.. step.Aims.Select(Draft)],
            }),
        ],
    };

    /// <inheritdoc/>
    public bool Equals(Recipe? other) =>
        other is not null && Name == other.Name && Style == other.Style && Milk == other.Milk && About == other.About && Credit == other.Credit
        && Cheese.SequenceEqual(other.Cheese) && Steps.SequenceEqual(other.Steps);

    /// <inheritdoc/>
    public override int GetHashCode() => HashCode.Combine(Name, Style, Milk, Steps.Length);

    private static AimDraft Draft(Aim aim) => new(aim.Target.Key, aim.Value, aim.Tolerance);
}

/// <summary>A recipe that was read, with what is unusual about it.</summary>
/// <param name="Recipe">The recipe.</param>
/// <param name="Questions">Possible but unusual values; the maker is asked, nothing is refused.</param>
public sealed record ReadRecipe(Recipe Recipe, ImmutableArray<Problem> Questions);

/// <summary>Words for styles.</summary>
public static class StyleWords
{
    /// <summary>A style as a recipe file writes it: "pasta filata", "other pressed".</summary>
    /// <param name="style">The style.</param>
    public static string Key(Style style) => style switch
    {
        Style.PastaFilata => "pasta filata",
        Style.OtherPressed => "other pressed",
        _ => style.ToString().ToLowerInvariant(),
    };

    /// <summary>The style of this name, or null.</summary>
    /// <param name="text">The name.</param>
    public static Style? Named(string? text) =>
        Enum.GetValues<Style>().Where(style => string.Equals(Key(style), text?.Trim(), StringComparison.OrdinalIgnoreCase)).Select(style => (Style?)style).FirstOrDefault();
}
