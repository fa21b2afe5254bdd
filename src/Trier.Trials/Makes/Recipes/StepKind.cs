namespace Trier.Trials.Makes.Recipes;

/// <summary>The kinds of step a recipe is made of.</summary>
public enum StepKind
{
    /// <summary>Milk is warmed.</summary>
    Heat,

    /// <summary>Something goes into the vat: see <see cref="Addition"/>.</summary>
    Add,

    /// <summary>The milk is left to the culture.</summary>
    Ripen,

    /// <summary>Rennet goes in; the step ends at the cut.</summary>
    Renneting,

    /// <summary>Curd is cut, or milled.</summary>
    Cut,

    /// <summary>Curd is stirred at a held temperature.</summary>
    Stir,

    /// <summary>Curd is stirred while it gets warmer.</summary>
    Cook,

    /// <summary>Curd is left to sink.</summary>
    Settle,

    /// <summary>Whey is drawn.</summary>
    Drain,

    /// <summary>Curd goes into moulds.</summary>
    Hoop,

    /// <summary>Curd is pressed.</summary>
    Press,

    /// <summary>Curd or wheels are turned.</summary>
    Turn,

    /// <summary>Wheels lie in brine.</summary>
    Brine,

    /// <summary>Dry salt on curd.</summary>
    Salt,

    /// <summary>Wheels dry off before the cave.</summary>
    Dry,
}

/// <summary>Words for <see cref="StepKind"/>.</summary>
public static class StepKinds
{
    /// <summary>The kind as a recipe file writes it.</summary>
    /// <param name="kind">The kind.</param>
    public static string Key(this StepKind kind) => kind.ToString().ToLowerInvariant();

    /// <summary>The kind of this name, or null.</summary>
    /// <param name="key">The name in a file or a form; case does not matter.</param>
    public static StepKind? Named(string? key) =>
        Enum.GetValues<StepKind>().Where(kind => string.Equals(kind.Key(), key?.Trim(), StringComparison.OrdinalIgnoreCase)).Select(kind => (StepKind?)kind).FirstOrDefault();

    /// <summary>What is done, as the heading of a step without a title of its own.</summary>
    /// <param name="kind">The kind.</param>
    public static string Heading(this StepKind kind) => kind switch
    {
        StepKind.Heat => "Warm the milk",
        StepKind.Add => "Add",
        StepKind.Ripen => "Let it ripen",
        StepKind.Renneting => "Add the rennet",
        StepKind.Cut => "Cut the curd",
        StepKind.Stir => "Stir",
        StepKind.Cook => "Cook the curd",
        StepKind.Settle => "Let the curd settle",
        StepKind.Drain => "Draw the whey",
        StepKind.Hoop => "Fill the moulds",
        StepKind.Press => "Press",
        StepKind.Turn => "Turn",
        StepKind.Brine => "Brine",
        StepKind.Salt => "Salt the curd",
        _ => "Dry off",
    };

    /// <summary>What was done, as the key a maker touches: "Cut", "Pressed".</summary>
    /// <param name="kind">The kind.</param>
    public static string Done(this StepKind kind) => kind switch
    {
        StepKind.Heat => "Warm",
        StepKind.Add => "Added",
        StepKind.Ripen => "Ripened",
        StepKind.Renneting => "Set",
        StepKind.Cut => "Cut",
        StepKind.Stir => "Stirred",
        StepKind.Cook => "Cooked",
        StepKind.Settle => "Settled",
        StepKind.Drain => "Drawn",
        StepKind.Hoop => "Filled",
        StepKind.Press => "Pressed",
        StepKind.Turn => "Turned",
        StepKind.Brine => "Brined",
        StepKind.Salt => "Salted",
        _ => "Dry",
    };
}
