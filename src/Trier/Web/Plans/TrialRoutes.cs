namespace Trier.Web.Plans;

/// <summary>The maker's list of trials and a trial's plan.</summary>
internal static class TrialRoutes
{
    public static void MapTrials(this IEndpointRouteBuilder routes)
    {
    }
}
