using Trier.Storage.Tastings;
using Trier.Web.Hosting;

namespace Trier.Web.Tastings.Serving;

/// <summary>Before the day: portions, table, invitation, briefing. Worked out anew from what is typed; nothing is kept.</summary>
internal static class ServingRoutes
{
    public static void MapServing(this IEndpointRouteBuilder maker) =>
        maker.MapGet("/trials/{id:guid}/serving", async (Guid id, HttpContext context, TrialStore trials) =>
            await trials.FindAsync(new(id)) is { } tasting
                ? Page.Of<ServingPage>(("Tasting", tasting), ("Asked", new ServingAsk(context.Request.Query, tasting)))
                : Results.NotFound());
}
