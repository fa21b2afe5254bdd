using Trier.Web.Hosting;

namespace Trier.Web.Handbook;

/// <summary>The pages that explain the figures, for anyone.</summary>
internal static class HandbookRoutes
{
    public static void MapHandbook(this IEndpointRouteBuilder anyone)
    {
        foreach (var folder in HandbookText.Folders)
        {
            anyone.MapGet($"/{folder}/{{page}}", (string page) => HandbookText.Find(folder, page) is { } text
                ? Page.Of<HandbookPage>(("Folder", folder), ("Text", text))
                : Results.NotFound());
        }
    }
}
