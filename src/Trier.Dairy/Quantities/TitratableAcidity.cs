using System.Globalization;

namespace Trier.Dairy.Quantities;

/// <summary>Titratable acidity, kept as grams of lactic acid in 100 mL (per cent by mass and volume). Read: 1 degree SH = 2.5 Th = 2.25 D = 0.0225 % [Hanna].</summary>
public readonly record struct TitratableAcidity : IComparable<TitratableAcidity>
{
    private TitratableAcidity(double percentLactic) => PercentLactic = Finite.Required(percentLactic, nameof(percentLactic));

    /// <summary>In per cent lactic acid, g per 100 mL.</summary>
    public double PercentLactic { get; }

    /// <summary>In degrees Soxhlet-Henkel (0.25 N alkali).</summary>
    public double DegreesSoxhletHenkel => PercentLactic / 0.0225;

    /// <summary>In degrees Thoerner (0.1 N alkali).</summary>
    public double DegreesThoerner => PercentLactic / 0.009;

    /// <summary>In degrees Dornic (N/9 alkali).</summary>
    public double DegreesDornic => PercentLactic / 0.01;

    /// <summary>From per cent lactic acid, g per 100 mL; any finite number.</summary>
    /// <param name="value">The number.</param>
    public static TitratableAcidity FromPercentLactic(double value) => new(value);

    /// <summary>From degrees Soxhlet-Henkel (0.25 N alkali); any finite number.</summary>
    /// <param name="value">The number.</param>
    public static TitratableAcidity FromDegreesSoxhletHenkel(double value) => new(value * 0.0225);

    /// <summary>From degrees Thoerner (0.1 N alkali); any finite number.</summary>
    /// <param name="value">The number.</param>
    public static TitratableAcidity FromDegreesThoerner(double value) => new(value * 0.009);

    /// <summary>From degrees Dornic (N/9 alkali); any finite number.</summary>
    /// <param name="value">The number.</param>
    public static TitratableAcidity FromDegreesDornic(double value) => new(value * 0.01);

    /// <summary>The sum.</summary>
    public static TitratableAcidity operator +(TitratableAcidity left, TitratableAcidity right) => new(left.PercentLactic + right.PercentLactic);

    /// <summary>The difference; may be negative.</summary>
    public static TitratableAcidity operator -(TitratableAcidity left, TitratableAcidity right) => new(left.PercentLactic - right.PercentLactic);

    /// <summary>A multiple.</summary>
    public static TitratableAcidity operator *(TitratableAcidity left, double factor) => new(left.PercentLactic * factor);

    /// <summary>The ratio of two.</summary>
    public static double operator /(TitratableAcidity left, TitratableAcidity right) => left.PercentLactic / right.PercentLactic;

    /// <summary>Whether the left one is smaller.</summary>
    public static bool operator <(TitratableAcidity left, TitratableAcidity right) => left.PercentLactic < right.PercentLactic;

    /// <summary>Whether the left one is larger.</summary>
    public static bool operator >(TitratableAcidity left, TitratableAcidity right) => left.PercentLactic > right.PercentLactic;

    /// <summary>Whether the left one is smaller or equal.</summary>
    public static bool operator <=(TitratableAcidity left, TitratableAcidity right) => left.PercentLactic <= right.PercentLactic;

    /// <summary>Whether the left one is larger or equal.</summary>
    public static bool operator >=(TitratableAcidity left, TitratableAcidity right) => left.PercentLactic >= right.PercentLactic;

    /// <inheritdoc/>
    public int CompareTo(TitratableAcidity other) => PercentLactic.CompareTo(other.PercentLactic);

    /// <summary>The number in per cent lactic acid, g per 100 mL with its unit, in the invariant culture.</summary>
    public override string ToString() => PercentLactic.ToString("0.######", CultureInfo.InvariantCulture) + " % w/v";
}
