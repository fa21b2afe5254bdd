namespace Trier.Trials.Makes.Sheets;

/// <summary>The nearest measuring spoon and how far it is off. A US teaspoon is 4.92892159375 mL, exact by definition; eighths are the smallest common spoon.</summary>
/// <param name="Eighths">Eighths of a teaspoon, at least one.</param>
/// <param name="Off">How much too much the spoon is, as a share of the volume; below zero for too little.</param>
public sealed record Spoonful(int Eighths, double Off)
{
    private const double TeaspoonLitres = 0.00492892159375;
    private const int Most = 8 * 6;

    /// <summary>The nearest spoonful, or null where the volume is too large for spoons or less than half the smallest one.</summary>
    /// <param name="litres">The volume in litres.</param>
    public static Spoonful? Nearest(double litres)
    {
        var eighths = (int)Math.Clamp(Math.Round(litres / TeaspoonLitres * 8, MidpointRounding.AwayFromZero), 0, Most + 1);
        return eighths is 0 or > Most ? null : new(eighths, (eighths * TeaspoonLitres / 8 / litres) - 1);
    }

    /// <summary>In words: "7/8 tsp, 5 % too much".</summary>
    public string InWords()
    {
        var (whole, part) = (Eighths / 8, (Eighths % 8) switch { 0 => "", 2 => "1/4", 4 => "1/2", 6 => "3/4", var odd => $"{FigureText.Whole(odd)}/8" });
        var spoon = (whole, part) switch { (0, _) => part, (_, "") => FigureText.Whole(whole), _ => $"{FigureText.Whole(whole)} {part}" };
        var percent = (int)Math.Round(Math.Abs(Off) * 100);
        return percent == 0 ? $"{spoon} tsp" : $"{spoon} tsp, {FigureText.Whole(percent)} % {(Off > 0 ? "too much" : "too little")}";
    }
}
