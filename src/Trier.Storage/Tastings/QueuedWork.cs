using Trier.Trials.Common;

namespace Trier.Storage.Tastings;

/// <summary>Somebody who waits for their turn to append to a trial, and for the answer.</summary>
internal abstract class QueuedWork(TrialId trial)
{
    public TrialId Trial => trial;

    /// <summary>Whether nobody waits any more, and nothing is to be written.</summary>
    public abstract bool GivenUp { get; }

    /// <summary>Decides; what goes wrong in deciding is this one's own and told with the answer.</summary>
    public abstract void Decide(TrialTurn turn);

    /// <summary>Tells what was decided, once it is on the disk.</summary>
    public abstract void Answer();

    /// <summary>Tells that nothing was written.</summary>
    public abstract void Fail(Exception fault);
}

internal sealed class QueuedWork<T>(TrialId trial, Func<TrialTurn, T> decide, CancellationToken cancellation) : QueuedWork(trial)
{
    // The batch is written in somebody else's flow: the language a page is read in, say, would be theirs.
    private readonly ExecutionContext? _flow = ExecutionContext.Capture();
    private readonly TaskCompletionSource<T> _answered = new(TaskCreationOptions.RunContinuationsAsynchronously);
    private T? _decided;
    private Exception? _fault;

    public Task<T> Answered => _answered.Task;

    public override bool GivenUp => cancellation.IsCancellationRequested && _answered.TrySetCanceled(cancellation);

    public override void Decide(TrialTurn turn)
    {
        (_decided, _fault) = (default, null);
        if (_flow is null) DecideHere(turn);
        else ExecutionContext.Run(_flow, state => DecideHere((TrialTurn)state!), turn);
    }

    public override void Answer()
    {
        if (_fault is null) _answered.SetResult(_decided!);
        else _answered.SetException(_fault);
    }

    public override void Fail(Exception fault) => _answered.SetException(fault);

    private void DecideHere(TrialTurn turn)
    {
        try
        {
            _decided = decide(turn);
        }
        catch (Exception fault)
        {
            _fault = fault;
        }
    }
}
