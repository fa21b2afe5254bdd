using System.CommandLine;
using System.Globalization;

namespace Trier.Commands.Makes;

/// <summary>A number with its unit as typed on the command line: 12L, 3gal, 52C, 125F, 10kg, 14.5cm. Held in the first unit of its kind.</summary>
internal sealed record Measured(string Words, string Base, IReadOnlyDictionary<string, Func<double, double>> Units)
{
    public static readonly Measured Volume = Of("litres, millilitres or gallons", "L", ("L", 1), ("mL", 1e-3), ("gal", 3.785411784), ("qt", 0.946352946));

    public static readonly Measured Mass = Of("kilograms, grams, pounds or ounces", "kg", ("kg", 1), ("g", 1e-3), ("lb", 0.45359237), ("oz", 0.028349523125));

    public static readonly Measured Length = Of("centimetres, millimetres or inches", "cm", ("cm", 1), ("mm", 0.1), ("in", 2.54));

    public static readonly Measured Pressure = Of("kilopascals, psi or kilograms-force a square centimetre", "kPa", ("kPa", 1), ("psi", 6.894757293168), ("kgf/cm2", 98.0665));

    public static readonly Measured Time = Of("minutes, hours or days", "min", ("min", 1), ("h", 60), ("d", 1440));

    public static readonly Measured Days = Of("days or weeks", "d", ("d", 1), ("wk", 7));

    public static readonly Measured Plain = Of("a number", "", ("", 1), ("%", 1));

    public static readonly Measured Temperature = new("degrees C or F", "°C", new Dictionary<string, Func<double, double>>(StringComparer.OrdinalIgnoreCase) { ["C"] = value => value, ["F"] = value => (value - 32) * 5 / 9 });

    /// <summary>An option of this kind.</summary>
    public Option<double?> Option(string name, string description, string? example = null)
    {
        var option = new Option<double?>(name)
        {
            Description = description,
            HelpName = example ?? (Base.Length == 0 ? "N" : $"N{Base}"),
            CustomParser = result =>
            {
                if (Read(result.Tokens[^1].Value) is { } value) return value;
                result.AddError($"{name} {result.Tokens[^1].Value}: write {Words}, as in {name} {example ?? $"12{Base}"}.");
                return null;
            },
        };
        return option;
    }

    /// <summary>The number in the base unit, or null. A bare number is in the base unit; a decimal comma is taken as a point.</summary>
    public double? Read(string text)
    {
        var trimmed = text.Trim();
        var end = trimmed.Length;
        while (end > 0 && !char.IsAsciiDigit(trimmed[end - 1]) && trimmed[end - 1] is not ('.' or ',')) end--;
        // "kgf/cm2" ends in a digit of its own.
        foreach (var unit in Units.Keys.Where(unit => unit.Length > 0 && char.IsAsciiDigit(unit[^1]) && trimmed.EndsWith(unit, StringComparison.OrdinalIgnoreCase))) end = trimmed.Length - unit.Length;
        var (number, name) = (trimmed[..end].Trim().Replace(',', '.'), trimmed[end..].Trim());
        if (name.Length == 0) name = Base;
        return Units.TryGetValue(name, out var convert) && double.TryParse(number, NumberStyles.AllowLeadingSign | NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out var value) ? convert(value) : null;
    }

    private static Measured Of(string words, string first, params (string Unit, double Factor)[] units) =>
        new(words, first, units.ToDictionary(unit => unit.Unit, unit => (Func<double, double>)(value => value * unit.Factor), StringComparer.OrdinalIgnoreCase));
}
