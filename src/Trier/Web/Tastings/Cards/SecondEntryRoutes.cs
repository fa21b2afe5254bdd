using System.Collections.Immutable;
using Trier.Storage.Tastings;
using Trier.Trials.Common;
using Trier.Trials.Tastings;
using Trier.Trials.Tastings.Steps;
using Trier.Web.Hosting;
using Trier.Web.Shared;

namespace Trier.Web.Tastings.Cards;

/// <summary>A paper ballot typed in again by another person, and the differences settled.</summary>
internal static class SecondEntryRoutes
{
    public static void MapSecondEntries(this IEndpointRouteBuilder maker)
    {
        maker.MapGet("/trials/{id:guid}/paper/{taster:guid}/second", (Guid id, Guid taster, TrialStore trials) => WithAsync(id, taster, trials, (tasting, who, history) =>
            SecondEntries.First(history) is null ? Page.GoTo(List(id)) : Page.Of<TypeInPage>(("Tasting", tasting), ("Taster", who), ("History", history), ("Second", true), ("Sheet", Sheet(tasting, who, Ballot.Empty)))));
        maker.MapPost("/trials/{id:guid}/paper/{taster:guid}/second", TypedAsync);
        maker.MapGet("/trials/{id:guid}/paper/{taster:guid}/compare", (Guid id, Guid taster, string? by, TrialStore trials) => WithAsync(id, taster, trials, (tasting, who, history) => Compare(tasting, who, history, by ?? "", [])));
        maker.MapPost("/trials/{id:guid}/paper/{taster:guid}/compare", SettledAsync);
    }

    private static async Task<IResult> TypedAsync(Guid id, Guid taster, IFormCollection form, TrialStore trials)
    {
        if (await FindAsync(id, taster, trials) is not var (tasting, who, history)) return Results.NotFound();
        if (tasting is not RoomTasting || SecondEntries.First(history) is not { } first) return Page.GoTo(List(id));
        var posted = new Posted(form);
        var (by, sheet) = (posted.Text("by"), PaperSheet.Of(tasting.Book.Served(who.Id), tasting.Book.Placed(who.Id), posted, tasting.Book.Asked));
        // What the first entry says of samples withdrawn since is no part of the second.
        var read = sheet.Read(tasting.Book.Plate(who.Id)!.Codes, Ballot.Empty);
        var named = by.Length > 0 ? [] : new[] { new Problem("by", "Say who types it in the second time: another person sees other slips.") };
        if (!read.TryGet(out var ballot) || named.Length > 0)
            return Page.Again<TypeInPage>(("Tasting", tasting), ("Taster", who), ("History", history), ("Second", true), ("By", by), ("Sheet", sheet), ("Problems", (ImmutableArray<Problem>)[.. read.Ok ? [] : read.Problems, .. named]));
        var send = new BallotSend(new RevisionId(posted.Id("sendId") ?? Guid.NewGuid()), who.Id, null, SecondEntries.Device, BallotSource.Paper, BallotStage.Tasting, ballot);
        await trials.ReceiveAsync(tasting.Book.Trial, send);
        if (Mismatches(tasting, who, first, ballot).Length > 0) return Page.GoTo($"/trials/{id}/paper/{taster}/compare?by={Uri.EscapeDataString(by)}");
        await trials.ActAsync(new(id), now => now is RoomTasting room ? room.CheckPaper(trials.Now, who.Id, first.Id, by) : Closed());
        return Page.GoTo(List(id));
    }

    private static async Task<IResult> SettledAsync(Guid id, Guid taster, IFormCollection form, TrialStore trials)
    {
        if (await FindAsync(id, taster, trials) is not var (tasting, who, history)) return Results.NotFound();
        var posted = new Posted(form);
        var by = posted.Text("by");
        if (tasting is not RoomTasting || SecondEntries.First(history) is not { } first || SecondEntries.Second(history) is not { } second || by.Length == 0) return Page.GoTo(List(id));
        var settled = PaperMismatch.Settle(Sheet(tasting, who, first.Content), Sheet(tasting, who, second.Content), posted.Text);
        var read = settled.Read(tasting.Book.Plate(who.Id)!.Codes, first.Content);
        if (!read.TryGet(out var ballot)) return Compare(tasting, who, history, by, [.. read.Problems.Select(problem => new FieldFault(problem.Field, problem.Field, problem.Sentence))]);
        // Begun from the version the page compared: a send that came in between is never lost, the taster is asked.
        var shown = posted.Id("first") is { } compared ? new RevisionId(compared) : first.Id;
        var send = new BallotSend(new RevisionId(posted.Id("sendId") ?? Guid.NewGuid()), who.Id, shown, "paper", BallotSource.Paper, first.Stage, ballot);
        var received = await trials.ReceiveAsync(tasting.Book.Trial, send);
        if (received.TryGet(out var receipt)) await trials.ActAsync(new(id), now => now is RoomTasting room ? room.CheckPaper(trials.Now, who.Id, receipt.Revision.Id, by) : Closed());
        return Page.GoTo(List(id));
    }

    private static IResult Compare(Tasting tasting, Taster who, BallotHistory history, string by, IReadOnlyList<FieldFault> faults)
    {
        if (by.Length == 0 || SecondEntries.First(history) is not { } first || SecondEntries.Second(history) is not { } second) return Page.GoTo(List(tasting.Book.Trial.Value));
        return Page.Of<ComparePage>(("Tasting", tasting), ("Taster", who), ("First", first.Id), ("By", by), ("Mismatches", Mismatches(tasting, who, first, second.Content)), ("Faults", faults));
    }

    private static ImmutableArray<PaperMismatch> Mismatches(Tasting tasting, Taster who, BallotRevision first, Ballot second) => PaperMismatch.Of(Sheet(tasting, who, first.Content), Sheet(tasting, who, second));

    private static PaperSheet Sheet(Tasting tasting, Taster who, Ballot ballot) => PaperSheet.Of(tasting.Book.Served(who.Id), tasting.Book.Placed(who.Id), ballot, tasting.Book.Asked);

    private static Outcome<ImmutableArray<Trials.Tastings.Events.DayEvent>> Closed() => Plans.TrialPages.TooLate("paper", "The key is open: nothing more is typed in.");

    private static string List(Guid id) => $"/trials/{id}/paper";

    private static async Task<IResult> WithAsync(Guid id, Guid taster, TrialStore trials, Func<Tasting, Taster, BallotHistory, IResult> page) =>
        await FindAsync(id, taster, trials) is var (tasting, who, history) ? page(tasting, who, history) : Results.NotFound();

    private static async Task<(Tasting Tasting, Taster Taster, BallotHistory History)?> FindAsync(Guid id, Guid taster, TrialStore trials) =>
        await trials.FindAsync(new TrialId(id)) is { } tasting && tasting.Book.Taster(new TasterId(taster)) is { } found && tasting.Book.Plate(found.Id) is not null
            ? (tasting, found, await trials.BallotAsync(tasting, found.Id))
            : null;
}
