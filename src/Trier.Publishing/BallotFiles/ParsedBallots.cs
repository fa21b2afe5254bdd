using System.Collections.Immutable;
using Trier.Trials.Tastings;

namespace Trier.Publishing.BallotFiles;

/// <summary>What every layout is brought to before a record is made of it.</summary>
/// <param name="Codes">All codes of the file, each once, in the order of the file.</param>
/// <param name="Ballots">The ballots, in the order of the file.</param>
/// <param name="Cautions">What was noticed and is no fault.</param>
internal sealed record ParsedBallots(ImmutableArray<string> Codes, ImmutableArray<ParsedBallot> Ballots, ImmutableArray<string> Cautions);

/// <summary>One ballot as it stands in the file.</summary>
/// <param name="Taster">Who.</param>
/// <param name="Groups">Codes, best first, tied inside a group.</param>
/// <param name="Served">Codes the taster had, placed or not; those left out of the groups were served without a place.</param>
/// <param name="ServingOrder">Codes in serving order, or empty.</param>
/// <param name="Answers">What was said of single codes.</param>
internal sealed record ParsedBallot(
    string Taster,
    ImmutableArray<ImmutableArray<string>> Groups,
    ImmutableArray<string> Served,
    ImmutableArray<string> ServingOrder,
    ImmutableSortedDictionary<string, SampleAnswer> Answers);
