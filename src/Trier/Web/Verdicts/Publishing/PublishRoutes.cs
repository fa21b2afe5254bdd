using System.Collections.Immutable;
using System.Text;
using Trier.Publishing.Bundles;
using Trier.Publishing.Documents;
using Trier.Storage.Tastings;
using Trier.Trials.Common;
using Trier.Trials.Tastings;
using Trier.Trials.Tastings.Events;
using Trier.Trials.Tastings.Steps;
using Trier.Web.Hosting;
using Trier.Web.Plans;

namespace Trier.Web.Verdicts.Publishing;

/// <summary>Publishing a verdict: the maker's page, and, for anyone, every version that was published.</summary>
internal static class PublishRoutes
{
    // The page lies ready in one file: it may use what is in it and ask for nothing.
    private const string OwnPolicy = "default-src 'none'; style-src 'unsafe-inline'; font-src data:; img-src data:; frame-ancestors 'none'; form-action 'none'; base-uri 'none'";

    public static void MapPublished(this IEndpointRouteBuilder anyone)
    {
        anyone.MapGet("/published/{id:guid}", (Guid id, HttpContext context, PublishedTastings published, CancellationToken cancellation) => PageAsync(id, null, context, published, cancellation));
        anyone.MapGet("/published/{id:guid}/{number:int}", (Guid id, int number, HttpContext context, PublishedTastings published, CancellationToken cancellation) => PageAsync(id, number, context, published, cancellation));
        anyone.MapGet("/published/{id:guid}/{number:int}/bundle.zip", async (Guid id, int number, PublishedTastings published, CancellationToken cancellation) =>
            await published.FindAsync(new(id), number, cancellation) is { } found ? Results.File(BundleZip.Pack(Bundle.Of(found)), "application/zip", $"verdict-version-{found.Version}.zip") : Results.NotFound());
        anyone.MapGet("/published/{id:guid}/{number:int}/summary.pdf", async (Guid id, int number, PublishedTastings published, CancellationToken cancellation) =>
            await published.FindAsync(new(id), number, cancellation) is { } found ? Results.File(PdfPages.Write(VerdictDocument.Summary(found), PaperSize.A4), "application/pdf") : Results.NotFound());
        anyone.MapGet("/published/{id:guid}/{number:int}/verdict.pdf", async (Guid id, int number, PublishedTastings published, CancellationToken cancellation) =>
            await published.FindAsync(new(id), number, cancellation) is { } found ? Results.File(PdfPages.Write(VerdictDocument.Of(found), PaperSize.A4), "application/pdf") : Results.NotFound());
    }

    public static void MapPublishing(this IEndpointRouteBuilder maker)
    {
        maker.MapGet("/trials/{id:guid}/publish", (Guid id, TrialStore trials, PublishedTastings published, CancellationToken cancellation) => ShowAsync(id, trials, published, null, [], cancellation));
        maker.MapPost("/trials/{id:guid}/publish", (Guid id, IFormCollection form, TrialStore trials, PublishedTastings published, CancellationToken cancellation) =>
            DoAsync(id, form, trials, published, revealed => revealed.Publish(trials.Now), cancellation));
        maker.MapPost("/trials/{id:guid}/publish/take-back", (Guid id, IFormCollection form, TrialStore trials, PublishedTastings published, CancellationToken cancellation) => TakeBackAsync(id, form, trials, published, cancellation));
        maker.MapPost("/trials/{id:guid}/publish/mend", (Guid id, IFormCollection form, TrialStore trials, PublishedTastings published, CancellationToken cancellation) => MendAsync(id, form, trials, published, cancellation));
    }

    private static async Task<IResult> PageAsync(Guid id, int? number, HttpContext context, PublishedTastings published, CancellationToken cancellation)
    {
        if (await published.FindAsync(new(id), number, cancellation) is not { } found) return Results.NotFound();
        context.Response.Headers.ContentSecurityPolicy = OwnPolicy;
        return Results.Content(HtmlPage.Write(VerdictDocument.Of(found)), "text/html", Encoding.UTF8);
    }

    private static async Task<IResult> ShowAsync(Guid id, TrialStore trials, PublishedTastings published, Posted? typed, IReadOnlyList<Problem> problems, CancellationToken cancellation)
    {
        if (await trials.FindAsync(new(id), cancellation) is not RevealedTasting tasting) return Page.GoTo($"/trials/{id}");
        var parameters = new (string, object?)[]
        {
            ("Tasting", tasting),
            ("Next", await published.NextAsync(tasting, cancellation)),
            ("Corrections", await published.CorrectionsAsync(tasting, cancellation)),
            ("TakenOut", await published.TakenOutAsync(tasting, cancellation)),
            ("Typed", typed),
            ("Faults", Page.Faults(problems)),
        };
        return problems.Count == 0 ? Page.Of<PublishPage>(parameters) : Page.Again<PublishPage>(parameters);
    }

    private static async Task<IResult> DoAsync(Guid id, IFormCollection form, TrialStore trials, PublishedTastings published, Func<RevealedTasting, Outcome<ImmutableArray<DayEvent>>> act, CancellationToken cancellation)
    {
        var outcome = await trials.ActAsync(new(id), tasting => tasting is RevealedTasting revealed ? act(revealed) : TrialPages.TooLate("version", "A verdict is published once the key is open."), cancellation);
        return outcome.Ok ? Page.GoTo($"/trials/{id}/publish") : await ShowAsync(id, trials, published, new Posted(form), outcome.Problems, cancellation);
    }

    private static Task<IResult> TakeBackAsync(Guid id, IFormCollection form, TrialStore trials, PublishedTastings published, CancellationToken cancellation)
    {
        var posted = new Posted(form);
        var who = new TasterId(posted.Id("taster") ?? Guid.Empty);
        return DoAsync(id, form, trials, published, revealed => revealed.TakeBack(trials.Now, who, name: posted.Text("what") == "name", words: posted.Text("what") == "words"), cancellation);
    }

    private static async Task<IResult> MendAsync(Guid id, IFormCollection form, TrialStore trials, PublishedTastings published, CancellationToken cancellation)
    {
        var posted = new Posted(form);
        var who = new TasterId(posted.Id("taster") ?? Guid.Empty);
        if (await trials.FindAsync(new(id), cancellation) is not RevealedTasting tasting || tasting.Book.Taster(who) is null) return Page.GoTo($"/trials/{id}");
        var history = await trials.BallotAsync(tasting, who, cancellation);
        return await DoAsync(id, form, trials, published, revealed => PlacesText.Read(posted.Text("places")).Then(places =>
        {
            var before = revealed.Book.MendedOf(who)?.Ballot ?? history.Counted?.Content ?? Ballot.Empty;
            return revealed.Mend(trials.Now, who, Ballot.Stored(places, before.Answers), posted.Text("reason"), posted.Text("witness"));
        }), cancellation);
    }
}
