namespace Trier.Web.Hosting;

/// <summary>What a person sees when a page is missing or the program failed.</summary>
internal static class ErrorRoutes
{
    public static void MapErrors(this IEndpointRouteBuilder routes)
    {
        routes.Map("/error", () => Page.Of<ErrorPage>(("Status", 500)));
        routes.Map("/error/{status:int}", (int status) => Page.Of<ErrorPage>(("Status", status)));
    }
}
