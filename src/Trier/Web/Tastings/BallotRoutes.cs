using Trier.Web.Tastings.Ballots;

namespace Trier.Web.Tastings;

/// <summary>The taster's side: by link alone, without an account.</summary>
internal static class BallotRoutes
{
    public static void MapBallots(this IEndpointRouteBuilder routes)
    {
        // The link is the permission: a page on another site cannot know it, so a token in the form would guard nothing more.
        var taster = routes.MapGroup("").DisableAntiforgery().AddEndpointFilter<Languages>();
        taster.MapTaster();
        taster.MapDoor();
    }
}
