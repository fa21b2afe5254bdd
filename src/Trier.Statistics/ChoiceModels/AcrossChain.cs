using Trier.Statistics.Randomness;

namespace Trier.Statistics.ChoiceModels;

/// <summary>One chain over recipes, slope, wheels and the two spreads.</summary>
internal sealed class AcrossChain
{
    private const double SmallestSpread = 1e-6;

    private readonly AcrossModel _model;
    private readonly OrderLikelihood _likelihood;
    private readonly Generator _generator;
    private readonly double[] _at;
    private readonly double[] _proposal;
    private readonly double[] _direction;
    private readonly double[] _worths;
    private double _recipeSpread;
    private double _wheelSpread;
    private double _log;

    public AcrossChain(AcrossModel model, OrderLikelihood likelihood, Generator generator)
    {
        (_model, _likelihood, _generator) = (model, likelihood, generator);
        (_at, _proposal, _direction, _worths) = (new double[model.Parameters], new double[model.Parameters], new double[model.Parameters], new double[model.Items]);
        _recipeSpread = AcrossTastings.RecipeScale * Math.Max(SmallestSpread, Math.Abs(generator.NextNormal()));
        _wheelSpread = AcrossTastings.WheelScale * Math.Max(SmallestSpread, Math.Abs(generator.NextNormal()));
        Prior(_at);
        _log = Log(_at);
    }

    /// <summary>Per parameter, and last for tau, what was kept.</summary>
    public double[][] Draws { get; private set; } = [];

    public void Run(int discarded, int kept)
    {
        Draws = [.. Enumerable.Range(0, _model.Parameters + 1).Select(_ => new double[kept])];
        for (var step = -discarded; step < kept; step++)
        {
            MoveAll();
            _recipeSpread = Spread(_recipeSpread, AcrossTastings.RecipeScale, 0, _model.Recipes);
            _recipeSpread = Stretch(_recipeSpread, AcrossTastings.RecipeScale, 0, _model.Recipes);
            _wheelSpread = Spread(_wheelSpread, AcrossTastings.WheelScale, _model.FirstWheel, _model.Wheels);
            _wheelSpread = Stretch(_wheelSpread, AcrossTastings.WheelScale, _model.FirstWheel, _model.Wheels);
            MoveWithinRecipes();
            if (step < 0) continue;
            for (var i = 0; i < _at.Length; i++) Draws[i][step] = _at[i];
            Draws[^1][step] = _wheelSpread;
        }
    }

    /// <summary>An elliptical slice over all parameters but the spreads.</summary>
    private void MoveAll()
    {
        Prior(_direction);
        var level = _log - _generator.NextExponential();
        var angle = 2 * Math.PI * _generator.NextDouble();
        var (low, high) = (angle - (2 * Math.PI), angle);
        while (true)
        {
            var (sin, cos) = Math.SinCos(angle);
            for (var i = 0; i < _at.Length; i++) _proposal[i] = (_at[i] * cos) + (_direction[i] * sin);
            var log = Log(_proposal);
            if (log >= level)
            {
                _proposal.CopyTo(_at, 0);
                _log = log;
                return;
            }

            if (angle < 0) low = angle;
            else high = angle;
            angle = low + ((high - low) * _generator.NextDouble());
        }
    }

    /// <summary>
    /// A recipe and the deviations of its wheels drawn anew with their sums held: no ballot sees it. The sums v = r + u are normal around r with tau, r is normal(0, s^2): so r given its m sums is
    /// normal with precision 1/s^2 + m/tau^2 around (sum v/tau^2) over it.
    /// </summary>
    private void MoveWithinRecipes()
    {
        for (var recipe = 0; recipe < _model.Recipes; recipe++)
        {
            var sum = 0.0;
            var count = 0;
            for (var wheel = 0; wheel < _model.Wheels; wheel++)
            {
                if (_model.RecipeOf[wheel] != recipe) continue;
                sum += _at[recipe] + _at[_model.FirstWheel + wheel];
                count++;
            }

            var within = _wheelSpread * _wheelSpread;
            var precision = (1 / (_recipeSpread * _recipeSpread)) + (count / within);
            var fresh = (sum / within / precision) + (_generator.NextNormal() / Math.Sqrt(precision));
            var moved = _at[recipe] - fresh;
            _at[recipe] = fresh;
            for (var wheel = 0; wheel < _model.Wheels; wheel++)
            {
                if (_model.RecipeOf[wheel] == recipe) _at[_model.FirstWheel + wheel] += moved;
            }
        }
    }

    /// <summary>Slice on the log of a spread, its values held.</summary>
    private double Spread(double spread, double scale, int from, int count)
    {
        var squares = 0.0;
        for (var i = from; i < from + count; i++) squares += _at[i] * _at[i];
        return Math.Exp(LogSlice.Move(_generator, Math.Log(spread), Math.Log(SmallestSpread * scale), t =>
        {
            var square = Math.Exp(2 * t);
            return ((1 - count) * t) - (squares / (2 * square)) - (square / (2 * scale * scale));
        }));
    }

    /// <summary>Slice on the log of a spread, its values stretching with it.</summary>
    private double Stretch(double spread, double scale, int from, int count)
    {
        _at.CopyTo(_proposal, 0);
        var moved = Math.Exp(LogSlice.Move(_generator, Math.Log(spread), Math.Log(SmallestSpread * scale), t =>
        {
            var by = Math.Exp(t) / spread;
            for (var i = from; i < from + count; i++) _proposal[i] = by * _at[i];
            return Log(_proposal) + t - (by * spread * by * spread / (2 * scale * scale));
        }));
        for (var i = from; i < from + count; i++) _at[i] *= moved / spread;
        _log = Log(_at);
        return moved;
    }

    private void Prior(double[] into)
    {
        for (var i = 0; i < _model.Recipes; i++) into[i] = _recipeSpread * _generator.NextNormal();
        into[_model.Slope] = _model.AgesDiffer ? AcrossTastings.AgeScale * _generator.NextNormal() : 0;
        for (var i = _model.FirstWheel; i < into.Length; i++) into[i] = _wheelSpread * _generator.NextNormal();
    }

    private double Log(double[] parameters)
    {
        _model.Worths(parameters, _worths);
        return _likelihood.Log(_worths);
    }
}
