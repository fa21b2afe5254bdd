using Trier.Storage.Tastings;
using Trier.Trials.Tastings.Steps;
using Trier.Web.Hosting;
using Trier.Web.Shared;
using static Trier.Resources.BallotWords;

namespace Trier.Web.Tastings.Ballots;

/// <summary>What a taster can still do once the key is open: say something, and say what may be published. No ballot moves.</summary>
internal static class AfterRevealRoutes
{
    public static void MapAfterReveal(this IEndpointRouteBuilder taster)
    {
        taster.MapPost("/after", SayAsync);
        taster.MapPost("/agree", AgreeAsync);
    }

    private static async Task<IResult> SayAsync(string token, IFormCollection form, Visits visits, TrialStore trials)
    {
        if (await visits.FindAsync(token) is not { } visit) return TasterRoutes.Unknown();
        if (visit.Tasting is not RevealedTasting revealed) return Page.GoTo(visit.Path);
        var words = new Posted(form).Text("words");
        var said = await trials.ActAsync(visit.Door.Trial, tasting => ((RevealedTasting)tasting).Say(trials.Now, visit.Taster.Id, words));
        if (said.Ok) return Page.GoTo($"{visit.Path}?said=1");
        return Page.Again<RevealedPage>(
            ("Visit", visit),
            ("Slip", OwnSlip.Of(revealed, visit.Taster.Id, visit.History.Counted?.Content ?? Trials.Tastings.Ballot.Empty)),
            ("Typed", words),
            ("Faults", (FieldFault[])[new("words", Say("after.field"), Say("after.empty"))]));
    }

    // The form is read by hand: taking every yes back sends a form with nothing in it.
    private static async Task<IResult> AgreeAsync(string token, HttpRequest request, Visits visits, TrialStore trials)
    {
        if (await visits.FindAsync(token) is not { } visit) return TasterRoutes.Unknown();
        var posted = new Posted(request.HasFormContentType ? await request.ReadFormAsync() : FormCollection.Empty);
        await trials.ActAsync(visit.Door.Trial, tasting => tasting.Agree(trials.Now, visit.Taster.Id, SignInForm.Agreed(posted)));
        return Page.GoTo(visit.Path);
    }
}
