using System.Globalization;

namespace Trier.Dairy.Quantities;

/// <summary>How much clotting activity a milk is given.</summary>
public readonly record struct RennetLevel : IComparable<RennetLevel>
{
    private RennetLevel(double imcuPerLitre) => ImcuPerLitre = Finite.Required(imcuPerLitre, nameof(imcuPerLitre));

    /// <summary>In IMCU per litre of milk.</summary>
    public double ImcuPerLitre { get; }

    /// <summary>From IMCU per litre of milk; any finite number.</summary>
    /// <param name="value">The number.</param>
    public static RennetLevel FromImcuPerLitre(double value) => new(value);

    /// <summary>A multiple.</summary>
    public static RennetLevel operator *(RennetLevel left, double factor) => new(left.ImcuPerLitre * factor);

    /// <summary>The ratio of two.</summary>
    public static double operator /(RennetLevel left, RennetLevel right) => left.ImcuPerLitre / right.ImcuPerLitre;

    /// <summary>Whether the left one is smaller.</summary>
    public static bool operator <(RennetLevel left, RennetLevel right) => left.ImcuPerLitre < right.ImcuPerLitre;

    /// <summary>Whether the left one is larger.</summary>
    public static bool operator >(RennetLevel left, RennetLevel right) => left.ImcuPerLitre > right.ImcuPerLitre;

    /// <summary>Whether the left one is smaller or equal.</summary>
    public static bool operator <=(RennetLevel left, RennetLevel right) => left.ImcuPerLitre <= right.ImcuPerLitre;

    /// <summary>Whether the left one is larger or equal.</summary>
    public static bool operator >=(RennetLevel left, RennetLevel right) => left.ImcuPerLitre >= right.ImcuPerLitre;

    /// <inheritdoc/>
    public int CompareTo(RennetLevel other) => ImcuPerLitre.CompareTo(other.ImcuPerLitre);

    /// <summary>The number in IMCU per litre of milk with its unit, in the invariant culture.</summary>
    public override string ToString() => ImcuPerLitre.ToString("0.######", CultureInfo.InvariantCulture) + " IMCU/L";
}
