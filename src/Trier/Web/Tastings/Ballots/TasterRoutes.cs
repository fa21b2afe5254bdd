using Microsoft.AspNetCore.Http.HttpResults;
using Trier.Storage.Tastings;
using Trier.Trials.Common;
using Trier.Trials.Tastings;
using Trier.Trials.Tastings.Placing;
using Trier.Trials.Tastings.Steps;
using Trier.Web.Hosting;
using Trier.Web.Shared;
using static Trier.Resources.BallotWords;

namespace Trier.Web.Tastings.Ballots;

/// <summary>The pages behind a taster's link.</summary>
internal static class TasterRoutes
{
    public static void MapTaster(this IEndpointRouteBuilder routes)
    {
        var taster = routes.MapGroup("/t/{token}");
        taster.MapGet("", FirstAsync);
        taster.MapPost("/plate", TakePlateAsync);
        taster.MapPost("/begin", BeginAsync);
        taster.MapGet("/sample/{number:int}", SampleAsync);
        taster.MapPost("/sample/{number:int}", AnswerAsync);
        taster.MapPost("/language", LanguageAsync);
        taster.MapMore();
        taster.MapScribe();
        taster.MapAfterReveal();
        taster.MapGet("/hold", (string token, Visits visits) => StepAsync(token, visits, visit => visit.History.All.IsEmpty ? Page.Of<HoldPage>(("Visit", visit)) : Page.GoTo(visit.Resume())));
        taster.MapGet("/places", (string token, Visits visits) => StepAsync(token, visits, visit => Page.Of<PlacesPage>(("Visit", visit))));
        taster.MapPost("/places", PlaceAsync);
        taster.MapGet("/review", (string token, Visits visits) => StepAsync(token, visits, visit => Page.Of<ReviewPage>(("Visit", visit))));
        taster.MapPost("/review", (string token, IFormCollection form, HttpContext context, Visits visits, Saving saving) => SendAsync(token, form, context, visits, saving, newest: false));
        taster.MapGet("/both", BothAsync);
        taster.MapPost("/both", (string token, IFormCollection form, HttpContext context, Visits visits, Saving saving) => SendAsync(token, form, context, visits, saving, newest: true));
        taster.MapGet("/sent", SentAsync);
    }

    private static async Task<IResult> FirstAsync(string token, string? said, Visits visits)
    {
        if (await visits.FindAsync(token) is not { } visit) return Unknown();
        if (said is not null && visit.Tasting is RevealedTasting revealed) return Revealed(visit, revealed, thanks: true);
        if (Elsewhere(visit) is { } page) return page;
        return visit.Tasting is OpenTasting && visit.History.All.IsEmpty ? Page.Of<WelcomePage>(("Visit", visit)) : Page.GoTo(visit.History.Counted is { Stage: BallotStage.Sent } ? $"{visit.Path}/sent" : visit.Resume());
    }

    private static async Task<IResult> TakePlateAsync(string token, IFormCollection form, Visits visits, TrialStore trials)
    {
        if (await visits.FindAsync(token) is not { } visit) return Unknown();
        if (!visit.AwaitsPlate) return Page.GoTo(visit.Path);
        // Only the number in front of them says which plate it is: without one, nothing is given.
        var taken = await trials.ActAsync(visit.Door.Trial, now => now is OpenTasting open
            ? open.HandOut(trials.Now, visit.Taster.Id, new Posted(form).Number("plate") ?? 0)
            : Plans.TrialPages.TooLate("plate", "Plates are given out while the tasting is open."));
        return taken.Ok ? Page.GoTo(visit.Path) : Page.Again<PlateNumberPage>(("Visit", visit), ("Faults", new FieldFault[] { new("plate", Say("plate.number"), Say("plate.fault")) }));
    }

    // The form is read by hand: whoever leaves every question open sends a form with nothing in it, and that would be refused as none.
    private static async Task<IResult> BeginAsync(string token, HttpRequest request, Visits visits, TrialStore trials, Chance chance)
    {
        var form = request.HasFormContentType ? await request.ReadFormAsync() : FormCollection.Empty;
        if (await visits.FindAsync(token) is not { } visit) return Unknown();
        // What is asked before the first bite is fixed once an answer is in.
        if (visit.Tasting is not (DraftTasting or SealedTasting or OpenTasting) || !visit.History.All.IsEmpty) return Page.GoTo(visit.Path);
        var said = SignInForm.Read(new Posted(form), visit.Tasting.Book);
        await trials.ActAsync(visit.Door.Trial, tasting => tasting.SignIn(trials.Now, visit.Taster.Id, tasting is SealedTasting ? said with { MayNotHave = [] } : said));
        // Before the first plate is out there is time for codes of their own, so that no missing code names a wheel.
        if (said.MayNotHave.Except(visit.Taster.LeftOff).Any())
            await trials.ActBesideAsync(visit.Door.Trial, (tasting, _) => tasting is SealedTasting ready ? Chance.Committed(tasting, ready.LeaveOff(trials.Now, visit.Taster.Id, [.. visit.Taster.LeftOff.Union(said.MayNotHave)], chance.Draw())) : Outcome.Of(System.Collections.Immutable.ImmutableArray<Trials.Tastings.Events.DayEvent>.Empty));
        if (Language != (visit.Taster.Language ?? "en")) await trials.ActAsync(visit.Door.Trial, tasting => tasting.ChooseLanguage(trials.Now, visit.Taster.Id, Language));
        if (visit.Tasting is not OpenTasting) return Page.GoTo(visit.Path);
        // The plate is in front of them by now: nobody may bite into what they have just said they may not eat.
        return Page.GoTo(said.AsksHost || said.MayNotHave.Except(visit.Taster.LeftOff).Any() ? $"{visit.Path}/hold" : visit.FirstPath);
    }

