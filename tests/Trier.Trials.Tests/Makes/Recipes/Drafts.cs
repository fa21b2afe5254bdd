using Trier.Trials.Makes.Recipes;

namespace Trier.Trials.Tests.Makes.Recipes;

/// <summary>A small whole recipe that tests bend.</summary>
internal static class Drafts
{
    public static RecipeDraft Plain { get; } = new()
    {
        Name = "House tomme",
        Style = "tomme",
        Milk = "cow",
        Cheese = [new("moisturePercent", 43, 2), new("saltPercent", 1.5)],
        Steps =
        [
            Step("heat", ("celsius", 32), ("minutes", 35)),
            new() { Kind = "add", What = "culture", Per = "% of milk", Called = "mesophilic", Aims = [new("dose", 1)] },
            Step("ripen", ("minutes", 45), ("pH", 6.55)),
            Step("renneting", ("imcuPerLitre", 40), ("celsius", 32), ("flocMinutes", 14), ("multiplier", 3)),
            Step("cut", ("millimetres", 10), ("minutes", 10), ("restMinutes", 5), ("pH", 6.5)),
            Step("cook", ("celsius", 37), ("minutes", 30)),
            Step("hoop", ("diameterCentimetres", 16), ("pH", 6.38)),
            Step("press", ("kilopascals", 6), ("minutes", 360), ("pH", 5.4)),
            Step("brine", ("brinePercent", 20), ("celsius", 12), ("minutes", 540)),
            Step("dry", ("minutes", 2880)),
        ],
    };

    public static Recipe Recipe { get; } = Trier.Trials.Makes.Recipes.Recipe.Read(Plain).Value.Recipe;

    public static StepDraft Step(string kind, params (string Key, double Value)[] aims) => new() { Kind = kind, Aims = [.. aims.Select(aim => new AimDraft(aim.Key, aim.Value))] };

    public static RecipeDraft With(int index, StepDraft step) => Plain with { Steps = Plain.Steps.SetItem(index, step) };

    public static Recipe Read(this RecipeDraft draft) => Trier.Trials.Makes.Recipes.Recipe.Read(draft).Value.Recipe;
}
