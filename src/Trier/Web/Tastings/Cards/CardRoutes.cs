using System.Globalization;
using Trier.Storage.Tastings;
using Trier.Trials.Common;
using Trier.Trials.Tastings;
using Trier.Trials.Tastings.Placing;
using Trier.Trials.Tastings.Steps;
using Trier.Web.Access;
using Trier.Web.Hosting;

namespace Trier.Web.Tastings.Cards;

/// <summary>What the maker prints for the table, and where a paper ballot is typed in. None of these pages names a wheel.</summary>
internal static class CardRoutes
{
    public static void MapCards(this IEndpointRouteBuilder maker)
    {
        maker.MapGet("/trials/{id:guid}/cards", CardsAsync);
        maker.MapGet("/trials/{id:guid}/poster", PosterAsync);
        maker.MapGet("/trials/{id:guid}/paper-ballots", SheetsAsync);
        maker.MapGet("/trials/{id:guid}/paper", PaperListAsync);
        maker.MapGet("/trials/{id:guid}/paper/{taster:guid}", TypeInAsync);
        maker.MapPost("/trials/{id:guid}/paper/{taster:guid}", TypedInAsync);
        maker.MapSecondEntries();
        maker.MapSlips();
    }

    private static async Task<IResult> CardsAsync(Guid id, string? only, string? spares, HttpContext context, TrialStore trials, TasterDoors doors, PhoneAddress address)
    {
        if (await trials.FindAsync(new TrialId(id)) is not { } tasting) return Results.NotFound();
        if (tasting is not DraftTasting) await address.NoteAsync(tasting.Book.Trial, address.Now(context));
        var changed = ChangedPlates.Of(tasting.Book);
        return Page.Of<CardsPage>(
            ("Tasting", tasting),
            ("Doors", await doors.OfAsync(tasting)),
            ("Site", address.Now(context)),
            ("Changed", changed),
            ("Only", only is null ? null : only == "changed" ? changed : int.TryParse(only, NumberStyles.None, CultureInfo.InvariantCulture, out var number) ? [number] : null),
            ("Spares", spares is not null));
    }

    private static async Task<IResult> PosterAsync(Guid id, HttpContext context, TrialStore trials, PhoneAddress address) =>
        await trials.FindAsync(new TrialId(id)) is { } tasting ? Page.Of<PosterPage>(("Tasting", tasting), ("Site", address.Now(context))) : Results.NotFound();

    private static async Task<IResult> PaperListAsync(Guid id, Guid? saved, TrialStore trials)
    {
        if (await trials.FindAsync(new TrialId(id)) is not { } tasting) return Results.NotFound();
        return Page.Of<PaperListPage>(("Tasting", tasting), ("Ballots", await trials.BallotsAsync(tasting)), ("Saved", saved is { } taster ? tasting.Book.Taster(new TasterId(taster)) : null));
    }

    private static async Task<IResult> TypeInAsync(Guid id, Guid taster, string? show, TrialStore trials)
    {
        if (await FindAsync(id, taster, trials) is not var (tasting, who)) return Results.NotFound();
        var history = await trials.BallotAsync(tasting, who.Id);
        // Who counts the ballots in should not read them in passing: what was sent from a phone opens only when it is asked for.
        if (show is not "1" && tasting is not RevealedTasting && history.Current is { Stage: BallotStage.Sent, Source: not BallotSource.Paper } sent)
            return Page.Of<AlreadySentPage>(("Tasting", tasting), ("Taster", who), ("At", sent.ReceivedAt));
        return Page.Of<TypeInPage>(("Tasting", tasting), ("Taster", who), ("History", history), ("Sheet", PaperSheet.Of(tasting.Book.Served(who.Id), tasting.Book.Placed(who.Id), history.Current?.Content ?? Ballot.Empty, tasting.Book.Asked)));
    }

    private static async Task<IResult> TypedInAsync(Guid id, Guid taster, IFormCollection form, TrialStore trials)
    {
        if (await FindAsync(id, taster, trials) is not var (tasting, who)) return Results.NotFound();
        var history = await trials.BallotAsync(tasting, who.Id);
        var posted = new Posted(form);
        var sheet = PaperSheet.Of(tasting.Book.Served(who.Id), tasting.Book.Placed(who.Id), posted, tasting.Book.Asked);
        var plate = tasting.Book.Plate(who.Id)!.Codes;
        var read = sheet.Read(plate, history.Current?.Content ?? Ballot.Empty);
        var begunFrom = posted.Id("base") is { } shown ? new RevisionId(shown) : (RevisionId?)null;
        var signIn = posted.Ticked("signin") && tasting is not RevealedTasting ? Ballots.SignInForm.Read(posted, tasting.Book) with { AsksHost = who.AsksHost } : null;
        // What is ticked at the top of the sheet is consent: a slip further down must not untick it.
        var shownAgain = signIn is null ? who : who with { Taste = signIn.Taste, NoSmell = signIn.NoSmell, Agreed = signIn.Agreed };
        if (!read.TryGet(out var ballot)) return Page.Again<TypeInPage>(("Tasting", tasting), ("Taster", shownAgain), ("History", history), ("Sheet", sheet), ("Base", begunFrom), ("Problems", read.Problems));
        var send = new BallotSend(new RevisionId(posted.Id("sendId") ?? Guid.NewGuid()), who.Id, begunFrom, "paper", BallotSource.Paper, BallotStage.Sent, ballot);
        var received = await trials.ReceiveAsync(tasting.Book.Trial, send);
        if (signIn is not null) await trials.ActAsync(tasting.Book.Trial, now => now.SignIn(trials.Now, who.Id, signIn));
        if (!received.Ok) return Page.Again<TypeInPage>(("Tasting", tasting), ("Taster", shownAgain), ("History", history), ("Sheet", sheet), ("Base", begunFrom), ("Problems", received.Problems));
        return Page.GoTo($"/trials/{id}/paper?saved={taster}");
    }

    private static async Task<IResult> SheetsAsync(Guid id, Guid? taster, string? only, string? large, string? sofar, TrialStore trials)
    {
        if (await trials.FindAsync(new TrialId(id)) is not { } tasting) return Results.NotFound();
        TasterId? one = taster is { } chosen ? new TasterId(chosen) : null;
        if (one is { } asked && tasting.Book.Taster(asked) is null) return Results.NotFound();
        var known = sofar is "1" && one is { } whose ? Versions.Working(await trials.BallotAsync(tasting, whose))?.Content ?? Ballot.Empty : null;
        return Page.Of<PaperBallotsPage>(("Tasting", tasting), ("Only", only is "changed" ? ChangedPlates.Of(tasting.Book) : null), ("Whose", one), ("Known", known), ("Large", large is "1"));
    }

    private static async Task<(Tasting Tasting, Taster Taster)?> FindAsync(Guid id, Guid taster, TrialStore trials) =>
        await trials.FindAsync(new TrialId(id)) is { } tasting && tasting.Book.Taster(new TasterId(taster)) is { } found && tasting.Book.Plate(found.Id) is not null
            ? (tasting, found)
            : null;
}