    private static async Task<IResult> LanguageAsync(string token, IFormCollection form, HttpContext context, Visits visits, TrialStore trials)
    {
        if (await visits.FindAsync(token) is not { } visit) return Unknown();
        if (Find(new Posted(form).Text("language")) is not { } language) return Page.GoTo(visit.Path);
        Languages.Remember(context, language);
        if (visit.Taster.Language != language.Name) await trials.ActAsync(visit.Door.Trial, tasting => tasting.ChooseLanguage(trials.Now, visit.Taster.Id, language.Name));
        return Page.GoTo(visit.Path);
    }

    private static Task<IResult> SampleAsync(string token, int number, string? slip, string? back, Visits visits) => StepAsync(token, visits, visit =>
        number >= 1 && number <= visit.Served.Length && visit.Asked.AsksFirst
            ? Page.Of<SamplePage>(("Visit", visit), ("Number", number), ("Slip", slip is "1"), ("Back", back is "review" ? back : null))
            : Page.GoTo(visit.Resume()));

    private static async Task<IResult> AnswerAsync(string token, int number, IFormCollection form, HttpContext context, Visits visits, Saving saving)
    {
        if (await visits.FindAsync(token) is not { } visit) return Unknown();
        if (NoPlate(visit) is { } page) return page;
        var posted = new Posted(form);
        var liking = posted.Number("liking");
        var back = posted.Text("back") is "review" ? "review" : null;
        var slip = posted.Ticked("slip");
        if (!BlindCode.TryParse(posted.Text("sample"), out var code) || !visit.Dealt.Contains(code)) return Page.GoTo(visit.Resume());
        if (posted.Text("liking").Length > 0 && liking is null) liking = 0;
        var saved = await saving.SaveAsync(visit, SendId(posted), Device(context), now => BallotEditing.Answer(now.Ballot, now.Dealt, code, liking, posted.Text("remark"), slip));
        if (saved.Ok) return Page.GoTo(After(visit, code, back));
        var at = visit.Served.IndexOf(code) + 1;
        if (at == 0) return Page.GoTo(visit.Resume());
        return Page.Again<SamplePage>(("Visit", visit), ("Number", at), ("Slip", slip), ("Back", back), ("Faults", Faults(saved.Problems)), ("Remark", posted.Text("remark")), ("Chosen", liking));
    }

    private static async Task<IResult> PlaceAsync(string token, IFormCollection form, HttpContext context, Visits visits, Saving saving)
    {
        if (await visits.FindAsync(token) is not { } visit) return Unknown();
        if (NoPlate(visit) is { } page) return page;
        var posted = new Posted(form);
        var move = PlaceMove.Read(posted.Text("move"));
        var saved = await saving.SaveAsync(visit, SendId(posted), Device(context), now =>
            Placement.Read(now.Dealt, now.ToPlace, posted.All("order"), posted.All("tied"))
                .Then(places => BallotEditing.Place(now.Ballot, now.Dealt, move is { } press ? places.Apply(press, now.ToPlace) : places)));
        if (!saved.Ok) return Page.Again<PlacesPage>(("Visit", visit), ("Faults", Faults(saved.Problems)));
        return Page.GoTo(move is null ? visit.AfterPlaces() : $"{visit.Path}/places");
    }

    private static async Task<IResult> SendAsync(string token, IFormCollection form, HttpContext context, Visits visits, Saving saving, bool newest)
    {
        if (await visits.FindAsync(token) is not { } visit) return Unknown();
        if (NoPlate(visit) is { } page) return page;
        var posted = new Posted(form);
        var id = SendId(posted);
        // A send that was acknowledged once is acknowledged again, whatever has happened since.
        if (visit.History.All.Any(revision => revision.Id == id)) return Page.GoTo($"{visit.Path}/sent");
        var sent = await saving.SendAsync(visit, id, posted.Id("base") is { } shown ? new RevisionId(shown) : null, newest, Device(context));
        if (!sent.Ok) return Page.Again<ReviewPage>(("Visit", visit), ("Faults", Faults(sent.Problems)));
        return Page.GoTo($"{visit.Path}/sent");
    }

