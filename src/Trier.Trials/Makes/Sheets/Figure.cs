using Working = Trier.Dairy.Workings.Working;

namespace Trier.Trials.Makes.Sheets;

/// <summary>One number of a sheet, with how it came about.</summary>
/// <param name="Name">What it is, in a maker's words.</param>
/// <param name="Measure">What sort of quantity.</param>
/// <param name="Value">The value in the measure's base unit.</param>
/// <param name="Working">Formula, inputs, source and status.</param>
/// <param name="Low">Low end of its band, or null where the arithmetic is exact.</param>
/// <param name="High">High end of its band, or null.</param>
/// <param name="Poured">Whether it is measured out in the kitchen, so that a spoon's rounding matters.</param>
public sealed record Figure(string Name, Measure Measure, double Value, Working Working, double? Low = null, double? High = null, bool Poured = false)
{
    /// <summary>The nearest spoon, where the figure is a small poured volume; else null.</summary>
    public Spoonful? Spoon => Poured && Measure == Measure.Volume ? Spoonful.Nearest(Value) : null;

    /// <summary>The figure as text, its band included.</summary>
    /// <param name="notation">How numbers are written.</param>
    public string InWords(Notation notation)
    {
        var likely = notation.Write(Measure, Value);
        if (Low is not { } low || High is not { } high) return likely;
        var (from, to) = (notation.Write(Measure, low), notation.Write(Measure, high));
        return from == to ? likely : $"about {likely} ({from} to {to})";
    }
}
