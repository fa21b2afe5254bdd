using Microsoft.AspNetCore.Http.HttpResults;
using Trier.Storage.Access;
using Trier.Storage.Tastings;
using Trier.Trials.Common;
using Trier.Trials.Tastings.Steps;
using Trier.Web.Access;
using Trier.Web.Hosting;
using Trier.Web.Shared;
using static Trier.Resources.BallotWords;

namespace Trier.Web.Tastings.Ballots;

/// <summary>The door for people without a link at hand: a typed code, or a name for the maker to let in.</summary>
internal static class DoorRoutes
{
    private const int CodeLength = 6;

    public static void MapDoor(this IEndpointRouteBuilder routes)
    {
        routes.MapGet("/c", () => Page.Of<CodePage>());
        routes.MapPost("/c", TypedAsync);
        routes.MapPost("/language", (IFormCollection form, HttpContext context) =>
        {
            var posted = new Posted(form);
            if (Find(posted.Text("language")) is { } language) Languages.Remember(context, language);
            return Page.GoTo(posted.Text("back") is "/walk-in" ? "/walk-in" : "/c");
        });
        routes.MapGet("/walk-in", async (TrialStore trials) => Page.Of<WalkInPage>(("Open", await OpenAsync(trials))));
        routes.MapPost("/walk-in", AskAsync);
        routes.MapGet("/walk-in/{id:guid}", WaitAsync);
    }

    private static async Task<IResult> TypedAsync(IFormCollection form, TasterDoors doors, WrongTries tries, CancellationToken gone)
    {
        var typed = new Posted(form).Text("typed");
        var letters = typed.Count(char.IsLetter);
        if (letters != CodeLength) return Wrong(typed, Say("code.length", letters));
        if (!await tries.EnterAsync(gone)) return Wrong(typed, Say("code.busy"), StatusCodes.Status429TooManyRequests);
        if (await doors.FindTypedAsync(typed) is { } door)
        {
            tries.WasRight();
            return Page.GoTo(door.Path);
        }

        return Wrong(typed, Say("code.wrong"));
    }

    private static RazorComponentResult<CodePage> Wrong(string typed, string sentence, int status = StatusCodes.Status422UnprocessableEntity)
    {
        var page = Page.Again<CodePage>(("Typed", typed), ("Faults", (FieldFault[])[new FieldFault("typed", Say("code.label"), sentence)]));
        page.StatusCode = status;
        return page;
    }

    private static async Task<IResult> AskAsync(IFormCollection form, TrialStore trials, WalkIns door)
    {
        var posted = new Posted(form);
        var open = await OpenAsync(trials);
        var name = posted.Text("name");
        var tasting = open.FirstOrDefault(candidate => candidate.Book.Trial.Value == posted.Id("trial"));
        var faults = new List<FieldFault>();
        if (tasting is null) faults.Add(new("trial", Say("walkin.which"), Say("walkin.nowhich")));
        if (name.Length == 0) faults.Add(new("name", Say("walkin.name"), Say("walkin.noname")));
        if (name.Length > 60) faults.Add(new("name", Say("walkin.name"), Say("walkin.longname")));
        if (faults.Count == 0)
        {
            if (await door.AskAsync(tasting!.Book.Trial, name) is { } asked) return Page.GoTo($"/walk-in/{asked.Id}");
            faults.Add(new("name", Say("walkin.name"), Say("walkin.full")));
        }

        return Page.Again<WalkInPage>(("Open", open), ("Chosen", posted.Id("trial")), ("Typed", name), ("Faults", faults));
    }

    private static async Task<IResult> WaitAsync(Guid id, string? still, HttpContext context, WalkIns door, TrialStore trials, TasterDoors doors)
    {
        if (await door.FindAsync(id) is not { } asked) return TasterRoutes.Unknown();
        var link = asked.Taster is { } taster && await trials.FindAsync(asked.Trial) is { } tasting ? (await doors.OfAsync(tasting)).GetValueOrDefault(taster)?.Path : null;
        // Works without script. It can be switched off, because a page that changes under a screen reader is read from the top each time.
        if (link is null && !asked.TurnedAway && still is null) context.Response.Headers["Refresh"] = "5";
        return Page.Of<WaitingPage>(("Name", asked.Name), ("Path", $"/walk-in/{id}"), ("Link", link), ("TurnedAway", asked.TurnedAway), ("Still", still is not null));
    }

    private static async Task<IReadOnlyList<OpenTasting>> OpenAsync(TrialStore trials) => [.. (await trials.AllAsync()).OfType<OpenTasting>()];
}
