using System.Globalization;

namespace Trier.Dairy.Workings;

/// <summary>An input: its name, unit, the range that is possible and the range that is usual.</summary>
/// <remarks>Outside the possible range an input is refused; outside the usual range it is asked about.</remarks>
/// <param name="Key">A stable key, lower case with hyphens.</param>
/// <param name="Name">The name in a maker's words, with a capital.</param>
/// <param name="Unit">The unit of the four bounds.</param>
/// <param name="Lowest">The lowest possible value.</param>
/// <param name="Highest">The highest possible value.</param>
/// <param name="UsuallyFrom">The low end of the usual range.</param>
/// <param name="UsuallyTo">The high end of the usual range.</param>
/// <param name="LowestExcluded">Whether the lowest value itself is impossible (a volume of 0).</param>
public sealed record Field(
    string Key,
    string Name,
    string Unit,
    double Lowest,
    double Highest,
    double UsuallyFrom,
    double UsuallyTo,
    bool LowestExcluded = false)
{
    /// <summary>The problem with this value, or null if it is possible.</summary>
    /// <param name="value">The value in <see cref="Unit"/>.</param>
    public Problem? ProblemWith(double value)
    {
        var inside = value <= Highest && (LowestExcluded ? value > Lowest : value >= Lowest);
        return inside
            ? null
            : new Problem(
                ProblemKind.Impossible,
                this,
                $"{Name} is {Show(value)}; it must be {(LowestExcluded ? "above" : "at least")} {Number(Lowest)} and at most {Show(Highest)} (usual: {Number(UsuallyFrom)} to {Show(UsuallyTo)}).");
    }

    /// <summary>The question about this value, or null if it is usual.</summary>
    /// <param name="value">The value in <see cref="Unit"/>.</param>
    public Question? QuestionAbout(double value) =>
        value >= UsuallyFrom && value <= UsuallyTo
            ? null
            : new Question(this, $"{Name} is {Show(value)}, where {Number(UsuallyFrom)} to {Show(UsuallyTo)} is usual: is that right?");

    internal string Show(double value) => Unit.Length == 0 ? Number(value) : $"{Number(value)} {Unit}";

    internal static string Number(double value) => value.ToString("0.####", CultureInfo.InvariantCulture);
}
