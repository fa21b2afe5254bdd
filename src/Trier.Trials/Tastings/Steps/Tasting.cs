using System.Collections.Immutable;
using System.Globalization;
using Trier.Trials.Common;
using Trier.Trials.Makes;
using Trier.Trials.Tastings.Events;
using Trier.Trials.Tastings.Plates;

namespace Trier.Trials.Tastings.Steps;

/// <summary>
/// A tasting at one of its steps: <see cref="DraftTasting"/>, <see cref="SealedTasting"/>, <see cref="OpenTasting"/>,
/// <see cref="ClosedTasting"/>, <see cref="RevealedTasting"/>. What can be done at a step is a method of that step's type, so that no step
/// can be taken early. Every act returns the events to append, or what stands in the way.
/// </summary>
public abstract class Tasting
{
    private protected Tasting(DayBook book) => Book = book;

    /// <summary>What is known.</summary>
    public DayBook Book { get; }

    /// <summary>Reads where a trial stands from all its events.</summary>
    /// <param name="trial">Which trial.</param>
    /// <param name="log">All events in order, the first a <see cref="TrialPlanned"/>.</param>
    /// <exception cref="ArgumentException">There is no event, or the first is not a plan.</exception>
    public static Tasting Read(TrialId trial, IReadOnlyList<Logged> log)
    {
        var book = DayBookReading.Read(trial, log);
        return book switch
        {
            { RevealedAt: not null } => new RevealedTasting(book),
            { ClosedAt: not null } => new ClosedTasting(book),
            { OpenedAt: not null } => new OpenTasting(book),
            { Key: not null } => new SealedTasting(book),
            _ => new DraftTasting(book),
        };
    }

    /// <summary>Corrects a wheel's name or facts. Possible at every step; the old ones stay in the record.</summary>
    /// <param name="at">When.</param>
    /// <param name="wheel">Which wheel.</param>
    /// <param name="name">The name from now on.</param>
    /// <param name="facts">The facts from now on.</param>
    public Outcome<ImmutableArray<DayEvent>> CorrectEntry(DateTimeOffset at, WheelId wheel, string name, WheelFacts facts)
    {
        if (Book.Entry(wheel) is null) return Fault("wheel", "This wheel is not in the trial.");
        return CheckWheelName(name, wheel) is { } problem ? Outcome.Fault<ImmutableArray<DayEvent>>([problem]) : Do(new EntryCorrected(at, wheel, name.Trim(), facts));
    }

    /// <summary>Corrects a taster's name, or whether they are under 12. Possible at every step; the old one stays in the record.</summary>
    /// <param name="at">When.</param>
    /// <param name="taster">Who.</param>
    /// <param name="name">The name from now on.</param>
    /// <param name="junior">Under 12.</param>
    public Outcome<ImmutableArray<DayEvent>> CorrectTaster(DateTimeOffset at, TasterId taster, string name, bool junior)
    {
        if (Book.Taster(taster) is null) return Fault("taster", "This taster is not on the list.");
        if (CheckName(name, taster) is { } problem) return Outcome.Fault<ImmutableArray<DayEvent>>([problem]);
        return Do(new TasterCorrected(at, taster, name.Trim(), junior));
    }

    /// <summary>Records what a taster said, before tasting, that they usually like. Fixed once their first ballot has come in.</summary>
    /// <param name="at">When.</param>
    /// <param name="taster">Who.</param>
    /// <param name="taste">What.</param>
    public Outcome<ImmutableArray<DayEvent>> DeclareTaste(DateTimeOffset at, TasterId taster, DeclaredTaste taste)
    {
        if (Book.Taster(taster) is null) return Fault("taster", "This taster is not on the list.");
        return Book.ClosedAt is null ? Do(new TasteDeclared(at, taster, taste)) : Fault("taste", "What somebody usually likes is asked before tasting, and the ballots are closed.");
    }

