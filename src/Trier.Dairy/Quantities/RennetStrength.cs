using System.Globalization;

namespace Trier.Dairy.Quantities;

/// <summary>The strength of a rennet in international milk-clotting units (ISO 11815 / IDF 157).</summary>
public readonly record struct RennetStrength : IComparable<RennetStrength>
{
    private RennetStrength(double imcuPerMillilitre) => ImcuPerMillilitre = Finite.Required(imcuPerMillilitre, nameof(imcuPerMillilitre));

    /// <summary>In IMCU per millilitre (or per gram of a powder).</summary>
    public double ImcuPerMillilitre { get; }

    /// <summary>From IMCU per millilitre (or per gram of a powder); any finite number.</summary>
    /// <param name="value">The number.</param>
    public static RennetStrength FromImcuPerMillilitre(double value) => new(value);

    /// <summary>A multiple.</summary>
    public static RennetStrength operator *(RennetStrength left, double factor) => new(left.ImcuPerMillilitre * factor);

    /// <summary>The ratio of two.</summary>
    public static double operator /(RennetStrength left, RennetStrength right) => left.ImcuPerMillilitre / right.ImcuPerMillilitre;

    /// <summary>Whether the left one is smaller.</summary>
    public static bool operator <(RennetStrength left, RennetStrength right) => left.ImcuPerMillilitre < right.ImcuPerMillilitre;

    /// <summary>Whether the left one is larger.</summary>
    public static bool operator >(RennetStrength left, RennetStrength right) => left.ImcuPerMillilitre > right.ImcuPerMillilitre;

    /// <summary>Whether the left one is smaller or equal.</summary>
    public static bool operator <=(RennetStrength left, RennetStrength right) => left.ImcuPerMillilitre <= right.ImcuPerMillilitre;

    /// <summary>Whether the left one is larger or equal.</summary>
    public static bool operator >=(RennetStrength left, RennetStrength right) => left.ImcuPerMillilitre >= right.ImcuPerMillilitre;

    /// <inheritdoc/>
    public int CompareTo(RennetStrength other) => ImcuPerMillilitre.CompareTo(other.ImcuPerMillilitre);

    /// <summary>The number in IMCU per millilitre (or per gram of a powder) with its unit, in the invariant culture.</summary>
    public override string ToString() => ImcuPerMillilitre.ToString("0.######", CultureInfo.InvariantCulture) + " IMCU/mL";
}
