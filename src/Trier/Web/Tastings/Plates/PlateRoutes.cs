using System.Globalization;
using Trier.Statistics.Randomness;
using Trier.Storage.Tastings;
using Trier.Trials.Common;
using Trier.Trials.Tastings;
using Trier.Trials.Tastings.Steps;
using Trier.Web.Access;
using Trier.Web.Hosting;
using Trier.Web.Plans;

namespace Trier.Web.Tastings.Plates;

/// <summary>Sealing, the plates and the plating list.</summary>
internal static class PlateRoutes
{
    public static void MapPlates(this IEndpointRouteBuilder maker)
    {
        maker.MapPost("/trials/{id:guid}/seal", (Guid id, IFormCollection _, TrialStore trials, Chance chance) =>
            TrialPages.CommitAsync(id, trials, $"/trials/{id}/plates", tasting => tasting is DraftTasting draft ? draft.Seal(trials.Now, chance.Draw()) : TrialPages.TooLate("seal", "The key is sealed already.")));
        maker.MapPost("/trials/{id:guid}/break-seal", (Guid id, IFormCollection _, TrialStore trials) =>
            TrialPages.DoAsync(id, trials, $"/trials/{id}", tasting => tasting is SealedTasting sealedTasting ? sealedTasting.BreakSeal(trials.Now) : TrialPages.TooLate("seal", "The first plate is out: the seal can no longer be broken.")));
        maker.MapGet("/trials/{id:guid}/plates", ShowAsync);
        maker.MapGet("/trials/{id:guid}/plating", AskAsync);
        maker.MapPost("/trials/{id:guid}/plating", OpenKeyAsync);
        maker.MapPost("/trials/{id:guid}/open", (Guid id, IFormCollection _, TrialStore trials) =>
            TrialPages.DoAsync(id, trials, $"/trials/{id}/board", tasting => tasting is SealedTasting sealedTasting ? sealedTasting.Open(trials.Now) : TrialPages.TooLate("open", "The tasting is open already.")));
        maker.MapPost("/trials/{id:guid}/only-these", (Guid id, IFormCollection form, TrialStore trials, Chance chance) =>
            TrialPages.CommitAsync(id, trials, $"/trials/{id}/plates", tasting => tasting is SealedTasting sealedTasting
                ? sealedTasting.OnlyThese(trials.Now, [.. new Posted(form).Ids("here").Select(taster => new TasterId(taster))], chance.Draw())
                : TrialPages.TooLate("here", "The first plate is out: whoever comes gets the next plate on the board.")));
        maker.MapPost("/trials/{id:guid}/out-of-the-cave", (Guid id, IFormCollection form, TrialStore trials) =>
            TrialPages.DoAsync(id, trials, $"/trials/{id}/{(new Posted(form).Text("back") == "board" ? "board" : "plates")}", tasting => tasting.TakeOut(trials.Now)));
        maker.MapPost("/trials/{id:guid}/make-again", MakeAgainAsync);
        maker.MapPost("/trials/{id:guid}/hand-out", (Guid id, IFormCollection form, TrialStore trials) =>
            TrialPages.DoAsync(id, trials, $"/trials/{id}/board", tasting => HandingOut.Do(tasting, trials.Now, new Posted(form))));
        maker.MapPost("/trials/{id:guid}/withdraw", WithdrawAsync);
    }

    private static async Task<IResult> ShowAsync(Guid id, HttpContext context, TrialStore trials, TasterDoors doors, HelperDoors helpers, PhoneAddress address) =>
        await trials.FindAsync(new(id)) is { } tasting && tasting is not DraftTasting
            ? Page.Of<PlatesPage>(
                ("Tasting", tasting),
                ("Doors", await doors.OfAsync(tasting)),
                ("Plater", await helpers.PathAsync(tasting.Book.Trial, Helper.Plater)),
                ("Server", await helpers.PathAsync(tasting.Book.Trial, Helper.Server)),
                ("Scribe", await helpers.PathAsync(tasting.Book.Trial, Helper.Scribe)),
                ("Printed", await address.OutdatedAsync(tasting.Book.Trial, context)),
                ("Site", address.Now(context)))
            : Page.GoTo($"/trials/{id}");

    private static async Task<IResult> AskAsync(Guid id, TrialStore trials) =>
        await trials.FindAsync(new(id)) is { } tasting && tasting is not DraftTasting
            ? Page.Of<PlatingPage>(("Tasting", tasting), ("Opened", tasting is RevealedTasting))
            : Page.GoTo($"/trials/{id}");

