namespace Trier.Statistics.Ratings;

/// <summary>
/// The likelihood of ratings under a cumulative link and its derivatives. The cut j of pattern x stands at eta_j = alpha_j - sum of x_p beta_p, with beta_pj instead of beta_p for covariates that act cut by cut; P(rating j) = F(eta_j) - F(eta_{j-1}).
/// Both informations are tridiagonal in the cuts of one pattern and are carried over to the parameters from there.
/// </summary>
internal sealed class CumulativeEquations : ILikelihood
{
    private readonly RatingTable _table;
    private readonly CumulativeLink _link;
    private readonly bool[] _byCut;
    private readonly int? _held;
    private readonly int[] _at;
    private readonly double[] _eta;
    private readonly (double Below, double Density, double Slope)[] _cuts;
    private readonly double[] _chance;
    private readonly double[] _slope;
    private readonly double[] _diagonal;
    private readonly double[] _beside;

    /// <param name="table">The ratings.</param>
    /// <param name="link">The scale.</param>
    /// <param name="byCut">Per covariate whether it acts cut by cut.</param>
    /// <param name="held">A covariate whose effect is held at <see cref="HeldAt"/>; it has no parameter.</param>
    public CumulativeEquations(RatingTable table, CumulativeLink link, bool[] byCut, int? held = null)
    {
        _table = table;
        _link = link;
        _byCut = byCut;
        _held = held;
        Cuts = table.Ratings.Length - 1;
        _at = new int[table.Covariates];
        var parameters = Cuts;
        for (var p = 0; p < _at.Length; p++)
        {
            _at[p] = parameters;
            if (p != held) parameters += byCut[p] ? Cuts : 1;
        }

        Gradient = new double[parameters];
        Information = new double[parameters, parameters];
        _eta = new double[Cuts];
        _cuts = new (double, double, double)[Cuts + 2];
        _chance = new double[Cuts + 1];
        _slope = new double[Cuts];
        _diagonal = new double[Cuts];
        _beside = new double[Cuts];
    }

    public int Cuts { get; }

    public double[] Gradient { get; }

    public double[,] Information { get; }

    /// <summary>The effect of the held covariate.</summary>
    public double HeldAt { get; set; }

    /// <summary>True for the information expected under the model, false for the one observed.</summary>
    public bool Expected { get; set; }

    /// <summary>The cuts of all ratings together, no effects.</summary>
    public double[] Start()
    {
        var point = new double[Gradient.Length];
        var below = 0.0;
        for (var j = 0; j < Cuts; j++)
        {
            foreach (var (_, counts) in _table.Patterns) below += counts[j];
            point[j] = LinkFunctions.Quantile(_link, below / _table.Count);
        }

        return point;
    }

    public double Evaluate(ReadOnlySpan<double> point)
    {
        Array.Clear(Gradient);
        Array.Clear(Information);
        var log = 0.0;
        foreach (var (covariates, counts) in _table.Patterns)
        {
            if (!Chances(point, covariates, _chance)) return double.NegativeInfinity;
            var total = 0.0;
            for (var c = 0; c <= Cuts; c++)
            {
                total += counts[c];
                if (counts[c] > 0) log += counts[c] * Math.Log(_chance[c]);
            }

            DeriveByCut(counts, total);
            Carry(covariates);
        }

        return log;
    }

