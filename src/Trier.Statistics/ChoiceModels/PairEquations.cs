namespace Trier.Statistics.ChoiceModels;

/// <summary>
/// The likelihood of paired comparisons and its derivatives. Parameters: log-worths after the first, then log nu where ties are modelled, then the order effect where asked for. Each answer has the linear predictors
/// theta_i + effect, theta_j and log nu + (theta_i + theta_j)/2, so the gradient is counted sums less expected ones and the information their covariance.
/// </summary>
internal sealed class PairEquations : ILikelihood
{
    private readonly int _items;
    private readonly PairCount[] _rows;
    private readonly double _ghosts;
    private readonly double[] _worths;

    public PairEquations(int items, PairCount[] rows, bool ties, bool orderEffect, double ghosts)
    {
        _items = items;
        _rows = orderEffect ? rows : Merged(items, rows);
        _ghosts = ghosts;
        _worths = new double[items];
        TieAt = ties ? items - 1 : null;
        OrderAt = orderEffect ? items - 1 + (ties ? 1 : 0) : null;
        var parameters = items - 1 + (ties ? 1 : 0) + (orderEffect ? 1 : 0);
        Gradient = new double[parameters];
        Information = new double[parameters, parameters];
    }

    public int? TieAt { get; }

    public int? OrderAt { get; }

    public bool HasTies => TieAt is not null;

    public double[] Gradient { get; }

    public double[,] Information { get; }

    /// <summary>The log-likelihood of the answers alone at the last point.</summary>
    public double Log { get; private set; }

    /// <summary>Equal worths, no effect, and the tie share seen: with equal worths P(tie) over P(win) is nu/2.</summary>
    public double[] Start(double tiesToWins)
    {
        var point = new double[Gradient.Length];
        if (TieAt is { } at) point[at] = Math.Log(2 * tiesToWins);
        return point;
    }

    public double Evaluate(ReadOnlySpan<double> point)
    {
        Array.Clear(Gradient);
        Array.Clear(Information);
        var highest = 0.0;
        for (var i = 1; i < _items; i++) highest = Math.Max(highest, point[i - 1]);
        _worths[0] = Math.Exp(-highest);
        for (var i = 1; i < _items; i++) _worths[i] = Math.Exp(point[i - 1] - highest);
        var tie = TieAt is { } t ? Math.Exp(point[t]) : 0;
        var order = OrderAt is { } o ? Math.Exp(point[o]) : 1;
        var log = 0.0;
        foreach (var row in _rows) log += Add(row, tie, order);
        Log = log;
        if (_ghosts > 0) log += AddGhosts();
        for (var i = 0; i < Gradient.Length; i++)
        {
            for (var j = 0; j < i; j++) Information[j, i] = Information[i, j];
        }

        return log;
    }

    private double Add(PairCount row, double tie, double order)
    {
        var first = _worths[row.First] * order;
        var second = _worths[row.Second];
        var neither = tie == 0 ? 0 : tie * Math.Sqrt(_worths[row.First] * second);
        var total = first + second + neither;
        var n = row.FirstWins + row.SecondWins + row.Ties;
        var (p, q, r) = (first / total, second / total, neither / total);
        var log = 0.0;
        if (row.FirstWins > 0) log += row.FirstWins * Math.Log(p);
        if (row.SecondWins > 0) log += row.SecondWins * Math.Log(q);
        if (row.Ties > 0) log += row.Ties * Math.Log(r);

        // Mean and covariance of the four sums a comparison adds to: the two items' (a tie half each), the tie count and the first-shown wins.
        var (meanFirst, meanSecond) = (p + (r / 2), q + (r / 2));
        var (i, j) = (row.First - 1, row.Second - 1);
        var variance = p + (r / 4);
        if (i >= 0)
        {
            Gradient[i] += row.FirstWins + (row.Ties / 2) - (n * meanFirst);
            Information[i, i] += n * (variance - (meanFirst * meanFirst));
        }

        if (j >= 0)
        {
            Gradient[j] += row.SecondWins + (row.Ties / 2) - (n * meanSecond);
            Information[j, j] += n * (q + (r / 4) - (meanSecond * meanSecond));
        }

        if (i >= 0 && j >= 0) Information[Math.Max(i, j), Math.Min(i, j)] += n * ((r / 4) - (meanFirst * meanSecond));
        if (TieAt is { } t)
        {
            Gradient[t] += row.Ties - (n * r);
            Information[t, t] += n * r * (1 - r);
            if (i >= 0) Information[t, i] += n * ((r / 2) - (r * meanFirst));
            if (j >= 0) Information[t, j] += n * ((r / 2) - (r * meanSecond));
        }

        if (OrderAt is not { } o) return log;
        Gradient[o] += row.FirstWins - (n * p);
        Information[o, o] += n * p * (1 - p);
        if (i >= 0) Information[o, i] += n * (p - (p * meanFirst));
        if (j >= 0) Information[o, j] -= n * p * meanSecond;
        if (TieAt is { } both) Information[o, both] -= n * p * r;
        return log;
    }

    private double AddGhosts()
    {
        var log = 0.0;
        for (var a = 1; a < _items; a++)
        {
            for (var b = 0; b < a; b++)
            {
                var share = _worths[a] / (_worths[a] + _worths[b]);
                var (pull, spread) = (_ghosts * (0.5 - share), _ghosts * share * (1 - share));
                log += _ghosts / 2 * Math.Log(share * (1 - share));
                Gradient[a - 1] += pull;
                Information[a - 1, a - 1] += spread;
                if (b == 0) continue;
                Gradient[b - 1] -= pull;
                Information[b - 1, b - 1] += spread;
                Information[a - 1, b - 1] -= spread;
            }
        }

        return log;
    }

    private static PairCount[] Merged(int items, PairCount[] rows)
    {
        var slots = new int[items * items];
        var merged = new List<PairCount>(rows.Length);
        foreach (var row in rows)
        {
            var turned = row.First > row.Second;
            var slot = turned ? (row.Second * items) + row.First : (row.First * items) + row.Second;
            if (slots[slot] == 0)
            {
                merged.Add(row);
                slots[slot] = merged.Count;
                continue;
            }

            var at = slots[slot] - 1;
            var old = merged[at];
            var alike = old.First == row.First;
            merged[at] = new PairCount(
                old.First, old.Second, old.FirstWins + (alike ? row.FirstWins : row.SecondWins), old.SecondWins + (alike ? row.SecondWins : row.FirstWins), old.Ties + row.Ties);
        }

        return [.. merged];
    }
}
