using System.Globalization;
using System.Text.RegularExpressions;
using Trier.Trials.Makes.Recipes;

namespace Trier.Trials.Makes.Sheets;

/// <summary>How numbers are written for one reader: the units and the decimal sign, the same on every page, print and line of a terminal.</summary>
/// <param name="Units">The units.</param>
/// <param name="DecimalSign">The decimal sign, ',' or '.'.</param>
public readonly partial record struct Notation(UnitSystem Units, char DecimalSign)
{
    private const string Value = @"-?\d+(?:\.\d+)?";

    /// <summary>Metric with a decimal point: a terminal, and facts that are compared with each other.</summary>
    public static Notation Plain { get; } = new(UnitSystem.Metric, '.');

    /// <summary>A number with at most three decimals.</summary>
    /// <param name="value">The number.</param>
    public string Number(double value) => Signed(Recipes.Write.Number(value));

    /// <summary>A pH, two decimals.</summary>
    /// <param name="value">The pH.</param>
    public string Ph(double value) => Signed(value.ToString("0.00", CultureInfo.InvariantCulture));

    /// <summary>A quantity with its unit.</summary>
    /// <param name="measure">What sort.</param>
    /// <param name="value">In the measure's base unit.</param>
    public string Write(Measure measure, double value) => FigureText.Write(measure, value, Units, DecimalSign);

    /// <summary>A stretch of time.</summary>
    /// <param name="minutes">Minutes.</param>
    public string Minutes(double minutes) => Signed(Recipes.Write.Duration(TimeSpan.FromMinutes(minutes)));

    /// <summary>A difference between two values of a target; differences of temperature have no zero of their own.</summary>
    /// <param name="target">The target.</param>
    /// <param name="gap">In the target's unit.</param>
    public string Gap(Target target, double gap) => target.Field.Unit == "°C"
        ? Units == UnitSystem.UsCustomary ? $"{Tenth(gap * 1.8)} °F" : $"{Tenth(gap)} °C"
        : target == Target.Ph ? Ph(gap) : AimText.Value(target, gap, this);

    /// <summary>
    /// A sentence of the core as this reader reads it. The core writes metric units and a decimal point; quantities that stand in the sentence as number and unit
    /// are turned over, a range with its one unit too. What a sentence calls a difference keeps its degrees, in steps of the other scale.
    /// </summary>
    /// <param name="sentence">A sentence, not a name or a source.</param>
    public string Say(string sentence)
    {
        var told = sentence;
        if (Units == UnitSystem.UsCustomary)
        {
            told = Difference().Replace(told, match => $"{Three(Read(match, "b") * 1.8)} °F");
            told = Quantity().Replace(told, match =>
            {
                var unit = match.Groups["unit"].Value;
                var high = $"{Three(Turned(Read(match, "b"), unit))} {Called(unit)}";
                return match.Groups["a"].Success ? $"{Three(Turned(Read(match, "a"), unit))} {match.Groups["link"].Value} {high}" : high;
            });
        }

        return DecimalPoint().Replace(told, DecimalSign.ToString());
    }

    private string Signed(string number) => number.Replace('.', DecimalSign);

    private string Tenth(double value) => Signed(Math.Round(value, 1).ToString("0.#", CultureInfo.InvariantCulture));

    private static double Read(Match match, string group) => double.Parse(match.Groups[group].ValueSpan, CultureInfo.InvariantCulture);

    private static string Three(double value)
    {
        var decimals = value == 0 ? 0 : Math.Clamp(2 - (int)Math.Floor(Math.Log10(Math.Abs(value))), 0, 6);
        return Math.Round(value, decimals).ToString("0.######", CultureInfo.InvariantCulture);
    }

    private static double Turned(double value, string unit) => unit switch
    {
        "°C" => (value * 1.8) + 32,
        "L" => value / 3.785411784,
        "kg" => value / 0.45359237,
        "cm" => value / 2.54,
        _ => value / 6.894757293168,
    };

    private static string Called(string unit) => unit switch { "°C" => "°F", "L" => "gal", "kg" => "lb", "cm" => "in", _ => "psi" };

    [GeneratedRegex(@"(?<![\d.])(?<b>" + Value + @") °C(?= (?:more|higher|above|below|off|too)\b)", RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex Difference();

    [GeneratedRegex(@"(?<![\d.])(?:(?<a>" + Value + @") (?<link>to|and at most|and) )?(?<b>" + Value + @") (?<unit>°C|kg|cm|L|kPa)(?![\w/])", RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex Quantity();

    // A date or a version has two points and is left alone.
    [GeneratedRegex(@"(?<=(?<![\d.])\d+)\.(?=\d+(?!\d*\.\d))", RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex DecimalPoint();
}
