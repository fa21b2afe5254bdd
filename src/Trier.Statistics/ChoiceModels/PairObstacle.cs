namespace Trier.Statistics.ChoiceModels;

/// <summary>
/// Whether paired comparisons have a finite estimate. There is none where some move of the parameters makes no answer less likely, however far it goes: log-worths d, log nu by t and the order effect by e, with d_i + e >= d_j
/// for each win of a first-shown i, d_j >= d_i + e for each win of a second-shown j, a win's lead at least 2t and a tie's lead (without e) at most 2t. For each sign of t and e these are
/// difference constraints: they can be met where no cycle has a negative sum. Source: the argument is [Ford1957]'s; constraints as in any text on shortest paths.
/// </summary>
internal static class PairObstacle
{
    public static Refusal? Of(int items, PairCount[] rows, bool ties, bool orderEffect, bool ghosts)
    {
        if (!ghosts)
        {
            var above = new Dominance(items);
            foreach (var row in rows)
            {
                if (row.FirstWins > 0 || row.Ties > 0) above.Add(row.First, row.Second);
                if (row.SecondWins > 0 || row.Ties > 0) above.Add(row.Second, row.First);
            }

            if (above.Obstacle() is { } obstacle) return obstacle;
        }

        // Ghosts hold the worths together, so that only moves with d = 0 are left, but the effect and nu can still run away on their own.
        if (ties && Runs(items, rows, 1, 0, ghosts))
            return new Refusal(RefusalKind.Separated, "The ties fit a scale of their own: wins and ties never overlap, so no finite tie parameter exists.");
        return orderEffect && (Runs(items, rows, 0, 1, ghosts) || Runs(items, rows, 0, -1, ghosts))
            ? new Refusal(RefusalKind.Separated, "The order of showing explains some answers without exception, so no finite order effect exists.")
            : null;
    }

    /// <summary>True where the move exists: d_to - d_from at most weight for each edge, by Bellman and Ford's rounds.</summary>
    private static bool Runs(int items, PairCount[] rows, int tie, int order, bool ghosts)
    {
        var edges = new List<(int From, int To, int Weight)>();
        foreach (var row in rows)
        {
            if (row.FirstWins > 0) edges.Add((row.First, row.Second, order - tie));
            if (row.SecondWins > 0) edges.Add((row.Second, row.First, -order - tie));
            if (row.Ties == 0) continue;
            edges.Add((row.First, row.Second, tie));
            edges.Add((row.Second, row.First, tie));
        }

        if (ghosts) edges.AddRange(from a in Enumerable.Range(0, items) from b in Enumerable.Range(0, items) where a != b select (a, b, 0));
        var reach = new long[items];
        for (var round = 0; round <= items; round++)
        {
            var changed = false;
            foreach (var (from, to, weight) in edges)
            {
                if (reach[from] + weight >= reach[to]) continue;
                reach[to] = reach[from] + weight;
                changed = true;
            }

            if (!changed) return true;
        }

        return false;
    }
}
