using Trier.Dairy.Acidity;
using Trier.Dairy.Rennet;
using Field = Trier.Dairy.Workings.Field;

namespace Trier.Trials.Makes.Recipes;

/// <summary>What goes into the vat besides milk and rennet.</summary>
public enum AdditionKind
{
    /// <summary>An acidifying culture.</summary>
    Culture,

    /// <summary>Propionic culture, for eyes.</summary>
    PropionicCulture,

    /// <summary>Calcium chloride, counted without water.</summary>
    CalciumChloride,

    /// <summary>Lipase.</summary>
    Lipase,

    /// <summary>Colour.</summary>
    Colour,

    /// <summary>Lysozyme, from egg white.</summary>
    Lysozyme,

    /// <summary>Water.</summary>
    Water,

    /// <summary>Anything else, named by the maker.</summary>
    Other,
}

/// <summary>What a dose is counted in.</summary>
public enum DoseUnit
{
    /// <summary>Per cent of the milk, by mass.</summary>
    PercentOfMilk,

    /// <summary>Grams to a litre of milk.</summary>
    GramsPerLitre,

    /// <summary>Millilitres to a litre of milk.</summary>
    MillilitresPerLitre,

    /// <summary>Living cells in a millilitre of milk.</summary>
    CellsPerMillilitre,

    /// <summary>The packet's own units to 100 litres of milk.</summary>
    UnitsPer100Litres,
}

/// <summary>What an adding step adds.</summary>
/// <param name="Kind">What it is.</param>
/// <param name="Name">What the maker calls it; empty for the plain name of the kind.</param>
/// <param name="Per">What its dose is counted in.</param>
public sealed record Addition(AdditionKind Kind, string Name, DoseUnit Per)
{
    /// <summary>The maker's name, or the plain name of the kind.</summary>
    public string Called => Name.Length > 0 ? Name : Words(Kind);

    /// <summary>The plain name of a kind.</summary>
    /// <param name="kind">The kind.</param>
    public static string Words(AdditionKind kind) => kind switch
    {
        AdditionKind.PropionicCulture => "propionic culture",
        AdditionKind.CalciumChloride => "calcium chloride",
        AdditionKind.Other => "something else",
        _ => kind.ToString().ToLowerInvariant(),
    };

    /// <summary>A unit of doses as a recipe file writes it.</summary>
    /// <param name="per">The unit.</param>
    public static string Words(DoseUnit per) => per switch
    {
        DoseUnit.PercentOfMilk => "% of milk",
        DoseUnit.GramsPerLitre => "g/L",
        DoseUnit.MillilitresPerLitre => "mL/L",
        DoseUnit.CellsPerMillilitre => "cfu/mL",
        _ => "units/100 L",
    };

    /// <summary>The kind of this name, or null.</summary>
    /// <param name="text">The name.</param>
    public static AdditionKind? KindNamed(string? text) =>
        Enum.GetValues<AdditionKind>().Where(kind => string.Equals(Words(kind), text?.Trim(), StringComparison.OrdinalIgnoreCase)).Select(kind => (AdditionKind?)kind).FirstOrDefault();

    /// <summary>The unit of this name, or null.</summary>
    /// <param name="text">The name.</param>
    public static DoseUnit? UnitNamed(string? text) =>
        Enum.GetValues<DoseUnit>().Where(per => string.Equals(Words(per), text?.Trim(), StringComparison.OrdinalIgnoreCase)).Select(per => (DoseUnit?)per).FirstOrDefault();

    /// <summary>The field of the dose: its unit, what is possible and what is usual (usual ranges: common practice).</summary>
    public Field DoseField => (Kind, Per) switch
    {
        (AdditionKind.Water, DoseUnit.PercentOfMilk) => Dose("% of the milk", 200, 5, 60),
        (AdditionKind.CalciumChloride, DoseUnit.GramsPerLitre) => Named(RennetFields.Calcium),
        (AdditionKind.Lipase, DoseUnit.GramsPerLitre) => Named(RennetFields.Lipase),
        (AdditionKind.Lysozyme, DoseUnit.GramsPerLitre) => Dose("g/L", 1, 0.01, 0.04),
        (AdditionKind.Colour, DoseUnit.MillilitresPerLitre) => Dose("mL/L", 5, 0.02, 0.4),
        (_, DoseUnit.CellsPerMillilitre) => Named(AcidityFields.CellsPerMillilitre),
        (_, DoseUnit.PercentOfMilk) => Named(AcidityFields.BulkStarter),
        (_, DoseUnit.GramsPerLitre) => Dose("g/L", 100, 0.002, 30),
        (_, DoseUnit.MillilitresPerLitre) => Dose("mL/L", 1000, 0.01, 200),
        _ => Dose("units/100 L", 10_000, 0.5, 50),
    };

    private Field Dose(string unit, double highest, double from, double to) => new("dose", $"Dose of {Called}", unit, 0, highest, from, to, LowestExcluded: true);

    private Field Named(Field field) => field with { Key = "dose", Name = $"Dose of {Called}" };
}
