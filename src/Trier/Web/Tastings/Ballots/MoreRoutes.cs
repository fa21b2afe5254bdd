using Trier.Trials.Tastings;
using Trier.Trials.Tastings.Placing;
using Trier.Web.Hosting;

namespace Trier.Web.Tastings.Ballots;

/// <summary>The pages after the places, on which the rest is asked sample by sample.</summary>
internal static class MoreRoutes
{
    public static void MapMore(this IEndpointRouteBuilder taster)
    {
        taster.MapGet("/more/{number:int}", ShowAsync);
        taster.MapPost("/more/{number:int}", AnswerAsync);
    }

    private static Task<IResult> ShowAsync(string token, int number, string? back, Visits visits) => TasterRoutes.StepAsync(token, visits, visit =>
        number >= 1 && number <= visit.Served.Length && visit.Asked.AsksAfter
            ? Page.Of<MorePage>(("Visit", visit), ("Number", number), ("Back", back is "review" ? back : null))
            : Page.GoTo(visit.Resume()));

    private static async Task<IResult> AnswerAsync(string token, int number, IFormCollection form, HttpContext context, Visits visits, Saving saving)
    {
        if (await visits.FindAsync(token) is not { } visit) return TasterRoutes.Unknown();
        if (TasterRoutes.NoPlate(visit) is { } page) return page;
        var posted = new Posted(form);
        if (!BlindCode.TryParse(posted.Text("sample"), out var code) || !visit.Dealt.Contains(code)) return Page.GoTo(visit.Resume());
        var saved = await saving.SaveAsync(visit, TasterRoutes.SendId(posted), TasterRoutes.Device(context), now =>
            BallotEditing.AnswerAfter(now.Ballot, now.Dealt, code, now.Asked, MoreForm.Amounts(posted, now.Asked, ""), posted.All("word"), MoreForm.Again(posted, "")));
        var at = visit.Served.IndexOf(code) + 1;
        if (!saved.Ok && at > 0) return Page.Again<MorePage>(("Visit", visit), ("Number", at), ("Faults", TasterRoutes.Faults(saved.Problems)));
        return Page.GoTo(at > 0 && at < visit.Served.Length && posted.Text("back") is not "review" ? visit.MorePath(at + 1) : $"{visit.Path}/review");
    }
}
