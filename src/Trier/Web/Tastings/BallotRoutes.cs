namespace Trier.Web.Tastings;

/// <summary>The taster's side: by link alone, without an account.</summary>
internal static class BallotRoutes
{
    public static void MapBallots(this IEndpointRouteBuilder routes)
    {
    }
}
