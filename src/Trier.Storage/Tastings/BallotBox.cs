using System.Collections.Immutable;
using Trier.Trials.Common;
using Trier.Trials.Tastings;

namespace Trier.Storage.Tastings;

/// <summary>All ballots of one trial. Never changed: a further send makes a new box.</summary>
/// <param name="Arrived">How many sends have arrived; the last one's place in the order of arrival.</param>
/// <param name="ByTaster">Each taster's revisions in order of arrival.</param>
internal sealed record BallotBox(int Arrived, ImmutableDictionary<TasterId, ImmutableArray<BallotRevision>> ByTaster)
{
    public static BallotBox Empty { get; } = new(0, ImmutableDictionary<TasterId, ImmutableArray<BallotRevision>>.Empty);

    public ImmutableArray<BallotRevision> Of(TasterId taster) => ByTaster.GetValueOrDefault(taster, []);

    public BallotBox With(BallotRevision revision) => new(Arrived + 1, ByTaster.SetItem(revision.Taster, Of(revision.Taster).Add(revision)));
}
