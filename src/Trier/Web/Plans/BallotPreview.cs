using Trier.Statistics.Randomness;
using Trier.Storage.Tastings;
using Trier.Trials.Common;
using Trier.Trials.Makes;
using Trier.Trials.Plans;
using Trier.Trials.Tastings;
using Trier.Trials.Tastings.Events;
using Trier.Trials.Tastings.Steps;
using Trier.Web.Access;
using Trier.Web.Hosting;
using Trier.Web.Tastings.Ballots;
using Trier.Web.Tastings.Cards;

namespace Trier.Web.Plans;

/// <summary>
/// The ballot as the plan has it, on the smallest phone and on paper, before anything is sealed: the real pages of an invented taster, with
/// codes that belong to no wheel. Nothing can be sent from it.
/// </summary>
internal static class BallotPreview
{
    private const string Taster = "Ada";

    public static void MapBallotPreview(this IEndpointRouteBuilder maker)
    {
        maker.MapGet("/trials/{id:guid}/ballot-preview", async (Guid id, TrialStore trials) =>
            await trials.FindAsync(new(id)) is { } tasting ? Page.Of<BallotPreviewPage>(("Tasting", tasting), ("Samples", Samples(tasting.Book))) : Results.NotFound());
        maker.MapGet("/trials/{id:guid}/ballot-preview/{step}", ShowAsync);
    }

    /// <summary>How many samples a plate has, the hidden repeat among them; two at least.</summary>
    public static int Samples(DayBook book) => Math.Clamp(book.Standing.Count() + (book.Repeat is null ? 0 : 1), 2, DraftTasting.MostWheels + 1);

    private static async Task<IResult> ShowAsync(Guid id, string step, HttpContext context, TrialStore trials)
    {
        if (await trials.FindAsync(new(id)) is not { } tasting) return Results.NotFound();
        context.Response.Headers.ContentSecurityPolicy = context.Response.Headers.ContentSecurityPolicy.ToString().Replace("frame-ancestors 'none'", "frame-ancestors 'self'", StringComparison.Ordinal);
        var invented = Invented(tasting.Book);
        var taster = invented.Book.Tasters[0];
        var visit = new Visit(new TasterDoor(invented.Book.Trial, taster.Id, "preview", "XXXXXX"), invented, taster, BallotHistory.None);
        return step switch
        {
            "first" => Page.Of<WelcomePage>(("Visit", visit)),
            "sample" => Page.Of<SamplePage>(("Visit", visit), ("Number", 1)),
            "places" => Page.Of<PlacesPage>(("Visit", visit)),
            "rest" => Page.Of<MorePage>(("Visit", visit), ("Number", 1)),
            "paper" => Page.Of<PaperBallotsPage>(("Tasting", invented)),
            "large" => Page.Of<PaperBallotsPage>(("Tasting", invented), ("Large", true)),
            _ => Results.NotFound(),
        };
    }

    private static Tasting Invented(DayBook real)
    {
        var (plan, samples) = (real.Plan, Samples(real));
        // What guests are told of all wheels together is told here too; an invented wheel beyond them says what the first does.
        var told = real.Standing.Select(entry => entry.Facts.ToldToGuests()).ToList();
        WheelFacts Facts(int number) => told.Count == 0 ? WheelFacts.None : told[number <= told.Count ? number - 1 : 0];
        var trial = new TrialId(Guid.Empty);
        var at = DateTimeOffset.UnixEpoch;
        List<DayEvent> events = [new TrialPlanned(at, plan with { Rule = CountingRule.Default })];
        void Do(Outcome<System.Collections.Immutable.ImmutableArray<DayEvent>> done) => events.AddRange(done.Value);
        Tasting Now() => Tasting.Read(trial, [.. events.Select((one, index) => new Logged(index + 1, one))]);
        for (var i = 1; i <= Math.Min(samples, DraftTasting.MostWheels); i++) Do(((DraftTasting)Now()).Enter(at, new Wheel(new WheelId(new Guid(i, 0, 0, new byte[8])), FormattableString.Invariant($"wheel {i}"), Facts(i))));
        if (samples > DraftTasting.MostWheels) Do(((DraftTasting)Now()).ServeTwice(at, new WheelId(new Guid(1, 0, 0, new byte[8]))));
        Do(((DraftTasting)Now()).AddTaster(at, new TasterId(Guid.Empty), Taster, knowsTheKey: false, junior: false, 1));
        Do(((DraftTasting)Now()).Seal(at, new Seed(1)));
        Do(((SealedTasting)Now()).Open(at));
        return Now();
    }
}
