namespace Trier.Dairy.Workings;

/// <summary>One named number of a working: an input or a result.</summary>
/// <param name="Name">What it is, in a maker's words.</param>
/// <param name="Value">The number.</param>
/// <param name="Unit">Its unit; empty for a pure number.</param>
public sealed record Given(string Name, double Value, string Unit = "");
