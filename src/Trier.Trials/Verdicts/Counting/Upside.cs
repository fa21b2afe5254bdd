using Trier.Statistics.Rankings;

namespace Trier.Trials.Verdicts.Counting;

/// <summary>Whether a ballot's places look upside down against its own likings.</summary>
internal static class Upside
{
    private const double Threshold = -0.5;
    private const int FewestWheels = 4;

    /// <summary>True where the rank correlation of liking with place, best counted high, is at most -0.5 over four wheels or more.</summary>
    public static bool Down(Electorate electorate, VoterRecord voter)
    {
        var ranking = Electorate.RankingOf(voter, electorate.OwnColumns);
        if (ranking is null) return false;
        var likings = electorate.Ids
            .Select((id, i) => ranking.IsServed(i) && voter.Answers.GetValueOrDefault(id)?.Liking is { } liking ? (double?)-liking : null)
            .ToArray();
        var both = Enumerable.Range(0, likings.Length).Where(i => likings[i] is not null).ToArray();
        if (both.Length < FewestWheels) return false;
        var byPlace = ranking.Restrict(both).DoubledMidranks();
        var byLiking = Ranking.FromPlaces([.. both.Select(i => likings[i])]).DoubledMidranks();
        var mean = both.Length + 1.0;
        double Sum(Func<int, double> term) => Enumerable.Range(0, both.Length).Sum(term);
        var product = Sum(i => (byPlace[i] - mean) * (byLiking[i] - mean));
        var squares = Sum(i => Math.Pow(byPlace[i] - mean, 2)) * Sum(i => Math.Pow(byLiking[i] - mean, 2));
        return squares > 0 && product / Math.Sqrt(squares) <= Threshold;
    }
}
