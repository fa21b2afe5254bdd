using Trier.Dairy.Workings;

namespace Trier.Dairy.Tests;

/// <summary>A check: what the expected value rests on, and how this library computes it.</summary>
public sealed record WorkedExample(string Id, string Source, Status Status, Func<double> Compute);
