using System.Collections.Immutable;
using Trier.Trials.Verdicts.Findings;

namespace Trier.Trials.Verdicts;

/// <summary>
/// What was asked besides places, liking and salt, as counts alone: how many, wheel by wheel, and never who. A published record holds these in the
/// place of the answers.
/// </summary>
/// <param name="Properties">Properties other than salt, in the order of their names.</param>
/// <param name="Again">How many would serve each wheel again; empty where it was not asked.</param>
/// <param name="Unclear">Ballots on paper on which a place could not be read for certain.</param>
public sealed record AskedCounts(ImmutableArray<PropertyCounts> Properties, ImmutableArray<AgainFinding> Again, int Unclear);

/// <summary>One property, counted.</summary>
/// <param name="Property">What was asked about, in the host's word: "firmness".</param>
/// <param name="Wheels">A line a wheel.</param>
public sealed record PropertyCounts(string Property, ImmutableArray<AmountCounts> Wheels);

/// <summary>How one wheel was found.</summary>
/// <param name="Id">The wheel.</param>
/// <param name="TooLittle">How many found too little.</param>
/// <param name="JustRight">How many found it just right.</param>
/// <param name="TooMuch">How many found too much.</param>
public sealed record AmountCounts(string Id, int TooLittle, int JustRight, int TooMuch);
