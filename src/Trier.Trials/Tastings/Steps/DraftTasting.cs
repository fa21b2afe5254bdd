using System.Collections.Immutable;
using Trier.Statistics.Randomness;
using Trier.Trials.Common;
using Trier.Trials.Makes;
using Trier.Trials.Plans;
using Trier.Trials.Tastings.Events;
using Trier.Trials.Tastings.Plates;

namespace Trier.Trials.Tastings.Steps;

/// <summary>A tasting that is still being put together.</summary>
public sealed class DraftTasting : Tasting
{
    /// <summary>Most wheels of one trial; where they are more than a plate carries, every taster gets some.</summary>
    public const int MostWheels = 24;

    /// <summary>Most tasters of one trial.</summary>
    public const int MostTasters = 500;

    internal DraftTasting(DayBook book)
        : base(book)
    {
    }

    /// <summary>Writes the plan anew.</summary>
    /// <param name="at">When.</param>
    /// <param name="plan">The plan.</param>
    public Outcome<ImmutableArray<DayEvent>> Plan(DateTimeOffset at, TrialPlan plan) => Begin(at, plan);

    /// <summary>Begins a trial.</summary>
    /// <param name="at">When.</param>
    /// <param name="plan">The plan.</param>
    public static Outcome<ImmutableArray<DayEvent>> Begin(DateTimeOffset at, TrialPlan plan)
    {
        var problems = new List<Problem>();
        if (string.IsNullOrWhiteSpace(plan.Title)) problems.Add(new("title", "Give the trial a short title."));
        if (plan.Title.Length > 80) problems.Add(new("title", "A title has 80 letters at most."));
        if (string.IsNullOrWhiteSpace(plan.Question)) problems.Add(new("question", "Write the one question this tasting should answer."));
        if (plan.Question.Length > 200) problems.Add(new("question", "A question has 200 letters at most."));
        if (plan.Rule is CountingRule.PlacePoints { Weights: var weights } && !CountingRule.PlacePoints.Fall(weights)) problems.Add(new("rule", "Place points fall from the first place to the last: none may be higher than the one before, and not all the same."));
        if (plan is { Rule: CountingRule.MeanLiking, Ballot.Liking: false }) problems.Add(new("rule", "Average liking cannot decide where the ballot asks for no liking: ask for it, or choose another rule."));
        if (plan.Serving is { SamplesEach: not (null or (>= 2 and <= ServingRules.MostOnAPlate)) }) problems.Add(new("samplesEach", $"A taster gets 2 to {ServingRules.MostOnAPlate} samples; leave it empty where everybody gets all."));
        if (plan.Serving?.WarmUp?.Length > 60) problems.Add(new("warmUp", "The warm-up is named in 60 letters at most."));
        return problems.Count > 0
            ? Outcome.Fault<ImmutableArray<DayEvent>>(problems)
            : Do(new TrialPlanned(at, plan with { Title = plan.Title.Trim(), Question = plan.Question.Trim(), Host = plan.Host.Trim() }));
    }

    /// <summary>Enters a wheel.</summary>
    /// <param name="at">When.</param>
    /// <param name="wheel">The wheel.</param>
    public Outcome<ImmutableArray<DayEvent>> Enter(DateTimeOffset at, Wheel wheel)
    {
        var problems = new List<Problem>();
        if (CheckWheelName(wheel.Name, wheel.Id) is { } problem) problems.Add(problem);
        if (Book.Entries.Any(entry => entry.Wheel == wheel.Id)) problems.Add(new("wheel", "This wheel is in the trial already."));
        if (Book.Standing.Count() >= MostWheels) problems.Add(new("wheel", $"A trial has {MostWheels} wheels at most. Hold a second trial for the rest."));
        if (problems.Count > 0) return Outcome.Fault<ImmutableArray<DayEvent>>(problems);
        return Do(new EntryAdded(at, new Entry(wheel.Id, NextLabel(), wheel.Name.Trim(), Marks.For(wheel.Facts.Recipe ?? wheel.Name, Book.Entries), wheel.Facts)));
    }

    /// <summary>Takes a wheel off the draft. To pull a wheel for a reason that belongs in the record, use <see cref="Withdraw"/>.</summary>
    /// <param name="at">When.</param>
    /// <param name="wheel">Which wheel.</param>
    public Outcome<ImmutableArray<DayEvent>> Remove(DateTimeOffset at, WheelId wheel)
    {
        if (Book.Entry(wheel) is not { } entry) return Fault("wheel", "This wheel is not in the trial.");
        return Book.IsWithdrawn(wheel) ? Fault("wheel", $"{entry.Name} is withdrawn: its record stays, and the verdict tells it.") : Do(new EntryRemoved(at, wheel));
    }

