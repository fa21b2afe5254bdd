using System.Collections.Immutable;
using Trier.Statistics.ChoiceModels;
using Trier.Statistics.Randomness;
using Trier.Trials.Verdicts.Findings;

namespace Trier.Trials.Verdicts.Counting;

/// <summary>Whether the ballots look like two tastes rather than one, by a model and without asking anybody what they like.</summary>
internal static class Tastes
{
    /// <summary>A crowd larger than this parts on declared taste well enough, and a thousand fits of it take minutes.</summary>
    private const long MostVoices = 500;

    public static TastesFinding? Of(Electorate electorate, ImmutableArray<SampleRecord> wheels, Seed seed, int panels)
    {
        if (wheels.Length < 2 || panels < 1) return null;
        var ballots = electorate.Ballots(electorate.Headline);
        if (ballots.Rows.IsEmpty || ballots.Voices is < TwoClasses.FewestVoices or > MostVoices) return null;
        var tested = TwoClasses.Test(ballots, seed.Child("tastes"), panels);
        if (!tested.Stands) return null;
        var found = tested.Value;
        return new(found.Fit.LikelihoodRatio, found.P, found.Critical, found.Parted, [.. found.Fit.Classes.Select(one =>
            new TasteClass(one.Share, [.. wheels.Select(wheel => new ClassShare(wheel.Id, one.Worths[electorate.OwnColumns[wheel.Id]]))]))]);
    }
}
