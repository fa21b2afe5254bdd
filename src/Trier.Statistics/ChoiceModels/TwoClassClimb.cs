using Trier.Statistics.Randomness;

namespace Trier.Statistics.ChoiceModels;

/// <summary>
/// Expectation and maximisation for one or two classes on a panel: voices are weighed by their chance to belong, and each class takes one guarded Newton step on its worths (a step that
/// lowers what it should raise is halved).
/// </summary>
internal sealed class TwoClassClimb
{
    private const int MostRounds = 2_000;
    private const int ShortRounds = 12;
    private const int Starts = 10;
    private const int Carried = 3;
    private const double Still = 1e-8;

    private readonly VoicePanel _panel;
    private readonly ChoiceCounts[] _choices;
    private readonly WorthEquations[] _classes;
    private readonly double[][] _logs;
    private readonly double[] _own;
    private readonly double[] _setLogs;
    private readonly double[] _tieLogs;
    private readonly double[] _scratch;
    private readonly double[] _unused;
    private readonly TiedTerm? _tied;

    public TwoClassClimb(VoicePanel panel, double ghosts)
    {
        _panel = panel;
        _choices = [panel.Weighed(), panel.Weighed()];
        _classes = [.. _choices.Select(choices => new WorthEquations(choices, ghosts))];
        _logs = [new double[panel.Voices.Length], new double[panel.Voices.Length]];
        _own = new double[panel.Voices.Length];
        _setLogs = new double[panel.Sets.Counts.Length];
        _tieLogs = new double[panel.Ties.Count];
        _scratch = new double[panel.Items];
        _unused = new double[panel.Items * panel.Items];
        _tied = panel.Ties.Count == 0 ? null : new TiedTerm(panel.Ties.Max(tie => tie.Group.Length));
    }

    /// <summary>What a climb reached.</summary>
    /// <param name="Log">Log-likelihood of the voices.</param>
    /// <param name="Share">Of the first class.</param>
    /// <param name="First">Log-worths of the first class after the first item.</param>
    /// <param name="Second">Of the second.</param>
    /// <param name="Settled">True where the last round gained less than the tolerance.</param>
    internal sealed record Reached(double Log, double Share, double[] First, double[] Second, bool Settled);

    /// <summary>One class: all voices weigh fully.</summary>
    public (double Log, double[] LogWorths, bool Solved) One()
    {
        Array.Fill(_own, 1);
        Weigh(0, first: true);
        var point = new double[_panel.Items - 1];
        var ascent = NewtonAscent.Climb(_classes[0], point, 1e-9 * _panel.Voices.Length);
        return (_classes[0].Log, point, ascent.Solved);
    }

    /// <summary>Two classes, the best of several starts.</summary>
    public Reached Two(double[] around, Generator generator)
    {
        var begun = new List<Reached>();
        for (var start = 0; start < Starts; start++)
        {
            for (var voice = 0; voice < _own.Length; voice++) _own[voice] = generator.NextDouble() < 0.5 ? 0.9 : 0.1;
            begun.Add(Climb(new Reached(double.NegativeInfinity, 0.5, [.. around], [.. around], false), ShortRounds, weighed: true));
        }

        return begun.OrderByDescending(reached => reached.Log).Take(Carried).Select(reached => Climb(reached, MostRounds, weighed: false)).MaxBy(reached => reached.Log)!;
    }

    private Reached Climb(Reached from, int rounds, bool weighed)
    {
        var (share, log) = (from.Share, from.Log);
        double[][] points = [[.. from.First], [.. from.Second]];
        for (var round = 0; round < rounds; round++)
        {
            if (!weighed)
            {
                var reached = Belong(points, share);
                if (reached - log < Still && round > 0) return new Reached(reached, share, points[0], points[1], true);
                log = reached;
            }

            weighed = false;
            double sum = 0, all = 0;
            for (var voice = 0; voice < _own.Length; voice++)
            {
                sum += _own[voice] * _panel.Voices[voice].Count;
                all += _panel.Voices[voice].Count;
            }

            share = Math.Clamp(sum / all, 1e-9, 1 - 1e-9);
            for (var c = 0; c < 2; c++)
            {
                Weigh(c, c == 0);
                Step(_classes[c], points[c]);
            }
        }

        return new Reached(Belong(points, share), share, points[0], points[1], false);
    }

    private static void Step(WorthEquations model, double[] point)
    {
        var log = model.Evaluate(point);
        if (SymmetricMatrix.Factor(model.Information) is not { } lower) return;
        var move = (double[])model.Gradient.Clone();
        SymmetricMatrix.Solve(lower, move);
        var before = (double[])point.Clone();
        for (var size = 1.0; size > 1e-6; size /= 2)
        {
            for (var i = 0; i < point.Length; i++) point[i] = before[i] + (size * move[i]);
            var next = model.Evaluate(point);
            if (double.IsFinite(next) && next >= log - (1e-12 * Math.Abs(log))) return;
        }

        before.CopyTo(point, 0);
    }

    /// <summary>Each voice's chance to belong to the first class, and the log-likelihood.</summary>
    private double Belong(double[][] points, double share)
    {
        for (var c = 0; c < 2; c++) VoiceLogs(points[c], _logs[c]);
        var log = 0.0;
        for (var voice = 0; voice < _own.Length; voice++)
        {
            var (a, b) = (Math.Log(share) + _logs[0][voice], Math.Log(1 - share) + _logs[1][voice]);
            var high = Math.Max(a, b);
            var sum = Math.Exp(a - high) + Math.Exp(b - high);
            _own[voice] = Math.Exp(a - high) / sum;
            log += _panel.Voices[voice].Count * (high + Math.Log(sum));
        }

        return log;
    }

    private void VoiceLogs(double[] point, double[] logs)
    {
        var highest = 0.0;
        foreach (var value in point) highest = Math.Max(highest, value);
        _scratch[0] = Math.Exp(-highest);
        for (var i = 1; i < _scratch.Length; i++) _scratch[i] = Math.Exp(point[i - 1] - highest);
        var (members, starts, _) = _panel.Sets;
        for (var s = 0; s < _setLogs.Length; s++)
        {
            var total = 0.0;
            for (var m = starts[s]; m < starts[s + 1]; m++) total += _scratch[members[m]];
            _setLogs[s] = Math.Log(total) + highest;
        }

        for (var t = 0; t < _tieLogs.Length; t++) _tieLogs[t] = _tied!.AddTo(_panel.Ties[t], _scratch, new double[_scratch.Length], _unused);
        for (var voice = 0; voice < logs.Length; voice++)
        {
            var part = _panel.Voices[voice];
            var log = 0.0;
            for (var i = 1; i < part.Chosen.Length; i++) log += part.Chosen[i] * point[i - 1];
            foreach (var (set, weight) in part.Sets) log -= weight * _setLogs[set];
            foreach (var (tie, weight) in part.Ties) log += weight * _tieLogs[tie];
            logs[voice] = log;
        }
    }

    private void Weigh(int c, bool first)
    {
        var choices = _choices[c];
        Array.Clear(choices.Chosen);
        Array.Clear(choices.Sets.Counts);
        for (var voice = 0; voice < _own.Length; voice++)
        {
            var part = _panel.Voices[voice];
            var weight = (first ? _own[voice] : 1 - _own[voice]) * part.Count;
            for (var i = 0; i < part.Chosen.Length; i++) choices.Chosen[i] += weight * part.Chosen[i];
            foreach (var (set, own) in part.Sets) choices.Sets.Counts[set] += weight * own;
            foreach (var (tie, own) in part.Ties) choices.Ties[tie].Count = weight * own;
        }
    }
}
