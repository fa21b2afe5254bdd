using System.Collections.Immutable;

namespace Trier.Trials.Verdicts.Findings;

/// <summary>Whether a property other than salt was just right, wheel by wheel, counted and told as salt is.</summary>
/// <param name="Property">What was asked about, in the host's word: "firmness".</param>
/// <param name="Wheels">A line a wheel, in the verdict's order.</param>
public sealed record PropertyFinding(string Property, ImmutableArray<SaltFinding> Wheels);

/// <summary>How many would serve a wheel again.</summary>
/// <param name="Id">The wheel.</param>
/// <param name="Yes">How many said yes.</param>
/// <param name="Answers">How many answered.</param>
public sealed record AgainFinding(string Id, int Yes, int Answers);

/// <summary>How often one word was ticked.</summary>
/// <param name="Word">The word.</param>
/// <param name="Ticks">Tasters who ticked it, wheel by wheel, in the verdict's order.</param>
public sealed record WordFinding(string Word, ImmutableArray<int> Ticks);
