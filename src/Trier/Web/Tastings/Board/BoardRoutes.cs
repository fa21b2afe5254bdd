using System.Collections.Immutable;
using Trier.Storage.Access;
using Trier.Storage.Tastings;
using Trier.Trials.Common;
using Trier.Trials.Tastings;
using Trier.Trials.Tastings.Events;
using Trier.Trials.Tastings.Steps;
using Trier.Web.Hosting;
using Trier.Web.Plans;

namespace Trier.Web.Tastings.Board;

/// <summary>The board while guests taste: ballots counted in, never votes; what happened in the room; closing and revealing.</summary>
internal static class BoardRoutes
{
    public static void MapBoard(this IEndpointRouteBuilder maker)
    {
        maker.MapGet("/trials/{id:guid}/board", ShowAsync);
        maker.MapGet("/trials/{id:guid}/room", RoomAsync);
        maker.MapPost("/trials/{id:guid}/room/{deed}", NoteAsync);
        maker.MapPost("/trials/{id:guid}/walk-ins/{asked:guid}", AnswerAsync);
        maker.MapPost("/trials/{id:guid}/close", CloseAsync);
        maker.MapPost("/trials/{id:guid}/reopen", (Guid id, IFormCollection form, TrialStore trials) =>
            TrialPages.DoAsync(id, trials, $"/trials/{id}/board", tasting => tasting is ClosedTasting closed ? closed.Reopen(trials.Now, new Posted(form).Text("reason")) : TrialPages.TooLate("reason", "Only closed ballots can be opened again, and only while the key is sealed.")));
        maker.MapPost("/trials/{id:guid}/admit", AdmitAsync);
        maker.MapPost("/trials/{id:guid}/reveal", (Guid id, IFormCollection _, TrialStore trials) =>
            TrialPages.DoAsync(id, trials, $"/trials/{id}/verdict", tasting => tasting is ClosedTasting closed ? closed.Reveal(trials.Now) : TrialPages.TooLate("reveal", "Close the ballots first: the key opens after the last one.")));
    }

    private static async Task<IResult> ShowAsync(Guid id, TrialStore trials, WalkIns walkIns, Copies copies)
    {
        if (await trials.FindAsync(new(id)) is not { } tasting) return Results.NotFound();
        if (tasting is DraftTasting or SealedTasting) return Page.GoTo($"/trials/{id}");
        return await BoardAsync(tasting, trials, walkIns, copies, null);
    }

    private static async Task<IResult> RoomAsync(Guid id, string? still, HttpContext context, TrialStore trials)
    {
        if (await trials.FindAsync(new(id)) is not { } tasting || tasting is DraftTasting) return Page.GoTo($"/trials/{id}");
        // Works without script; a page that is read aloud can be told to stand still.
        if (still is null && tasting is not RevealedTasting) context.Response.Headers["Refresh"] = "10";
        return Page.Of<RoomPage>(("Tasting", tasting), ("Ballots", await trials.BallotsAsync(tasting)), ("Now", trials.Now), ("Still", still is not null));
    }

    /// <summary>The board of an open tasting; with a note of the room that was refused, where one was.</summary>
    /// <param name="tasting">Open or later.</param>
    /// <param name="trials">The trials.</param>
    /// <param name="walkIns">Who is at the door.</param>
    /// <param name="copies">The copies that are kept.</param>
    /// <param name="refused">The note, or null.</param>
    internal static async Task<IResult> BoardAsync(Tasting tasting, TrialStore trials, WalkIns walkIns, Copies copies, RefusedNote? refused)
    {
        var parameters = new (string, object?)[]
        {
            ("Tasting", tasting),
            ("Ballots", await trials.BallotsAsync(tasting)),
            ("Waiting", (await walkIns.OfAsync(tasting.Book.Trial)).Where(walkIn => walkIn.Taster is null && !walkIn.TurnedAway).ToList()),
            ("Now", trials.Now),
            ("NotCopied", tasting is ClosedTasting closed && !await copies.KeptAsync(closed)),
            ("Faults", refused?.Faults ?? []),
            ("Refused", refused),
        };
        return refused is null ? Page.Of<BoardPage>(parameters) : Page.Again<BoardPage>(parameters);
    }

    private static async Task<IResult> NoteAsync(Guid id, string deed, IFormCollection form, TrialStore trials, WalkIns walkIns, Copies copies)
    {
        var posted = new Posted(form);
        var outcome = await trials.ActAsync(new(id), tasting => tasting is RoomTasting room ? Note(room, deed, posted, trials.Now) : TrialPages.TooLate("room", "The room can be noted from the first plate until the reveal."));
        if (outcome.Ok) return Page.GoTo($"/trials/{id}/board");
        return await trials.FindAsync(new(id)) switch
        {
            null => Results.NotFound(),
            DraftTasting or SealedTasting => Page.Again<RefusedPage>(("Problems", outcome.Problems), ("Back", $"/trials/{id}")),
            var found => await BoardAsync(found, trials, walkIns, copies, RefusedNote.Of(deed, posted, outcome.Problems)),
        };
    }

