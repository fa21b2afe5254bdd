namespace Trier.Dairy.Quantities;

/// <summary>Keeps numbers that are no numbers out of quantities.</summary>
internal static class Finite
{
    public static double Required(double value, string name) =>
        double.IsFinite(value)
            ? value
            : throw new ArgumentOutOfRangeException(name, value, $"{name} is {value}; a quantity holds a finite number.");
}
