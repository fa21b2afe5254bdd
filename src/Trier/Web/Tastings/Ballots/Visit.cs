using System.Collections.Immutable;
using System.Security.Cryptography;
using System.Text;
using Trier.Storage.Tastings;
using Trier.Trials.Plans;
using Trier.Trials.Tastings;
using Trier.Trials.Tastings.Placing;
using Trier.Trials.Tastings.Steps;
using Trier.Web.Access;

namespace Trier.Web.Tastings.Ballots;

/// <summary>A taster at their page: who, where the tasting stands, what they said so far. Holds codes, never the wheels behind them.</summary>
/// <param name="Door">The link they came by.</param>
/// <param name="Tasting">The tasting as read now.</param>
/// <param name="Taster">The taster.</param>
/// <param name="History">Their ballot.</param>
public sealed record Visit(TasterDoor Door, Tasting Tasting, Taster Taster, BallotHistory History)
{
    /// <summary>The codes served now, in serving order.</summary>
    public ImmutableArray<BlindCode> Served { get; } = Tasting.Book.Served(Taster.Id);

    /// <summary>Those of them that are put in places: samples of a second flight are liked and not placed.</summary>
    public ImmutableArray<BlindCode> ToPlace { get; } = Tasting.Book.Placed(Taster.Id);

    /// <summary>Whether this taster has come and has no plate yet.</summary>
    public bool AwaitsPlate => Tasting is OpenTasting && !Taster.LetGo && Tasting.Book.Plate(Taster.Id) is null;

    /// <summary>Every code dealt to this taster, those withdrawn since included.</summary>
    public ImmutableArray<BlindCode> Dealt { get; } = Tasting.Book.Plate(Taster.Id)?.Codes ?? [];

    /// <summary>The revision the page goes on from, or null.</summary>
    public BallotRevision? Working { get; } = Versions.Working(History);

    /// <summary>What was said so far.</summary>
    public Ballot Ballot => Working?.Content ?? Ballot.Empty;

    /// <summary>The link's path.</summary>
    public string Path => Door.Path;

    /// <summary>What this ballot asks: fewer steps for a junior.</summary>
    public BallotPlan Asked { get; } = Taster.Junior ? BallotPlan.Stored(Tasting.Book.Asked.Liking, remark: false, [], [], again: false) : Tasting.Book.Asked;

    /// <summary>Whether ballots are frozen: what comes now is kept as late.</summary>
    public bool Closed => Tasting is ClosedTasting or RevealedTasting;

    /// <summary>What was said of a sample.</summary>
    /// <param name="code">The sample.</param>
    public SampleAnswer Said(BlindCode code) => Ballot.Answers.GetValueOrDefault(code) ?? SampleAnswer.Nothing;

    /// <summary>The path of a sample's page.</summary>
    /// <param name="number">From 1.</param>
    public string SamplePath(int number) => FormattableString.Invariant($"{Path}/sample/{number}");

    /// <summary>The path of the page on which the rest is asked of a sample.</summary>
    /// <param name="number">From 1.</param>
    public string MorePath(int number) => FormattableString.Invariant($"{Path}/more/{number}");

    /// <summary>Where the first sample, or with nothing asked of single samples the places, is.</summary>
    public string FirstPath => Asked.AsksFirst ? SamplePath(1) : $"{Path}/places";

    /// <summary>The step after the places: the first sample of which the rest was not said, or the review.</summary>
    public string AfterPlaces()
    {
        var open = Asked.AsksAfter ? Served.Select((code, index) => Said(code) is { Again: null, Salt: null, Right: null, Words.IsEmpty: true } ? index + 1 : 0).FirstOrDefault(number => number > 0) : 0;
        return open == 0 ? $"{Path}/review" : MorePath(open);
    }

    /// <summary>
    /// Names a draft in the phone's own store: by a hash of the link (never the link itself), the step, and the revision it goes on from.
    /// </summary>
    /// <param name="step">The step.</param>
    public string DraftKey(string step)
    {
        var link = Convert.ToHexStringLower(SHA256.HashData(Encoding.ASCII.GetBytes(Door.Token)).AsSpan(0, 8));
        return $"{link}-{step}-{(Working is { } working ? working.Id.Value.ToString("N")[..8] : "new")}";
    }

    /// <summary>Where the taster was: the sample after the last one answered, then the places, then the review.</summary>
    public string Resume()
    {
        if (Served.IsEmpty) return Path;
        var placed = Placement.Of(Ballot, ToPlace).Rows.Length;
        if (placed == ToPlace.Length) return AfterPlaces();
        if (!Asked.AsksFirst) return $"{Path}/places";
        var answered = Served.Select((code, index) => Ballot.Answers.ContainsKey(code) ? index + 1 : 0).Max();
        return placed > 0 || answered == Served.Length ? $"{Path}/places" : SamplePath(answered + 1);
    }
}

/// <summary>Finds the taster behind a link.</summary>
/// <param name="doors">The links.</param>
/// <param name="trials">The trials.</param>
public sealed class Visits(TasterDoors doors, TrialStore trials)
{
    /// <summary>The taster's visit, or null where the link opens nothing.</summary>
    /// <param name="token">The link's secret.</param>
    public async Task<Visit?> FindAsync(string token)
    {
        if (await doors.FindAsync(token) is not { } door || await trials.FindAsync(door.Trial) is not { } tasting) return null;
        if (tasting.Book.Taster(door.Taster) is not { } taster) return null;
        return new Visit(door, tasting, taster, await trials.BallotAsync(tasting, taster.Id));
    }
}