    /// <summary>The chance of each rating at covariates; false where the cuts cross.</summary>
    public bool Chances(ReadOnlySpan<double> point, double[] covariates, Span<double> chances)
    {
        point[..Cuts].CopyTo(_eta);
        for (var p = 0; p < covariates.Length; p++)
        {
            var x = covariates[p];
            if (x == 0) continue;
            for (var j = 0; j < Cuts; j++) _eta[j] -= x * (p == _held ? HeldAt : point[_at[p] + (_byCut[p] ? j : 0)]);
        }

        for (var j = 0; j < Cuts; j++)
        {
            if (j > 0 && !(_eta[j] > _eta[j - 1])) return false;
            _cuts[j + 1] = LinkFunctions.At(_link, _eta[j]);
        }

        _cuts[^1] = (1, 0, 0);
        for (var c = 0; c <= Cuts; c++)
        {
            // Above the middle the difference is taken between upper tails, which keep their digits.
            chances[c] = c > 0 && c < Cuts && _eta[c - 1] > 0
                ? LinkFunctions.At(_link, -_eta[c - 1]).Below - LinkFunctions.At(_link, -_eta[c]).Below
                : c == Cuts ? LinkFunctions.At(_link, -_eta[^1]).Below : _cuts[c + 1].Below - _cuts[c].Below;
            if (!(chances[c] > 0)) return false;
        }

        return true;
    }

    private void DeriveByCut(double[] counts, double total)
    {
        for (var j = 0; j < Cuts; j++)
        {
            var (_, density, bend) = _cuts[j + 1];
            var (under, over) = (_chance[j], _chance[j + 1]);
            _slope[j] = density * ((counts[j] / under) - (counts[j + 1] / over));
            if (Expected)
            {
                _diagonal[j] = total * density * density * ((1 / under) + (1 / over));
                _beside[j] = j + 1 < Cuts ? -total * density * _cuts[j + 2].Density / over : 0;
            }
            else
            {
                var square = density * density;
                _diagonal[j] = (counts[j] * ((square / (under * under)) - (bend / under))) + (counts[j + 1] * ((square / (over * over)) + (bend / over)));
                _beside[j] = j + 1 < Cuts ? -counts[j + 1] * density * _cuts[j + 2].Density / (over * over) : 0;
            }
        }
    }

    private void Carry(double[] covariates)
    {
        double slopes = 0, all = 0;
        for (var j = 0; j < Cuts; j++)
        {
            Gradient[j] += _slope[j];
            Information[j, j] += _diagonal[j];
            if (j + 1 < Cuts)
            {
                Information[j, j + 1] += _beside[j];
                Information[j + 1, j] += _beside[j];
            }

            slopes += _slope[j];
            all += _diagonal[j] + (2 * _beside[j]);
        }

        for (var p = 0; p < covariates.Length; p++)
        {
            var x = covariates[p];
            if (x == 0 || p == _held) continue;
            for (var j = 0; j < Cuts; j++)
            {
                var row = _diagonal[j] + _beside[j] + (j > 0 ? _beside[j - 1] : 0);
                if (_byCut[p])
                {
                    Gradient[_at[p] + j] -= x * _slope[j];
                    for (var i = Math.Max(0, j - 1); i <= Math.Min(Cuts - 1, j + 1); i++) Both(i, _at[p] + j, -x * Between(i, j));
                }
                else
                {
                    Both(j, _at[p], -x * row);
                }
            }

            if (!_byCut[p]) Gradient[_at[p]] -= x * slopes;
            for (var q = 0; q <= p; q++)
            {
                var product = x * covariates[q];
                if (product != 0 && q != _held) Pair(p, q, product, all);
            }
        }
    }

    private void Pair(int p, int q, double product, double all)
    {
        if (!_byCut[p] && !_byCut[q])
        {
            Information[_at[p], _at[q]] += product * all;
            if (p != q) Information[_at[q], _at[p]] += product * all;
            return;
        }

        for (var j = 0; j < Cuts; j++)
        {
            for (var i = Math.Max(0, j - 1); i <= Math.Min(Cuts - 1, j + 1); i++)
            {
                var (a, b) = (_at[p] + (_byCut[p] ? i : 0), _at[q] + (_byCut[q] ? j : 0));
                Information[a, b] += product * Between(i, j);
                if (p != q) Information[b, a] += product * Between(i, j);
            }
        }
    }

    private double Between(int i, int j) => i == j ? _diagonal[i] : _beside[Math.Min(i, j)];

    private void Both(int a, int b, double value)
    {
        Information[a, b] += value;
        Information[b, a] += value;
    }
}
