namespace Trier.Statistics.ChoiceModels;

/// <summary>
/// The log chance that a tied group comes before the rest, whatever its inner order: f(S) = sum over i in S of f(S less i) q_i, q_i the chance to choose i once S less i is placed, by subsets, with first and second derivatives carried along. The
/// rest enters by its summed worth alone, so that m + 1 variables suffice for a group of m.
/// </summary>
internal sealed class TiedTerm
{
    private readonly double[] _chance;
    private readonly double[][] _first;
    private readonly double[][] _second;
    private readonly double[] _worths;
    private readonly double[] _share;
    private readonly double[] _score;

    public TiedTerm(int largestGroup)
    {
        var sets = 1 << largestGroup;
        var size = largestGroup + 1;
        _chance = new double[sets];
        _first = [.. Enumerable.Range(0, sets).Select(_ => new double[size])];
        _second = [.. Enumerable.Range(0, sets).Select(_ => new double[size * size])];
        _worths = new double[size];
        _share = new double[size];
        _score = new double[size];
    }

    /// <summary>Adds the group's gradient and information (lower triangle) to the items', times its count, and gives the log chance of one.</summary>
    public double AddTo(TiedChoice tie, double[] worths, double[] gradient, double[] information)
    {
        var m = tie.Group.Length;
        var size = m + 1;
        _worths[m] = 0;
        for (var a = 0; a < m; a++) _worths[a] = worths[tie.Group[a]];
        foreach (var item in tie.Rest) _worths[m] += worths[item];
        var full = (1 << m) - 1;
        for (var set = 0; set <= full; set++)
        {
            _chance[set] = set == 0 ? 1 : 0;
            _first[set].AsSpan(0, size).Clear();
            _second[set].AsSpan(0, size * size).Clear();
        }

        for (var placed = 0; placed < full; placed++) Spread(placed, m);
        var chance = _chance[full];
        var items = worths.Length;
        for (var a = 0; a <= m; a++)
        {
            var slope = tie.Count * _first[full][a] / chance;
            foreach (var (i, part) in Items(tie, worths, a, m))
            {
                gradient[i] += slope * part;
                if (a == m) AddRestCurvature(tie, worths, i, part, slope, information);
                for (var b = 0; b <= m; b++)
                {
                    var curve = tie.Count * (((_first[full][a] / chance) * (_first[full][b] / chance)) - (_second[full][(a * size) + b] / chance));
                    foreach (var (j, other) in Items(tie, worths, b, m))
                    {
                        if (j <= i) information[(i * items) + j] += curve * part * other;
                    }
                }
            }
        }

        return Math.Log(chance);
    }

    /// <summary>The summed worth of the rest bends with each item's own log-worth: -slope (delta_ij part_i - part_i part_j).</summary>
    private void AddRestCurvature(TiedChoice tie, double[] worths, int i, double part, double slope, double[] information)
    {
        foreach (var j in tie.Rest)
        {
            if (j <= i) information[(i * worths.Length) + j] -= slope * ((i == j ? part : 0) - (part * worths[j] / _worths[tie.Group.Length]));
        }
    }

    private IEnumerable<(int Item, double Part)> Items(TiedChoice tie, double[] worths, int variable, int m)
    {
        if (variable < m)
        {
            yield return (tie.Group[variable], 1);
            yield break;
        }

        foreach (var item in tie.Rest) yield return (item, worths[item] / _worths[m]);
    }

    private void Spread(int placed, int m)
    {
        var size = m + 1;
        var total = 0.0;
        for (var a = 0; a < size; a++)
        {
            _share[a] = (placed & (1 << a)) == 0 || a == m ? _worths[a] : 0;
            total += _share[a];
        }

        for (var a = 0; a < size; a++) _share[a] /= total;
        var (chance, first, second) = (_chance[placed], _first[placed], _second[placed]);
        for (var next = 0; next < m; next++)
        {
            if ((placed & (1 << next)) != 0) continue;
            var q = _share[next];
            for (var a = 0; a < size; a++) _score[a] = (a == next ? 1 : 0) - _share[a];
            var set = placed | (1 << next);
            _chance[set] += chance * q;
            var (toFirst, toSecond) = (_first[set], _second[set]);
            for (var a = 0; a < size; a++)
            {
                toFirst[a] += q * (first[a] + (chance * _score[a]));
                for (var b = 0; b < size; b++)
                {
                    var bend = (_share[a] * _share[b]) - (a == b ? _share[a] : 0);
                    toSecond[(a * size) + b] += q * (second[(a * size) + b] + (first[a] * _score[b]) + (_score[a] * first[b]) + (chance * ((_score[a] * _score[b]) + bend)));
                }
            }
        }
    }
}
