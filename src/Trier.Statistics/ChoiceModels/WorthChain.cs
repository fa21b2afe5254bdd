using Trier.Statistics.Randomness;

namespace Trier.Statistics.ChoiceModels;

/// <summary>One chain over log-worths and their spread.</summary>
internal sealed class WorthChain
{
    // Spreads below a millionth of the scale have a chance of a millionth beforehand, and nearer to 0 a double holds no worths any more.
    private const double SmallestSpread = 1e-6;

    private readonly OrderLikelihood _likelihood;
    private readonly double _scale;
    private readonly Generator _generator;
    private readonly double[] _theta;
    private readonly double[] _proposal;
    private readonly double[] _direction;
    private readonly double[] _scaled;
    private double _spread;
    private double _log;
    private double _spreadSum;
    private WorthDraws _draws = new(0, 0);

    public WorthChain(OrderLikelihood likelihood, double scale, Generator generator)
    {
        _likelihood = likelihood;
        _scale = scale;
        _generator = generator;
        _theta = new double[likelihood.Items];
        _proposal = new double[likelihood.Items];
        _direction = new double[likelihood.Items];
        _scaled = new double[likelihood.Items];
        _spread = scale * Math.Max(SmallestSpread, Math.Abs(generator.NextNormal()));
        for (var i = 0; i < _theta.Length; i++) _theta[i] = _spread * generator.NextNormal();
        _log = likelihood.Log(_theta);
    }

    public WorthDraws Draws => _draws;

    public double MeanSpread => _spreadSum / _draws.Kept;

    public void Run(int discarded, int kept)
    {
        _draws = new WorthDraws(_theta.Length, kept);
        for (var step = -discarded; step < kept; step++)
        {
            MoveWorths();
            MoveSpreadWithWorths();
            MoveSpreadAndWorths();
            if (step < 0) continue;
            _spreadSum += _spread;
            _draws.Keep(step, _theta);
        }
    }

    /// <summary>An elliptical slice: points on the ellipse through the worths and a fresh draw of their prior, until one is likely enough.</summary>
    private void MoveWorths()
    {
        for (var i = 0; i < _direction.Length; i++) _direction[i] = _spread * _generator.NextNormal();
        var level = _log - _generator.NextExponential();
        var angle = 2 * Math.PI * _generator.NextDouble();
        var (low, high) = (angle - (2 * Math.PI), angle);
        while (true)
        {
            var (sin, cos) = Math.SinCos(angle);
            for (var i = 0; i < _theta.Length; i++) _proposal[i] = (_theta[i] * cos) + (_direction[i] * sin);
            var log = _likelihood.Log(_proposal);
            if (log >= level)
            {
                _proposal.CopyTo(_theta, 0);
                _log = log;
                return;
            }

            if (angle < 0) low = angle;
            else high = angle;
            angle = low + ((high - low) * _generator.NextDouble());
        }
    }

    /// <summary>Slice on log s with the worths held: density s^(1-k) exp(-sum theta^2/(2 s^2) - s^2/(2 scale^2)) in log s.</summary>
    private void MoveSpreadWithWorths()
    {
        var squares = 0.0;
        foreach (var value in _theta) squares += value * value;
        var k = _theta.Length;
        _spread = Math.Exp(LogSlice.Move(_generator, Math.Log(_spread), Math.Log(SmallestSpread * _scale), t =>
        {
            var s2 = Math.Exp(2 * t);
            return ((1 - k) * t) - (squares / (2 * s2)) - (s2 / (2 * _scale * _scale));
        }));
    }

    /// <summary>Slice on log s with worths/s held, so that both stretch together: likelihood times s exp(-s^2/(2 scale^2)).</summary>
    private void MoveSpreadAndWorths()
    {
        for (var i = 0; i < _theta.Length; i++) _scaled[i] = _theta[i] / _spread;
        _spread = Math.Exp(LogSlice.Move(_generator, Math.Log(_spread), Math.Log(SmallestSpread * _scale), t =>
        {
            var s = Math.Exp(t);
            for (var i = 0; i < _proposal.Length; i++) _proposal[i] = s * _scaled[i];
            return _likelihood.Log(_proposal) + t - (s * s / (2 * _scale * _scale));
        }));
        for (var i = 0; i < _theta.Length; i++) _theta[i] = _spread * _scaled[i];
        _log = _likelihood.Log(_theta);
    }
}
