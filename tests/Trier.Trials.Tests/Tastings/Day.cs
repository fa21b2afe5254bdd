using System.Collections.Immutable;
using Trier.Statistics.Randomness;
using Trier.Trials.Common;
using Trier.Trials.Makes;
using Trier.Trials.Plans;
using Trier.Trials.Tastings;
using Trier.Trials.Tastings.Events;
using Trier.Trials.Tastings.Steps;
using Trier.Trials.Verdicts;

namespace Trier.Trials.Tests.Tastings;

/// <summary>A trial played through its steps in memory: every act is appended as a store would, one minute apart.</summary>
internal sealed class Day
{
    private readonly List<Logged> _log = [];
    private readonly Dictionary<TasterId, List<BallotRevision>> _ballots = [];
    private int _made;

    public Day(TrialPlan? plan = null) => Append(DraftTasting.Begin(Now, plan ?? AnyPlan).Value);

    public static TrialPlan AnyPlan { get; } = new("Five wheels", "Which recipe next?", "A kitchen", null, CountingRule.Default, JuniorsCount: false, Invented: true);

    public TrialId Trial { get; } = new(Number(0xAA, 1));

    public DateTimeOffset Now { get; private set; } = new(2025, 8, 30, 15, 0, 0, TimeSpan.FromHours(2));

    public IReadOnlyList<Logged> Log => _log;

    public Tasting Tasting => Tasting.Read(Trial, _log);

    public DayBook Book => Tasting.Book;

    public Key Key => Book.Key ?? throw new InvalidOperationException("Not sealed.");

    public IReadOnlyDictionary<TasterId, BallotHistory> Ballots =>
        _ballots.ToDictionary(pair => pair.Key, pair => BallotHistory.Of(pair.Value, Book.Admitted));

    /// <summary>A sealed tasting of some wheels (A, B, C...) and guests (Guest 1, Guest 2...), with the first wheel served twice if asked.</summary>
    public static Day Sealed(int wheels, int guests, bool repeat = false, ulong seed = 1)
    {
        var day = new Day().Wheels(wheels).Guests(guests);
        if (repeat) day.Do<DraftTasting>((draft, at) => draft.ServeTwice(at, day.Wheel("A")));
        return day.Do<DraftTasting>((draft, at) => draft.Seal(at, new Seed(seed)));
    }

    public static Day Open(int wheels, int guests, bool repeat = false, ulong seed = 1) =>
        Sealed(wheels, guests, repeat, seed).Do<SealedTasting>((step, at) => step.Open(at));

    public static Guid Number(byte kind, int number) => new(number, 0, 0, kind, 0, 0, 0, 0, 0, 0, 0);

    public Day Wheels(int count)
    {
        for (var i = 0; i < count; i++) Do<DraftTasting>((draft, at) => draft.Enter(at, NewWheel($"{(char)('A' + i)}")));
        return this;
    }

    public Wheel NewWheel(string name, string? recipe = null) =>
        new(new WheelId(Number(0xBB, ++_made)), name, WheelFacts.Of([new(WheelFacts.RecipeFact, recipe)]));

    public Day Guests(int count)
    {
        for (var i = 1; i <= count; i++) Do<DraftTasting>((draft, at) => draft.AddTaster(at, NewTaster(), $"Guest {i}", false, false, 1));
        return this;
    }

    public TasterId NewTaster() => new(Number(0xCC, ++_made));

    public WheelId Wheel(string name) => Book.Entries.Single(entry => entry.Name == name).Wheel;

    public TasterId Guest(int number) => Book.Tasters.Single(taster => taster.Number == number).Id;

    public BlindCode Code(string wheel) => Key.Of(Wheel(wheel))[0].Code;

    public BlindCode CheckCode(string wheel) => Key.Of(Wheel(wheel)).Single(line => !line.Counts).Code;

    public Day Do<TStep>(Func<TStep, DateTimeOffset, Outcome<ImmutableArray<DayEvent>>> act)
        where TStep : Tasting
    {
        Append(Try(act).Value);
        return this;
    }

    /// <summary>Does an act that must be refused, and gives the sentences.</summary>
    public string Refused<TStep>(Func<TStep, DateTimeOffset, Outcome<ImmutableArray<DayEvent>>> act)
        where TStep : Tasting
    {
        var outcome = Try(act);
        Assert.False(outcome.Ok, "This should have been refused.");
        Assert.All(outcome.Problems, problem => Assert.EndsWith(".", problem.Sentence, StringComparison.Ordinal));
        return string.Join(" ", outcome.Problems.Select(problem => problem.Sentence));
    }

    public Outcome<ImmutableArray<DayEvent>> Try<TStep>(Func<TStep, DateTimeOffset, Outcome<ImmutableArray<DayEvent>>> act)
        where TStep : Tasting
    {
        Now += TimeSpan.FromMinutes(1);
        return act(Assert.IsAssignableFrom<TStep>(Tasting), Now);
    }

    public void Append(ImmutableArray<DayEvent> events)
    {
        foreach (var happened in events) _log.Add(new Logged(_log.Count + 1, happened));
    }

    /// <summary>Time passes.</summary>
    public Day Wait(int minutes)
    {
        Now += TimeSpan.FromMinutes(minutes);
        return this;
    }

    public Day Close() => Do<OpenTasting>((open, at) => open.Close(at));

    public Day Reveal() => Do<ClosedTasting>((closed, at) => closed.Reveal(at));

    public TastingRecord Record() => Assert.IsType<RevealedTasting>(Tasting).Record(Ballots);

    /// <summary>A guest sends wheels in order, best first; wheels in one word are tied: "A BC D".</summary>
    public BallotRevision Send(TasterId taster, string order) => Send(taster, Say(order), BallotStage.Sent);

    public BallotRevision Send(TasterId taster, Ballot ballot, BallotStage stage, RevisionId? begunFrom = null, BallotSource source = BallotSource.Phone)
    {
        Now += TimeSpan.FromMinutes(1);
        var before = _ballots.TryGetValue(taster, out var found) ? found : _ballots[taster] = [];
        var standing = Tasting switch
        {
            OpenTasting => BallotStanding.InTime,
            ClosedTasting => BallotStanding.AfterClose,
            RevealedTasting => BallotStanding.AfterReveal,
            _ => throw new InvalidOperationException("Not open yet."),
        };
        var current = BallotHistory.Of(before, Book.Admitted).Current?.Id;
        var revision = new BallotRevision(new RevisionId(Number(0xDD, ++_made)), taster, begunFrom ?? current, "a phone", source, stage, standing, Now, ballot);
        before.Add(revision);
        return revision;
    }

    public Ballot Say(string order) => Say(order.Split(' ').Select(group => group.Select(wheel => Code($"{wheel}")).ToArray()));

    public Ballot Say(IEnumerable<IReadOnlyCollection<BlindCode>> places, params (BlindCode Code, SampleAnswer Answer)[] answers) =>
        Ballot.Of([.. Key.Lines.Select(line => line.Code)], places, answers.Select(answer => KeyValuePair.Create(answer.Code, answer.Answer))).Value;
}
