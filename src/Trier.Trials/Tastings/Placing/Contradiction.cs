namespace Trier.Trials.Tastings.Placing;

/// <summary>A ballot that looks upside down: reason for one kind question, never for a block.</summary>
/// <param name="LikedBest">The sample with the highest liking; of several, the one placed furthest down.</param>
/// <param name="Place">Its place, from 1; tied samples share the best of their places.</param>
/// <param name="Last">Whether that is the last place.</param>
/// <param name="Correlation">Rank correlation of liking and places, -1 (upside down) to 1.</param>
public sealed record Contradiction(BlindCode LikedBest, int Place, bool Last, double Correlation)
{
    /// <summary>A correlation at or below this is asked about.</summary>
    public const double Limit = -0.5;

    /// <summary>
    /// Looks at a ballot whose likings and places are complete: Pearson's correlation of midranks (Spearman's rho with ties). The limit is
    /// our choice, no source.
    /// </summary>
    /// <param name="ballot">The ballot.</param>
    /// <param name="served">Codes served now, at least three for a question to make sense.</param>
    /// <returns>The contradiction, or null where there is none or not everything was answered.</returns>
    public static Contradiction? Of(Ballot ballot, IReadOnlyCollection<BlindCode> served)
    {
        var places = Placement.Of(ballot, served).Groups;
        if (served.Count < 3 || places.Sum(group => group.Length) != served.Count) return null;
        var seen = new List<(BlindCode Code, double Liking, double Middle, int Place)>();
        var first = 1;
        foreach (var group in places)
        {
            foreach (var code in group)
            {
                if (ballot.Answers.GetValueOrDefault(code)?.Liking is not { } liking) return null;
                seen.Add((code, liking, first + ((group.Length - 1) / 2.0), first));
            }

            first += group.Length;
        }

        // Low liking ranks low, a low place is good: the sign is turned.
        var likings = seen.ConvertAll(sample => Midrank(seen.ConvertAll(other => other.Liking), sample.Liking));
        if (RankCorrelation(likings, seen.ConvertAll(sample => -sample.Middle)) is not { } rho || rho > Limit) return null;
        var best = seen.OrderByDescending(sample => sample.Liking).ThenByDescending(sample => sample.Place).First();
        return new Contradiction(best.Code, best.Place, best.Place == seen.Max(sample => sample.Place), rho);
    }

    private static double Midrank(List<double> all, double value) => all.Count(other => other < value) + ((all.Count(other => other == value) + 1) / 2.0);

    private static double? RankCorrelation(List<double> left, List<double> right)
    {
        double meanLeft = left.Average(), meanRight = right.Average();
        var both = left.Zip(right, (l, r) => (l - meanLeft) * (r - meanRight)).Sum();
        var spread = Math.Sqrt(left.Sum(l => (l - meanLeft) * (l - meanLeft)) * right.Sum(r => (r - meanRight) * (r - meanRight)));
        return spread == 0 ? null : both / spread;
    }
}
