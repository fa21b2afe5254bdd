namespace Trier.Statistics.ChoiceModels;

/// <summary>
/// Whether paired comparisons have a finite estimate. There is none where some move of the parameters makes no answer less likely however far it goes: log-worths by d, log nu by t, the order effect by e. An answer stays likely where its linear
/// predictor moves at least as far as the others of its pair (i shown first, j second): i wins, d_j - d_i at most e and 2e - 2t; j wins, d_i - d_j at most -e and -2t; a tie, d_i - d_j at most 2t - 2e and d_j - d_i at most 2t (without ties modelled the
/// bounds with t fall away). For given t and e these are difference constraints, met where no cycle has a negative sum. Cycles sum to whole multiples of t and e, 2k at most, so the edge of the (t, e) that can be met runs along such
/// whole numbers and trying these is exact. Source: [Ford1957]'s argument; constraints as in any text on shortest paths.
/// </summary>
internal static class PairObstacle
{
    // Beyond, ties with an order effect are left to the size of the standard errors.
    private const int MostSearched = 12;

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

        if (ties && Runs(items, rows, 1, 0, ties, ghosts))
            return new Refusal(RefusalKind.Separated, "Wins and ties never overlap along the scale, so no finite tie parameter exists.");
        if (!orderEffect) return null;
        var reach = ties && items <= MostSearched ? 2 * items : 0;
        for (var t = -reach; t <= reach; t++)
        {
            for (var e = -Math.Max(1, reach); e <= Math.Max(1, reach); e++)
            {
                if (e == 0 || Gcd.Of(t, e) != 1 || !Runs(items, rows, t, e, ties, ghosts)) continue;
                // Free to move both ways, the answers do not speak of it at all: the order effect hides among the worths.
                if (Runs(items, rows, -t, -e, ties, ghosts))
                    return new Refusal(RefusalKind.WrongDesign, "The order of showing and the worths cannot be told apart: some pairs have to be shown the other way round.");
                return new Refusal(RefusalKind.Separated, "The order of showing explains some answers without exception, so no finite order effect exists.");
            }
        }

        return null;
    }

    /// <summary>True where the move exists: d_to - d_from at most weight for each edge, by Bellman and Ford's rounds.</summary>
    private static bool Runs(int items, PairCount[] rows, int t, int e, bool ties, bool ghosts)
    {
        var edges = new List<(int From, int To, int Weight)>();
        foreach (var row in rows)
        {
            if (row.FirstWins > 0) edges.Add((row.First, row.Second, ties ? Math.Min(e, 2 * (e - t)) : e));
            if (row.SecondWins > 0) edges.Add((row.Second, row.First, ties ? Math.Min(-e, -2 * t) : -e));
            if (row.Ties == 0) continue;
            edges.Add((row.Second, row.First, 2 * (t - e)));
            edges.Add((row.First, row.Second, 2 * t));
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