    /// <summary>Withdraws a wheel, with its reason.</summary>
    /// <param name="at">When.</param>
    /// <param name="wheel">Which wheel.</param>
    /// <param name="reason">Why.</param>
    /// <param name="decidedBy">Who decided, or null.</param>
    public Outcome<ImmutableArray<DayEvent>> Withdraw(DateTimeOffset at, WheelId wheel, string reason, string? decidedBy)
    {
        if (Withdrawing.Check(Book, wheel, reason) is { } problem) return Outcome.Fault<ImmutableArray<DayEvent>>([problem]);
        return Book.Repeat == wheel
            ? Do(new WheelWithdrawn(at, wheel, reason.Trim(), decidedBy), new RepeatChosen(at, null))
            : Do(new WheelWithdrawn(at, wheel, reason.Trim(), decidedBy));
    }

    /// <summary>Chooses the wheel that is served twice under two codes, or none.</summary>
    /// <param name="at">When.</param>
    /// <param name="wheel">Which wheel, or null.</param>
    public Outcome<ImmutableArray<DayEvent>> ServeTwice(DateTimeOffset at, WheelId? wheel) =>
        wheel is { } chosen && !Book.Standing.Any(entry => entry.Wheel == chosen)
            ? Fault("repeat", "Only a wheel that is in the trial can be served twice.")
            : wheel is { } twice && Book.SecondFlight.Contains(twice)
            ? Fault("repeat", "A wheel of the second flight is not placed, so serving it twice measures nothing.")
            : Do(new RepeatChosen(at, wheel));

    /// <summary>Puts a wheel into the second flight, after the others and not placed among them, or back into the first.</summary>
    /// <param name="at">When.</param>
    /// <param name="wheel">Which wheel.</param>
    /// <param name="second">Whether it is the second flight.</param>
    public Outcome<ImmutableArray<DayEvent>> ChooseFlight(DateTimeOffset at, WheelId wheel, bool second)
    {
        if (!Book.Standing.Any(entry => entry.Wheel == wheel)) return Fault("wheel", "This wheel is not in the trial.");
        return second && Book.Repeat == wheel
            ? Fault("flight", "This wheel is served twice: choose another for that first. A wheel of the second flight is not placed, so serving it twice measures nothing.")
            : Do(new FlightChosen(at, wheel, second));
    }

    /// <summary>Puts a taster on the list.</summary>
    /// <param name="at">When.</param>
    /// <param name="id">Their id.</param>
    /// <param name="name">Their name.</param>
    /// <param name="knowsTheKey">Whether they know, or will know, which code is which wheel: the maker, a plater.</param>
    /// <param name="junior">Under 12.</param>
    /// <param name="sitting">Which sitting, from 1.</param>
    public Outcome<ImmutableArray<DayEvent>> AddTaster(DateTimeOffset at, TasterId id, string name, bool knowsTheKey, bool junior, int sitting)
    {
        var problems = CheckJoining(id, name, sitting);
        return problems.IsEmpty ? Do(NewTaster(at, id, name, knowsTheKey, junior, sitting)) : Outcome.Fault<ImmutableArray<DayEvent>>(problems);
    }

    /// <summary>Takes a taster off the list.</summary>
    /// <param name="at">When.</param>
    /// <param name="taster">Who.</param>
    public Outcome<ImmutableArray<DayEvent>> LetGo(DateTimeOffset at, TasterId taster) =>
        Book.Taster(taster) is { LetGo: false } ? Do(new TasterLetGo(at, taster)) : Fault("taster", "This taster is not on the list.");

    /// <summary>Says which wheels stay off a taster's plate.</summary>
    /// <param name="at">When.</param>
    /// <param name="taster">Whose plate.</param>
    /// <param name="wheels">All wheels to leave off.</param>
    public Outcome<ImmutableArray<DayEvent>> LeaveOff(DateTimeOffset at, TasterId taster, ImmutableArray<WheelId> wheels) =>
        LeavingOff.Check(Book, taster, wheels) is { } problem ? Outcome.Fault<ImmutableArray<DayEvent>>([problem]) : Do(new SampleLeftOff(at, taster, wheels));

    /// <summary>Draws codes, key and plates and fixes the plan.</summary>
    /// <param name="at">When.</param>
    /// <param name="seed">Chance for the draw; from a secure source of the shell.</param>
    public Outcome<ImmutableArray<DayEvent>> Seal(DateTimeOffset at, Seed seed)
    {
        var problems = new List<Problem>();
        problems.AddRange(LeavingOff.TooFew(Book));
        if (!Book.Present.Any()) problems.Add(new("tasters", "Put at least one taster on the list; more can join until the close."));
        var placed = Book.Standing.Count(entry => !Book.SecondFlight.Contains(entry.Wheel));
        if (Book.Plan.Rule is CountingRule.PlacePoints points && points.Weights.Length != placed)
            problems.Add(new("rule", $"Place points need one weight for each of the {placed} wheels; there are {points.Weights.Length}."));
        problems.AddRange(LeavingOff.EmptyPlates(Book));
        return problems.Count > 0 ? Outcome.Fault<ImmutableArray<DayEvent>>(problems) : KeyDraw.Draw(Book, at, seed).Then(key => Do(key));
    }

    private string NextLabel() => $"W{Book.Log.Count(logged => logged.Event is EntryAdded) + 1}";
}
