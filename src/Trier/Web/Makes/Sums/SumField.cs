using System.Collections.Immutable;
using DairyField = Trier.Dairy.Workings.Field;

namespace Trier.Web.Makes.Sums;

/// <summary>One entry of a sum: a number with its ranges, or a choice.</summary>
/// <param name="Key">Its name in the address.</param>
/// <param name="Label">What it is called, without its unit.</param>
internal sealed record SumField(string Key, string Label)
{
    /// <summary>Unit, possible and usual range; null for a choice.</summary>
    public DairyField? Ranges { get; init; }

    /// <summary>What is taken where nothing is typed, in the unit of <see cref="Ranges"/>.</summary>
    public double? Usual { get; init; }

    /// <summary>Whether it may stay empty though nothing is taken for it.</summary>
    public bool MayBeEmpty { get; init; }

    /// <summary>A few words beside the label.</summary>
    public string? Hint { get; init; }

    /// <summary>What can be chosen, the usual first; empty for a number.</summary>
    public ImmutableArray<(string Value, string Words)> Choices { get; init; } = [];

    /// <summary>A number with the ranges of the Dairy room under the form's own name.</summary>
    public static SumField Number(string key, string label, DairyField ranges, double? usual = null, string? hint = null, bool mayBeEmpty = false) =>
        new(key, label) { Ranges = ranges with { Name = label }, Usual = usual, Hint = hint, MayBeEmpty = mayBeEmpty };

    public static SumField Choice(string key, string label, params (string Value, string Words)[] choices) => new(key, label) { Choices = [.. choices] };

    public string LabelIn(MakerUnits units)
    {
        var unit = Ranges?.Unit ?? "";
        var words = (unit, units.Us) switch { ("L", true) => "US gallons", ("L", false) => "litres", ("h", _) => "hours", ("min", _) => "minutes", ("W", _) => "watts", ("cm", true) => "inches", _ => units.UnitOf(unit) };
        return words.Length == 0 ? Label : $"{Label}, {words}";
    }

    public string? HintIn(MakerUnits units) => Usual is { } usual
        ? $"{units.Number(Math.Round(units.FromCore(Ranges!.Unit, usual), 2))} if empty{(Hint is null ? "" : $"; {Hint}")}"
        : MayBeEmpty ? Hint ?? "may stay empty" : Hint;
}

/// <summary>Entries that belong together.</summary>
/// <param name="Legend">What they are; empty where the sum has one group only.</param>
/// <param name="Fields">The entries.</param>
/// <param name="Folded">Whether it is folded away while nothing of it is typed.</param>
internal sealed record SumGroup(string Legend, ImmutableArray<SumField> Fields, bool Folded = false);
