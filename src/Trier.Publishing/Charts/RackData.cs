using System.Collections.Immutable;

namespace Trier.Publishing.Charts;

/// <summary>Every ballot, ready to be drawn or laid out as a table.</summary>
/// <param name="Groups">Ballots by what the tasters declared, those apart last.</param>
/// <param name="Apart">The group that is in no count, one of <paramref name="Groups"/>; or null.</param>
/// <param name="Places">The number of places.</param>
/// <param name="Keys">The wheels by name and sign.</param>
/// <param name="Reading">How to read it, in one sentence.</param>
/// <param name="Notes">What signs, ties and torn ends mean; empty where there are none.</param>
/// <param name="Title">What it shows.</param>
/// <param name="Description">What it says.</param>
public sealed record RackData(ImmutableArray<RackGroup> Groups, RackGroup? Apart, int Places, ImmutableArray<RackKey> Keys, string Reading, string Notes, string Title, string Description);
