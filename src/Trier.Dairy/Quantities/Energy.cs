using System.Globalization;

namespace Trier.Dairy.Quantities;

/// <summary>An energy.</summary>
public readonly record struct Energy : IComparable<Energy>
{
    private Energy(double joules) => Joules = Finite.Required(joules, nameof(joules));

    /// <summary>In joules.</summary>
    public double Joules { get; }

    /// <summary>In kilojoules.</summary>
    public double Kilojoules => Joules / 1e3;

    /// <summary>In kilowatt hours.</summary>
    public double KilowattHours => Joules / 3.6e6;

    /// <summary>From joules; any finite number.</summary>
    /// <param name="value">The number.</param>
    public static Energy FromJoules(double value) => new(value);

    /// <summary>The sum.</summary>
    public static Energy operator +(Energy left, Energy right) => new(left.Joules + right.Joules);

    /// <summary>The difference; may be negative.</summary>
    public static Energy operator -(Energy left, Energy right) => new(left.Joules - right.Joules);

    /// <summary>A multiple.</summary>
    public static Energy operator *(Energy left, double factor) => new(left.Joules * factor);

    /// <summary>The ratio of two.</summary>
    public static double operator /(Energy left, Energy right) => left.Joules / right.Joules;

    /// <summary>Whether the left one is smaller.</summary>
    public static bool operator <(Energy left, Energy right) => left.Joules < right.Joules;

    /// <summary>Whether the left one is larger.</summary>
    public static bool operator >(Energy left, Energy right) => left.Joules > right.Joules;

    /// <summary>Whether the left one is smaller or equal.</summary>
    public static bool operator <=(Energy left, Energy right) => left.Joules <= right.Joules;

    /// <summary>Whether the left one is larger or equal.</summary>
    public static bool operator >=(Energy left, Energy right) => left.Joules >= right.Joules;

    /// <inheritdoc/>
    public int CompareTo(Energy other) => Joules.CompareTo(other.Joules);

    /// <summary>The number in joules with its unit, in the invariant culture.</summary>
    public override string ToString() => Joules.ToString("0.######", CultureInfo.InvariantCulture) + " J";
}
