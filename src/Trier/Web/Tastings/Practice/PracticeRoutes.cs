using Trier.Storage.Tastings;
using Trier.Trials.Tastings.Steps;
using Trier.Web.Hosting;
using Trier.Web.Plans;

namespace Trier.Web.Tastings.Practice;

/// <summary>The dry run: begun, walked, and gone.</summary>
internal static class PracticeRoutes
{
    public static void MapPractice(this IEndpointRouteBuilder maker)
    {
        maker.MapGet("/trials/{id:guid}/practice", async (Guid id, TrialStore trials, PracticeTable practice) =>
            await trials.FindAsync(new(id)) is { } tasting ? Page.Of<PracticePage>(("Tasting", tasting), ("Link", practice.LinkOf(tasting.Book.Trial))) : Results.NotFound());
        maker.MapPost("/trials/{id:guid}/practice", StartAsync);
        maker.MapPost("/trials/{id:guid}/practice/end", async (Guid id, IFormCollection _, PracticeTable practice) =>
        {
            await practice.EndAsync();
            return Page.GoTo($"/trials/{id}/practice");
        });
    }

    private static async Task<IResult> StartAsync(Guid id, IFormCollection _, TrialStore trials, PracticeTable practice, Chance chance)
    {
        if (await trials.FindAsync(new(id)) is not { } tasting) return Results.NotFound();
        // A practice table is laid as the real one would be sealed; what would hinder that is told here.
        if (tasting is DraftTasting draft && draft.Seal(trials.Now, chance.Draw()) is { Ok: false } refused && refused.Problems.Any(problem => problem.Field != "tasters"))
            return Page.Again<RefusedPage>(("Problems", refused.Problems), ("Back", $"/trials/{id}/practice"));
        await practice.StartAsync(tasting.Book);
        return Page.GoTo($"/trials/{id}/practice");
    }
}