    private static Outcome<ImmutableArray<DayEvent>> Note(RoomTasting room, string deed, Posted posted, DateTimeOffset now)
    {
        // Nobody and no code stand chosen beforehand: a hurried host would note the first on the list.
        if (deed is "late" or "left" or "learned" or "swapped" or "dropped" or "parted" && posted.Id("who") is null) return TrialPages.TooLate("who", "Choose who it was.");
        if (deed is "spoken" or "dropped" or "swapped" && Misread(posted.Text("first")) is { } misread) return TrialPages.TooLate("first", misread);
        if (deed is "swapped" && Misread(posted.Text("second")) is { } other) return TrialPages.TooLate("second", other);
        var taster = new TasterId(posted.Id("who") ?? Guid.Empty);
        var first = BlindCode.TryParse(posted.Text("first"), out var one) ? one : default;
        var second = BlindCode.TryParse(posted.Text("second"), out var two) ? two : default;
        return deed switch
        {
            "late" => room.CameLate(now, taster),
            "left" => room.Leave(now, taster),
            "compared" => room.CompareNotes(now, [.. posted.Ids("people").Select(person => new TasterId(person))]),
            "spoken" => room.SpeakAloud(now, first, posted.Optional("words")),
            "learned" => room.LearnKey(now, taster),
            "swapped" => room.SwapCodes(now, taster, first, second, posted.Text("reason"), posted.Text("witness")),
            "dropped" => room.Drop(now, taster, first, posted.Ticked("replaced")),
            "parted" => room is OpenTasting open ? open.PartLink(now, taster, new TasterId(Guid.CreateVersion7()), posted.Text("second")) : TrialPages.TooLate("second", "The ballots are closed: nobody can join any more."),
            "undo" => room.Undo(now, posted.Number("sequence") ?? 0),
            _ => TrialPages.TooLate("room", "This cannot be noted."),
        };
    }

    private static string? Misread(string code) =>
        code.Length == 0 ? "Choose the sample."
        : BlindCode.TryParse(code, out _) ? null
        : $"“{code}” is no code: a code has three digits, as on the plate.";

    private static async Task<IResult> AnswerAsync(Guid id, Guid asked, IFormCollection form, TrialStore trials, WalkIns walkIns)
    {
        if (await walkIns.FindAsync(asked) is not { } walkIn || walkIn.Trial.Value != id || walkIn.Taster is not null) return Page.GoTo($"/trials/{id}/board");
        // The request's own number, so that an answer that was cut short between list and door is known again: whoever stands on the list was let in.
        var taster = new TasterId(asked);
        if (await trials.FindAsync(new(id)) is { } found && found.Book.Taster(taster) is not null)
        {
            await walkIns.AnswerAsync(asked, taster);
            return Page.GoTo($"/trials/{id}/board");
        }

        if (new Posted(form).Text("answer") != "yes")
        {
            await walkIns.AnswerAsync(asked, null);
            return Page.GoTo($"/trials/{id}/board");
        }

        var outcome = await trials.ActAsync(new(id), tasting => tasting is OpenTasting open ? open.AddTaster(trials.Now, taster, walkIn.Name, false, false, 1) : TrialPages.TooLate("name", "The tasting is not open."));
        if (outcome.Ok) await walkIns.AnswerAsync(asked, taster);
        return outcome.Ok ? Page.GoTo($"/trials/{id}/board") : Page.Again<RefusedPage>(("Problems", outcome.Problems), ("Back", $"/trials/{id}/board"));
    }

    private static async Task<IResult> CloseAsync(Guid id, IFormCollection _, TrialStore trials, Copies copies)
    {
        var outcome = await trials.ActAsync(new(id), tasting => tasting is OpenTasting open ? open.Close(trials.Now) : TrialPages.TooLate("close", "The ballots are closed already."));
        if (!outcome.Ok) return Page.Again<RefusedPage>(("Problems", outcome.Problems), ("Back", $"/trials/{id}/board"));
        // The close stands whether or not it can be copied: the board says so, and tries again.
        if (outcome.Value is ClosedTasting closed) await copies.KeptAsync(closed);
        return Page.GoTo($"/trials/{id}/board");
    }

    private static async Task<IResult> AdmitAsync(Guid id, IFormCollection form, TrialStore trials)
    {
        var wanted = new RevisionId(new Posted(form).Id("revision") ?? Guid.Empty);
        if (await trials.FindAsync(new(id)) is not { } found) return Results.NotFound();
        var revision = (await trials.BallotsAsync(found)).Values.SelectMany(history => history.All).FirstOrDefault(candidate => candidate.Id == wanted);
        return await TrialPages.DoAsync(id, trials, $"/trials/{id}/board", tasting =>
            revision is not null && tasting is ClosedTasting closed ? closed.Admit(trials.Now, revision) : TrialPages.TooLate("ballot", "A late ballot can be let in after the close and before the reveal."));
    }
}
