using Trier.Trials.Tastings;

namespace Trier.Web.Tastings.Board;

/// <summary>How far a taster is: a count of samples, never what was said of them.</summary>
internal static class Progress
{
    /// <summary>How many of the samples served a taster has said something of.</summary>
    /// <param name="history">Everything they sent.</param>
    /// <param name="served">The samples on their plate.</param>
    public static int Tasted(BallotHistory history, IReadOnlyCollection<BlindCode> served) =>
        history.Current is { } current
            ? served.Count(sample => current.Content.Answers.ContainsKey(sample) || current.Content.Places.Any(group => group.Contains(sample)))
            : 0;
}