    /// <summary>
    /// Takes in what a taster says before the first bite. A sample they may not have is left off their plate at once, without a reason; where
    /// nothing would be left, the host is asked instead.
    /// </summary>
    /// <param name="at">When.</param>
    /// <param name="taster">Who.</param>
    /// <param name="said">What they said.</param>
    public Outcome<ImmutableArray<DayEvent>> SignIn(DateTimeOffset at, TasterId taster, SignIn said)
    {
        if (Book.Taster(taster) is not { LetGo: false } found) return Fault("taster", "This taster is not on the list.");
        // A paper ballot may be typed in after the close; what stands on it was written before the first bite.
        if (Book.RevealedAt is not null) return Fault("taster", "Signing in comes before tasting, and the key is open.");
        var wheels = found.LeftOff.Union(said.MayNotHave.Where(wheel => Book.Entry(wheel) is not null)).OrderBy(wheel => wheel.Value).ToImmutableArray();
        var empty = LeavingOff.Check(Book, taster, wheels) is not null;
        var events = ImmutableArray.CreateBuilder<DayEvent>();
        events.Add(new TasterSignedIn(at, taster, said.NoSmell, said.AsksHost || empty, said.Junior));
        if (said.Taste is { } taste && taste != found.Taste) events.Add(new TasteDeclared(at, taster, taste));
        if (said.Agreed != found.Agreed) events.Add(new AgreementGiven(at, taster, said.Agreed));
        if (!empty && wheels.Length > found.LeftOff.Count)
        {
            events.Add(new SampleLeftOff(at, taster, wheels));
            if (Book.Plate(taster) is not null) events.Add(new PlateDealt(at, PlateNow.Without(Book, taster, wheels)));
        }

        return Outcome.Of(events.ToImmutable());
    }

    /// <summary>Records what a taster agrees may be published. Possible at every step.</summary>
    /// <param name="at">When.</param>
    /// <param name="taster">Who.</param>
    /// <param name="agreed">What they agree to from now on.</param>
    public Outcome<ImmutableArray<DayEvent>> Agree(DateTimeOffset at, TasterId taster, Agreed agreed) =>
        Book.Taster(taster) is null ? Fault("taster", "This taster is not on the list.") : Do(new AgreementGiven(at, taster, agreed));

    /// <summary>Records the language a taster reads in. Possible at every step.</summary>
    /// <param name="at">When.</param>
    /// <param name="taster">Who.</param>
    /// <param name="language">Its short name; at most 16 letters.</param>
    public Outcome<ImmutableArray<DayEvent>> ChooseLanguage(DateTimeOffset at, TasterId taster, string language)
    {
        if (Book.Taster(taster) is null) return Fault("taster", "This taster is not on the list.");
        return language.Length is > 0 and <= 16 ? Do(new LanguageChosen(at, taster, language)) : Fault("language", "Choose one of the languages.");
    }

    /// <summary>Notes that a taster tastes together with a group, or no longer does. Possible until the reveal.</summary>
    /// <param name="at">When.</param>
    /// <param name="taster">Who.</param>
    /// <param name="group">What the group is called; blank for none.</param>
    public Outcome<ImmutableArray<DayEvent>> JoinGroup(DateTimeOffset at, TasterId taster, string? group)
    {
        if (Book.Taster(taster) is null) return Fault("taster", "This taster is not on the list.");
        if (Book.RevealedAt is not null) return Fault("group", "The key is open: who tasted together is noted before.");
        var name = string.IsNullOrWhiteSpace(group) ? null : group.Trim();
        return name?.Length > 40 ? Fault("group", "A group is named in 40 letters at most.") : Do(new GroupJoined(at, taster, name));
    }

    /// <summary>Names who writes a taster's ballot down for them. Possible until the close; never somebody who has opened the key.</summary>
    /// <param name="at">When.</param>
    /// <param name="taster">Whose ballot.</param>
    /// <param name="by">Who writes; blank for nobody.</param>
    public Outcome<ImmutableArray<DayEvent>> NameScribe(DateTimeOffset at, TasterId taster, string? by)
    {
        if (Book.Taster(taster) is not { LetGo: false } found) return Fault("taster", "This taster is not on the list.");
        if (Book.ClosedAt is not null) return Fault("scribe", "The ballots are closed.");
        if (string.IsNullOrWhiteSpace(by)) return Do(new ScribeNamed(at, taster, null));
        var name = by.Trim();
        if (name.Length > 60) return Fault("scribe", "A name has 60 letters at most.");
        return Book.KeyOpenings.Any(opening => Same(opening.By, name)) || Book.Tasters.Any(one => Same(one.Name, name) && Knows(one))
            ? Fault("scribe", $"{name} has seen the key: let somebody else write for {found.Name}.")
            : Do(new ScribeNamed(at, taster, name));
    }

    /// <summary>The wheels leave the cave.</summary>
    /// <param name="at">When.</param>
    public Outcome<ImmutableArray<DayEvent>> TakeOut(DateTimeOffset at) =>
        Book.ClosedAt is not null ? Fault("out", "The ballots are closed.")
        : Book.TakenOutAt is { } before ? Fault("out", string.Create(CultureInfo.InvariantCulture, $"It is noted already that the wheels left the cave at {before:HH:mm}."))
        : Do(new WheelsTakenOut(at));

