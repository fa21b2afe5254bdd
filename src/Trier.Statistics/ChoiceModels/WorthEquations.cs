namespace Trier.Statistics.ChoiceModels;

/// <summary>
/// The Plackett-Luce likelihood of added-up choices and its derivatives, the first log-worth held at 0: l = sum of chosen_i theta_i - sum over sets of n_S log(sum of worths in S), plus the tied groups'
/// terms, plus for each pair of items g/2 wins each way where ghost comparisons are asked for.
/// </summary>
internal sealed class WorthEquations : ILikelihood
{
    private readonly ChoiceCounts _choices;
    private readonly double _ghosts;
    private readonly int _items;
    private readonly double[] _theta;
    private readonly double[] _worths;
    private readonly double[] _gradient;
    private readonly double[] _information;
    private readonly TiedTerm? _tied;
    private readonly double[] _before;

    public WorthEquations(ChoiceCounts choices, double ghosts)
    {
        _choices = choices;
        _ghosts = ghosts;
        _items = choices.Items;
        _theta = new double[_items];
        _worths = new double[_items];
        _gradient = new double[_items];
        _information = new double[_items * _items];
        _before = new double[_items + 1];
        _tied = choices.Ties.Count == 0 ? null : new TiedTerm(choices.Ties.Max(tie => tie.Group.Length));
        Gradient = new double[_items - 1];
        Information = new double[_items - 1, _items - 1];
    }

    /// <summary>By item, without the first.</summary>
    public double[] Gradient { get; }

    /// <summary>By item, without the first.</summary>
    public double[,] Information { get; }

    /// <summary>The log-likelihood of the ballots alone at the last point.</summary>
    public double Log { get; private set; }

    public double Evaluate(ReadOnlySpan<double> point)
    {
        Array.Clear(_information);
        _theta[0] = 0;
        point.CopyTo(_theta.AsSpan(1));
        var highest = 0.0;
        foreach (var value in point) highest = Math.Max(highest, value);
        for (var i = 0; i < _items; i++) _worths[i] = Math.Exp(_theta[i] - highest);
        var log = 0.0;
        for (var i = 0; i < _items; i++)
        {
            log += _choices.Chosen[i] * (_theta[i] - highest);
            _gradient[i] = _choices.Chosen[i];
        }

        log += AddSets() + AddOrders();
        foreach (var tie in _choices.Ties) log += tie.Count * _tied!.AddTo(tie, _worths, _gradient, _information);
        Log = log;
        if (_ghosts > 0) log += AddGhosts(highest);
        for (var i = 1; i < _items; i++)
        {
            Gradient[i - 1] = _gradient[i];
            for (var j = 1; j <= i; j++) Information[i - 1, j - 1] = Information[j - 1, i - 1] = _information[(i * _items) + j];
        }

        return log;
    }

    private double AddSets()
    {
        var (members, starts, counts) = _choices.Sets;
        var log = 0.0;
        for (var s = 0; s < counts.Length; s++)
        {
            var set = members.AsSpan(starts[s]..starts[s + 1]);
            var total = 0.0;
            foreach (var i in set) total += _worths[i];
            log -= counts[s] * Math.Log(total);
            var each = counts[s] / total;
            var pair = each / total;
            for (var a = 0; a < set.Length; a++)
            {
                var i = set[a];
                var row = i * _items;
                var share = each * _worths[i];
                _gradient[i] -= share;
                _information[row + i] += share;
                var scaled = pair * _worths[i];
                for (var b = 0; b <= a; b++) _information[row + set[b]] -= scaled * _worths[set[b]];
            }
        }

        return log;
    }

    /// <summary>Items a and b are left together in the choices up to the earlier place of the two, so one running sum of n/W^2 serves all pairs.</summary>
    private double AddOrders()
    {
        var log = 0.0;
        foreach (var (order, stages, count) in _choices.Orders)
        {
            var total = 0.0;
            for (var place = order.Length - 1; place >= stages; place--) total += _worths[order[place]];
            for (var place = stages - 1; place >= 0; place--)
            {
                total += _worths[order[place]];
                _before[place] = total;
            }

            double each = 0, pair = 0;
            for (var place = 0; place < order.Length; place++)
            {
                var i = order[place];
                if (place < stages)
                {
                    log -= count * Math.Log(_before[place]);
                    each += count / _before[place];
                    pair += count / (_before[place] * _before[place]);
                }

                var share = each * _worths[i];
                _gradient[i] -= share;
                _information[(i * _items) + i] += share - (pair * _worths[i] * _worths[i]);
                var scaled = pair * _worths[i];
                for (var later = place + 1; later < order.Length; later++)
                {
                    var j = order[later];
                    _information[(Math.Max(i, j) * _items) + Math.Min(i, j)] -= scaled * _worths[j];
                }
            }
        }

        return log;
    }

    private double AddGhosts(double highest)
    {
        var log = 0.0;
        for (var i = 1; i < _items; i++)
        {
            for (var j = 0; j < i; j++)
            {
                var share = _worths[i] / (_worths[i] + _worths[j]);
                log += _ghosts * (((_theta[i] + _theta[j]) / 2) - highest - Math.Log(_worths[i] + _worths[j]));
                _gradient[i] += _ghosts * (0.5 - share);
                _gradient[j] -= _ghosts * (0.5 - share);
                var spread = _ghosts * share * (1 - share);
                _information[(i * _items) + i] += spread;
                _information[(j * _items) + j] += spread;
                _information[(i * _items) + j] -= spread;
            }
        }

        return log;
    }
}
