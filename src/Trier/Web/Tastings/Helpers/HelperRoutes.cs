using Trier.Storage.Tastings;
using Trier.Trials.Common;
using Trier.Trials.Tastings;
using Trier.Trials.Tastings.Steps;
using Trier.Web.Access;
using Trier.Web.Hosting;
using Trier.Web.Tastings.Ballots;
using Trier.Web.Tastings.Plates;

namespace Trier.Web.Tastings.Helpers;

/// <summary>The pages of the helpers, each by their own link: the plater's has the key, the server's never.</summary>
internal static class HelperRoutes
{
    public static void MapHelpers(this IEndpointRouteBuilder routes)
    {
        // The link is the permission, as for tasters: a page on another site cannot know it.
        var helpers = routes.MapGroup("").DisableAntiforgery();
        helpers.MapGet("/p/{token}", AskAsync);
        helpers.MapPost("/p/{token}", OpenAsync);
        helpers.MapGet("/s/{token}", async (string token, TrialStore trials, HelperDoors doors) =>
            await FindAsync(token, Helper.Server, trials, doors) is { } tasting ? Page.Of<ServerPage>(("Tasting", tasting), ("Now", trials.Now)) : TasterRoutes.Unknown());
        helpers.MapPost("/s/{token}", HandOutAsync);
        helpers.MapGet("/w/{token}", WriteAsync);
    }

    private static readonly Dictionary<string, string> Labels = new(StringComparer.Ordinal) { ["by"] = "Your name", ["taster"] = "Who", ["who"] = "Who", ["plate"] = "Number on the plate" };

    private static async Task<IResult> WriteAsync(string token, TrialStore trials, HelperDoors doors, TasterDoors tasters) =>
        await FindAsync(token, Helper.Scribe, trials, doors) is { } tasting
            ? Page.Of<ScribePage>(("Tasting", tasting), ("Doors", await tasters.OfAsync(tasting)))
            : TasterRoutes.Unknown();

    private static async Task<IResult> HandOutAsync(string token, IFormCollection form, TrialStore trials, HelperDoors doors)
    {
        if (await FindAsync(token, Helper.Server, trials, doors) is not { } tasting) return TasterRoutes.Unknown();
        var outcome = await trials.ActAsync(tasting.Book.Trial, now => HandingOut.Do(now, trials.Now, new Posted(form)));
        return outcome.Ok ? Page.GoTo($"/s/{token}") : Page.Again<ServerPage>(("Tasting", tasting), ("Now", trials.Now), ("Faults", Page.Faults(outcome.Problems, Labels)));
    }

    private static async Task<IResult> AskAsync(string token, TrialStore trials, HelperDoors doors) =>
        await FindAsync(token, Helper.Plater, trials, doors) is { } tasting
            ? Page.Of<PlaterPage>(("Tasting", tasting), ("Opened", tasting is RevealedTasting))
            : TasterRoutes.Unknown();

    private static async Task<IResult> OpenAsync(string token, IFormCollection form, TrialStore trials, HelperDoors doors)
    {
        if (await FindAsync(token, Helper.Plater, trials, doors) is not { } tasting) return TasterRoutes.Unknown();
        var posted = new Posted(form);
        var name = posted.Text("by");
        if (name.Length is 0 or > 60) return Page.Again<PlaterPage>(("Tasting", tasting), ("Faults", Page.Faults([new Problem("by", "Write your name, 60 letters at most: it is put into the record with the time.")], Labels)));
        if (posted.Text("tick").Length > 0 && tasting is not RevealedTasting && Ticking.MayTick(tasting.Book, name, early: false))
        {
            var ticked = await trials.ActAsync(tasting.Book.Trial, now => Ticking.Do(now, trials.Now, posted));
            return ticked.TryGet(out var done)
                ? Page.Of<PlaterPage>(("Tasting", done), ("Opened", true), ("By", name))
                : Page.Again<PlaterPage>(("Tasting", tasting), ("Opened", true), ("By", name), ("Faults", Page.Faults(ticked.Problems)));
        }

        var taster = posted.Id("taster") is { } chosen ? new TasterId(chosen) : (TasterId?)null;
        var outcome = await trials.ActAsync(tasting.Book.Trial, now => now switch
        {
            SealedTasting sealedTasting => sealedTasting.OpenKey(trials.Now, name, early: false, taster),
            RoomTasting room => room.OpenKey(trials.Now, name, early: false, taster),
            _ => Plans.TrialPages.TooLate("by", "There is no sealed key to open."),
        });
        return outcome.TryGet(out var after)
            ? Page.Of<PlaterPage>(("Tasting", after), ("Opened", true), ("By", name))
            : Page.Again<PlaterPage>(("Tasting", tasting), ("Faults", Page.Faults(outcome.Problems, Labels)));
    }

    private static async Task<Tasting?> FindAsync(string token, Helper helper, TrialStore trials, HelperDoors doors) =>
        await doors.FindAsync(token, helper) is { } trial ? await trials.FindAsync(trial) : null;
}
