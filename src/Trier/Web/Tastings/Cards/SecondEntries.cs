using Trier.Trials.Tastings;

namespace Trier.Web.Tastings.Cards;

/// <summary>The two entries of one paper ballot: the first counts, the second is kept beside it for comparing alone.</summary>
internal static class SecondEntries
{
    /// <summary>The device name of a second entry: it begins from nothing, so that it lies aside and never becomes current.</summary>
    public const string Device = "paper, second";

    /// <summary>The version the second entry is compared with: the current one, where it came from paper; else null.</summary>
    /// <param name="history">The taster's revisions.</param>
    public static BallotRevision? First(BallotHistory history) => history.Current is { Source: BallotSource.Paper } first ? first : null;

    /// <summary>The last second entry made since the version that counts, or null.</summary>
    /// <param name="history">The taster's revisions.</param>
    public static BallotRevision? Second(BallotHistory history) =>
        First(history) is { } first ? history.All.SkipWhile(revision => revision.Id != first.Id).LastOrDefault(revision => revision.Device == Device) : null;
}
