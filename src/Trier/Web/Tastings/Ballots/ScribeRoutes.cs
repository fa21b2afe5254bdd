using Microsoft.AspNetCore.Http.HttpResults;
using Trier.Storage.Tastings;
using Trier.Trials.Common;
using Trier.Trials.Tastings;
using Trier.Web.Hosting;
using Trier.Web.Shared;
using Trier.Web.Tastings.Cards;
using static Trier.Resources.BallotWords;

namespace Trier.Web.Tastings.Ballots;

/// <summary>The whole ballot on one large page, for somebody who writes for the taster.</summary>
internal static class ScribeRoutes
{
    public static void MapScribe(this IEndpointRouteBuilder taster)
    {
        taster.MapGet("/scribe", ShowAsync);
        taster.MapPost("/scribe", WriteAsync);
    }

    private static Task<IResult> ShowAsync(string token, string? kept, Visits visits) => TasterRoutes.StepAsync(token, visits, visit =>
        Page.Of<ScribePage>(("Visit", visit), ("Sheet", PaperSheet.Of(visit.Served, visit.ToPlace, visit.Ballot, visit.Asked)), ("Kept", kept is "1")));

    private static async Task<IResult> WriteAsync(string token, IFormCollection form, HttpContext context, Visits visits, TrialStore trials)
    {
        if (await visits.FindAsync(token) is not { } visit) return TasterRoutes.Unknown();
        if (TasterRoutes.NoPlate(visit) is { } page) return page;
        var posted = new Posted(form);
        var id = TasterRoutes.SendId(posted);
        var send = posted.Text("deed") is "send";
        var done = send ? $"{visit.Path}/sent" : $"{visit.Path}/scribe?kept=1";
        // A send that was acknowledged once is acknowledged again, whatever has happened since.
        if (visit.History.All.Any(revision => revision.Id == id)) return Page.GoTo(done);
        var sheet = PaperSheet.Of(visit.Served, visit.ToPlace, posted, visit.Asked);
        var read = sheet.Read(visit.Dealt, visit.Ballot);
        if (!read.TryGet(out var ballot)) return Again(visit, sheet, read.Problems);
        // A ballot keeps an order, not numbers: a 2 kept without its 1 would come back as a 1.
        if (sheet.LeavesOut is { } gap) return Again(visit, sheet, [new Problem($"gap-{gap}", "")]);
        var begunFrom = posted.Id("base") is { } shown ? new RevisionId(shown) : (RevisionId?)null;
        var stage = send ? BallotStage.Sent : BallotStage.Tasting;
        var received = await trials.ReceiveAsync(visit.Door.Trial, new BallotSend(id, visit.Taster.Id, begunFrom, TasterRoutes.Device(context), BallotSource.Scribe, stage, ballot));
        return received.Ok ? Page.GoTo(done) : Again(visit, sheet, received.Problems);
    }

    private static RazorComponentResult<ScribePage> Again(Visit visit, PaperSheet sheet, IEnumerable<Problem> problems) =>
        Page.Again<ScribePage>(("Visit", visit), ("Sheet", sheet), ("Faults", (FieldFault[])[.. problems.Select(problem => Fault(visit, problem.Field))]));

    // What a taster reads stands in the resources; the domain's own sentences are English.
    private static FieldFault Fault(Visit visit, string field)
    {
        var sample = field.Split('-')[^1];
        return field.Split('-')[0] switch
        {
            "liking" => new(field, Say("sample.field.liking"), Say("fault.liking")),
            "remark" => new(field, Say("sample.field.remark"), Say("fault.remark", Trials.Tastings.Placing.BallotEditing.LongestRemark)),
            "gap" => new($"place-{sample}", Say("places.field"), Say("fault.gap")),
            "place" => new(field, Say("places.field"), Say("fault.place", sample, visit.ToPlace.Length)),
            _ => new("ballot", Say("fault.field.ballot"), Say("fault.more")),
        };
    }
}