    private static async Task<IResult> BothAsync(string token, Visits visits)
    {
        if (await visits.FindAsync(token) is not { } visit) return Unknown();
        return visit.Tasting is OpenTasting && Versions.Unsettled(visit.History) is { } aside ? Page.Of<BothPage>(("Visit", visit), ("Aside", aside)) : Page.GoTo(visit.Path);
    }

    private static async Task<IResult> SentAsync(string token, Visits visits)
    {
        if (await visits.FindAsync(token) is not { } visit) return Unknown();
        if (Elsewhere(visit) is { } page) return page;
        if (visit.Tasting is OpenTasting && Versions.Unsettled(visit.History) is not null) return Page.GoTo($"{visit.Path}/both");
        return visit.History.Counted is { Stage: BallotStage.Sent } ? Page.Of<SentPage>(("Visit", visit)) : Page.GoTo(visit.Path);
    }

    internal static async Task<IResult> StepAsync(string token, Visits visits, Func<Visit, IResult> step)
    {
        if (await visits.FindAsync(token) is not { } visit) return Unknown();
        // A step that was left open over the close still shows, and says that it is late; after the reveal there is only the slip.
        return visit.Tasting is ClosedTasting && !visit.Served.IsEmpty && !visit.Taster.LetGo ? step(visit) : Elsewhere(visit) ?? step(visit);
    }

    // The page of a taster who cannot be tasting now, or null.
    private static IResult? Elsewhere(Visit visit) => visit.Tasting switch
    {
        RevealedTasting revealed => Revealed(visit, revealed, thanks: false),
        _ when visit.Taster.LetGo => Page.Of<PlainPage>(("Title", Say("gone.title")), ("Text", Say("gone.text"))),
        ClosedTasting => Page.Of<SentPage>(("Visit", visit)),
        OpenTasting when visit.AwaitsPlate => Page.Of<PlateNumberPage>(("Visit", visit)),
        OpenTasting when visit.Served.IsEmpty => Page.Of<PlainPage>(("Title", Say("nothing.title")), ("Text", Say("nothing.text"))),
        OpenTasting => null,
        _ => Page.Of<WelcomePage>(("Visit", visit)),
    };

    private static RazorComponentResult<RevealedPage> Revealed(Visit visit, RevealedTasting tasting, bool thanks) =>
        Page.Of<RevealedPage>(("Visit", visit), ("Slip", OwnSlip.Of(tasting, visit.Taster.Id, visit.History.Counted?.Content ?? Ballot.Empty)), ("Thanks", thanks));

    // Before the first plate nothing can be said; what a taster who was let go sends is no longer taken in.
    internal static IResult? NoPlate(Visit visit) =>
        visit.Taster.LetGo || visit.Tasting is not (OpenTasting or ClosedTasting or RevealedTasting) || visit.Dealt.IsEmpty ? Page.GoTo(visit.Path) : null;

    private static string After(Visit visit, BlindCode code, string? back)
    {
        if (back is not null) return $"{visit.Path}/review";
        var next = visit.Dealt.SkipWhile(dealt => dealt != code).Skip(1).FirstOrDefault(visit.Served.Contains);
        var at = visit.Served.IndexOf(next);
        return at < 0 ? $"{visit.Path}/places" : visit.SamplePath(at + 1);
    }

    internal static RevisionId SendId(Posted posted) => new(posted.Id("sendId") ?? Guid.NewGuid());

    // Tells two phones of one taster apart; a name for a ballot's record, no identity.
    internal static string Device(HttpContext context)
    {
        const string Cookie = "trier-phone";
        if (context.Request.Cookies[Cookie] is { Length: 12 } known && known.All(char.IsAsciiHexDigitLower)) return known;
        var name = Guid.NewGuid().ToString("N")[..12];
        context.Response.Cookies.Append(Cookie, name, new CookieOptions { HttpOnly = true, SameSite = SameSiteMode.Strict, Path = "/t", MaxAge = TimeSpan.FromDays(7), IsEssential = true });
        return name;
    }

    // What a taster reads stands in the resources; the domain's own sentences are English. One sentence a field.
    internal static IReadOnlyList<FieldFault> Faults(IEnumerable<Problem> problems) => [.. problems.Select(problem => problem.Field).Distinct().Select(field => field switch
    {
        "liking" => new FieldFault("liking", Say("sample.field.liking"), Say("fault.liking")),
        "remark" => new FieldFault("remark", Say("sample.field.remark"), Say("fault.remark", BallotEditing.LongestRemark)),
        "right" or "words" => new FieldFault("more", Say("fault.field.ballot"), Say("fault.more")),
        "places" => new FieldFault("places", Say("places.field"), Say("fault.places")),
        _ => new FieldFault("ballot", Say("fault.field.ballot"), Say("fault.ballot")),
    })];

    internal static IResult Unknown()
    {
        var page = Page.Of<PlainPage>(("Title", Say("unknown.title")), ("Text", Say("unknown.text")), ("Href", "/c"), ("Key", Say("unknown.key")));
        page.StatusCode = StatusCodes.Status404NotFound;
        return page;
    }
}