    /// <summary>Ticks a step of the plating as done, or takes the tick away.</summary>
    /// <param name="at">When.</param>
    /// <param name="work">“cut W3” or “plate 7”.</param>
    /// <param name="done">Whether it is done.</param>
    public Outcome<ImmutableArray<DayEvent>> Tick(DateTimeOffset at, string work, bool done)
    {
        if (Book.Key is null) return Fault("tick", "The key is not sealed: there is nothing to plate yet.");
        var known = Book.Standing.Any(entry => work == $"cut {entry.Label}") || Enumerable.Range(1, Book.Orders.Length).Any(number => work == $"plate {number}");
        if (!known) return Fault("tick", "This is no step of the plating.");
        return Book.Plated.Contains(work) == done ? Fault("tick", done ? "This is ticked already." : "This is not ticked.") : Do(new PlatingTicked(at, work, done));
    }

    /// <summary>One plate is made again from the spare: same codes, same order.</summary>
    /// <param name="at">When.</param>
    /// <param name="number">Its number.</param>
    /// <param name="reason">Why.</param>
    public Outcome<ImmutableArray<DayEvent>> MakeAgain(DateTimeOffset at, int number, string reason)
    {
        if (Book.Key is null || Book.ClosedAt is not null) return Fault("number", "A plate is made again between the sealing and the close.");
        if (number < 1 || number > Book.Orders.Length) return Fault("number", "There is no plate of this number.");
        return string.IsNullOrWhiteSpace(reason) ? Fault("reason", "Say why the plate is made again.") : Do(new PlateMadeAgain(at, number, reason.Trim()));
    }

    private protected DayBook Later(IEnumerable<DayEvent> events)
    {
        var log = Book.Log.ToBuilder();
        foreach (var happened in events) log.Add(new Logged(log.Count + 1, happened));
        return DayBookReading.Read(Book.Trial, log.ToImmutable());
    }

    private protected bool Knows(Taster taster) => taster.KnowsTheKey || Book.Learned.Any(learned => learned.Taster == taster.Id);

    private protected Outcome<ImmutableArray<DayEvent>> Opening(DateTimeOffset at, string by, bool early, TasterId? taster)
    {
        var opened = new KeyOpened(at, by, early);
        if (taster is not { } id) return Do(opened);
        if (Book.Taster(id) is not { } found) return Fault("taster", "This taster is not on the list.");
        return Knows(found) ? Do(opened) : Do(opened, new KeyLearned(at, id));
    }

    private protected static Outcome<ImmutableArray<DayEvent>> Do(params ImmutableArray<DayEvent> events) => Outcome.Of(events);

    private protected static Outcome<ImmutableArray<DayEvent>> Fault(string field, string sentence) => Outcome.Fault<ImmutableArray<DayEvent>>(field, sentence);

    private protected static bool Same(string left, string right) => string.Equals(left.Trim(), right.Trim(), StringComparison.OrdinalIgnoreCase);

    private protected Problem? CheckWheelName(string name, WheelId self)
    {
        if (string.IsNullOrWhiteSpace(name)) return new Problem("name", "A wheel needs a name: two words at most are easiest to read.");
        if (name.Trim().Length > 30) return new Problem("name", "A wheel's name has 30 letters at most; the rest can stand in its notes.");
        return Book.Entries.Any(entry => entry.Wheel != self && Same(entry.Name, name))
            ? new Problem("name", $"Another wheel is already called {name.Trim()}: give this one a name of its own.")
            : null;
    }

    private protected Problem? CheckName(string name, TasterId? self)
    {
        if (string.IsNullOrWhiteSpace(name)) return new Problem("name", "A taster needs a name for the card.");
        if (name.Trim().Length > 60) return new Problem("name", "A name has 60 letters at most.");
        // Before the first plate a name that was taken off the list is free again; after it, its ballot may stand beside the new one.
        var named = Book.OpenedAt is null ? Book.Present : Book.Tasters;
        return named.Any(taster => taster.Id != self && Same(taster.Name, name))
            ? new Problem("name", $"There is a {name.Trim()} on the list already: add a letter to tell the two apart.")
            : null;
    }

    private protected ImmutableArray<Problem> CheckJoining(TasterId id, string name, int sitting)
    {
        var problems = ImmutableArray.CreateBuilder<Problem>();
        if (Book.Taster(id) is not null) problems.Add(new("taster", "This taster is on the list already."));
        if (CheckName(name, null) is { } problem) problems.Add(problem);
        if (Book.Present.Count() >= DraftTasting.MostTasters) problems.Add(new("name", $"A trial takes {DraftTasting.MostTasters} tasters at most."));
        if (sitting < 1) problems.Add(new("sitting", "Sittings are counted from 1."));
        return problems.ToImmutable();
    }

    private protected TasterAdded NewTaster(DateTimeOffset at, TasterId id, string name, bool knowsTheKey, bool junior, int sitting) =>
        new(at, id, Book.Tasters.Length + 1, name.Trim(), knowsTheKey, junior, sitting);
}
