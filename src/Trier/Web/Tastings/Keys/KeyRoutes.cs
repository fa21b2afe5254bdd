using System.Text;
using Trier.Publishing.Keys;
using Trier.Storage.Tastings;
using Trier.Trials.Tastings.Steps;
using Trier.Web.Hosting;

namespace Trier.Web.Tastings.Keys;

/// <summary>The page of a sealed key, for anyone: five words before the reveal, the list and its check after it.</summary>
internal static class KeyRoutes
{
    public static void MapKeys(this IEndpointRouteBuilder anyone)
    {
        anyone.MapGet("/key/{id:guid}", async (Guid id, TrialStore trials, CheckedKeys keys) => await trials.FindAsync(new(id)) switch
        {
            null or DraftTasting => Results.NotFound(),
            RevealedTasting revealed => Page.Of<KeyPage>(("Tasting", revealed), ("Check", await keys.OfAsync(revealed.Book))),
            var still => Page.Of<KeyPage>(("Tasting", still)),
        });
        anyone.MapGet("/key/{id:guid}/key.json", async (Guid id, TrialStore trials) => await trials.FindAsync(new(id)) is RevealedTasting { Book: { Commitments.IsEmpty: false } book }
            ? Results.File(Encoding.UTF8.GetBytes(KeyFile.Write(book.Trial, book.Commitments)), "application/json", "key.json")
            : Results.NotFound());
    }
}
