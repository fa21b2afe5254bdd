namespace Trier.Trials.Common;

/// <summary>Names one wheel for good, in whatever trials it takes part.</summary>
/// <param name="Value">Made by the shell.</param>
public readonly record struct WheelId(Guid Value);

/// <summary>Names one trial.</summary>
/// <param name="Value">Made by the shell.</param>
public readonly record struct TrialId(Guid Value);

/// <summary>Names one taster of one trial.</summary>
/// <param name="Value">Made by the shell.</param>
public readonly record struct TasterId(Guid Value);

/// <summary>Names one send of a ballot. Made by the sender, so that the same send twice is recognised.</summary>
/// <param name="Value">Made by the sender's page.</param>
public readonly record struct RevisionId(Guid Value);

/// <summary>Names one recipe, whatever its version.</summary>
/// <param name="Value">Made by the shell.</param>
public readonly record struct RecipeId(Guid Value);

/// <summary>Names one make: a vat-day by one recipe version.</summary>
/// <param name="Value">Made by the shell.</param>
public readonly record struct MakeId(Guid Value);

/// <summary>Names one thing on the shelf: a brine, a lot, an instrument.</summary>
/// <param name="Value">Made by the shell.</param>
public readonly record struct ThingId(Guid Value);
