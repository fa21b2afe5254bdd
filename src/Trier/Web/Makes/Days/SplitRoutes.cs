using System.Collections.Immutable;
using Trier.Storage.Makes;
using Trier.Trials.Common;
using Trier.Trials.Makes.Days;
using Trier.Web.Hosting;

namespace Trier.Web.Makes.Days;

/// <summary>Splitting a vat into treatments.</summary>
internal static class SplitRoutes
{
    public static void MapSplits(this IEndpointRouteBuilder maker)
    {
        maker.MapGet("/makes/{id:guid}/split", async (Guid id, HttpContext context, MakeStore makes) =>
            await makes.FindAsync(new(id)) is { } make ? Page.Of<SplitPage>(("Make", make), ("Chosen", MakerUnits.Of(context))) : Results.NotFound());
        maker.MapPost("/makes/{id:guid}/split", SplitAsync);
    }

    private static async Task<IResult> SplitAsync(Guid id, HttpContext context, IFormCollection form, MakeStore makes)
    {
        var posted = new Posted(form);
        var units = MakerUnits.Typed(posted, context);
        var parts = SplitForm.Read(posted, units);
        var outcome = await makes.ActAsync(new(id), posted.Id("sendId"), make => parts.Then(read => make.Divide(makes.Now, read)));
        if (outcome.Ok) return Page.GoTo($"/makes/{id}");
        return await makes.FindAsync(new(id)) is { } found
            ? Page.Again<SplitPage>(("Make", found), ("Chosen", units), ("TypedForm", posted), ("Faults", Page.Faults(units.Say(outcome.Problems).Select(Named), Labels)))
            : Results.NotFound();
    }

    private static readonly Dictionary<string, string> Labels = Enumerable.Range(1, SplitForm.Parts).SelectMany(part => new[]
    {
        KeyValuePair.Create($"name-{part}", "Name"), KeyValuePair.Create($"share-{part}", "Share of the vat"), KeyValuePair.Create($"differs-{part}", "In your words"),
    }.Concat(Enumerable.Range(1, SplitForm.Changes).SelectMany(row => new[] { KeyValuePair.Create($"what-{part}-{row}", "Otherwise"), KeyValuePair.Create($"value-{part}-{row}", "to") }))).ToDictionary(StringComparer.Ordinal);

    // What stands against the whole is told at the first field, where the eye is.
    private static Problem Named(Problem problem) => problem.Field == "parts" ? problem with { Field = "name-1" } : problem;
}