    private static async Task<IResult> OpenKeyAsync(Guid id, IFormCollection form, TrialStore trials)
    {
        var posted = new Posted(form);
        var by = posted.Text("by");
        var early = posted.Text("who") == "maker";
        if (posted.Text("who").Length == 0 || (!early && by.Length == 0))
        {
            return await trials.FindAsync(new(id)) is { } again and not DraftTasting
                ? Page.Again<PlatingPage>(("Tasting", again), ("Faults", Page.Faults([new Problem("by", "Say who opens the key: it is written into the record.")], new Dictionary<string, string>(StringComparer.Ordinal) { ["by"] = "The helper’s name" })))
                : Results.NotFound();
        }

        var name = early ? "The maker" : by;
        var taster = posted.Id("taster") is { } chosen ? new TasterId(chosen) : (TasterId?)null;
        if (await trials.FindAsync(new(id)) is not { } before) return Results.NotFound();
        if (posted.Text("tick").Length > 0 && Ticking.MayTick(before.Book, name, early))
        {
            var ticked = await trials.ActAsync(new(id), tasting => Ticking.Do(tasting, trials.Now, posted));
            return ticked.TryGet(out var now)
                ? Page.Of<PlatingPage>(("Tasting", now), ("Opened", true), ("Early", early), ("By", name))
                : Page.Again<PlatingPage>(("Tasting", before), ("Opened", true), ("Early", early), ("By", name), ("Faults", Page.Faults(ticked.Problems)));
        }

        if (early && !posted.Ticked("sure") && before is not (DraftTasting or RevealedTasting)) return Page.Of<PlatingPage>(("Tasting", before), ("Twice", true), ("Asked", taster?.Value));
        var outcome = await trials.ActAsync(new(id), tasting => tasting switch
        {
            SealedTasting sealedTasting => sealedTasting.OpenKey(trials.Now, name, early, taster),
            RoomTasting room => room.OpenKey(trials.Now, name, early, taster),
            _ => TrialPages.TooLate("key", "There is no sealed key to open."),
        });
        return outcome.TryGet(out var after)
            ? Page.Of<PlatingPage>(("Tasting", after), ("Opened", true), ("Early", early), ("By", name))
            : Page.Again<RefusedPage>(("Problems", outcome.Problems), ("Back", $"/trials/{id}/plates"));
    }

    private static async Task<IResult> MakeAgainAsync(Guid id, IFormCollection form, TrialStore trials)
    {
        var posted = new Posted(form);
        var number = posted.Number("number") ?? 0;
        return await TrialPages.DoAsync(id, trials, $"/trials/{id}/cards?only={number.ToString(CultureInfo.InvariantCulture)}", tasting => tasting.MakeAgain(trials.Now, number, posted.Text("reason")));
    }

    private static async Task<IResult> WithdrawAsync(Guid id, IFormCollection form, TrialStore trials, Chance chance)
    {
        var posted = new Posted(form);
        if (posted.Id("wheel") is not { } chosen) return Page.GoTo($"/trials/{id}#wheels");
        var wheel = new WheelId(chosen);
        var twice = posted.Id("repeat") is { } repeat ? new WheelId(repeat) : (WheelId?)null;
        // A plate that was carried out stays as it is, and so does one of which anything was said.
        var kitchen = posted.Ids("kitchen").Select(taster => new TasterId(taster)).ToHashSet();
        var outcome = await trials.ActBesideAsync(new(id), (tasting, said) => Chance.Committed(tasting, tasting switch
        {
            DraftTasting draft => draft.Withdraw(trials.Now, wheel, posted.Text("reason"), posted.Optional("by")),
            SealedTasting sealedTasting => sealedTasting.Withdraw(trials.Now, wheel, posted.Text("reason"), posted.Optional("by"), twice, chance.Draw()),
            OpenTasting open => open.WithdrawAndDraw(trials.Now, wheel, posted.Text("reason"), posted.Optional("by"), Out(open.Book, kitchen, said), twice, chance.Draw()),
            _ => TrialPages.TooLate("wheel", "The ballots are closed: what is known of the wheel can still be corrected, and the verdict tells it."),
        }));
        if (outcome.TryGet(out var after)) return Page.GoTo(after switch { DraftTasting => $"/trials/{id}", SealedTasting => $"/trials/{id}/plates", _ => $"/trials/{id}/board" });
        return await trials.FindAsync(new(id)) is { } found && found.Book.Entry(wheel) is { } entry
            ? Page.Again<EditWheelPage>(("Tasting", found), ("Entry", entry), ("Faults", Page.Faults(outcome.Problems, WheelForm.Labels)))
            : Results.NotFound();
    }

    private static HashSet<TasterId> Out(DayBook book, HashSet<TasterId> kitchen, IReadOnlySet<TasterId> said) =>
        [.. book.Tasters.Where(taster => book.Plate(taster.Id) is not null && (!kitchen.Contains(taster.Id) || said.Contains(taster.Id))).Select(taster => taster.Id)];
}
