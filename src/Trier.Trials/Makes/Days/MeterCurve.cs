using System.Collections.Immutable;

namespace Trier.Trials.Makes.Days;

/// <summary>What a meter wrote over time, thinned to what can be drawn.</summary>
/// <param name="Source">The file's name.</param>
/// <param name="Target">Key of what was measured: "pH" or "celsius".</param>
/// <param name="Points">The readings in order of time.</param>
/// <param name="Read">How many readings the file held.</param>
/// <param name="Part">The part of a split vat it hung in, or null for the whole vat.</param>
public sealed record MeterCurve(string Source, string Target, ImmutableArray<MeterPoint> Points, int Read, int? Part = null);

/// <summary>A reading of a meter.</summary>
/// <param name="When">When.</param>
/// <param name="Value">The value.</param>
public readonly record struct MeterPoint(DateTimeOffset When, double Value);
