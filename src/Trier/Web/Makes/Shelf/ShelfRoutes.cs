using System.Collections.Immutable;
using System.Globalization;
using Trier.Storage.Makes;
using Trier.Trials.Common;
using Trier.Trials.Makes.Shelf;
using Trier.Web.Hosting;
using Trier.Web.Plans;

namespace Trier.Web.Makes.Shelf;

/// <summary>Brines, lots and instruments: the things behind the record.</summary>
internal static class ShelfRoutes
{
    public static void MapShelf(this IEndpointRouteBuilder maker)
    {
        maker.MapGet("/shelf", async (ThingStore things, MakeStore makes) => Page.Of<ShelfPage>(("Things", await things.AllAsync()), ("Makes", await makes.AllAsync()), ("Now", makes.Now)));
        maker.MapPost("/shelf", BeginAsync);
        maker.MapGet("/shelf/{id:guid}", async (Guid id, ThingStore things, MakeStore makes) => await things.FindAsync(new(id)) is { } thing ? Page.Of<ThingPage>(("Thing", thing), ("Makes", await makes.AllAsync()), ("Now", makes.Now)) : Results.NotFound());
        maker.MapPost("/shelf/{id:guid}", WriteAsync);
    }

    private static async Task<IResult> BeginAsync(IFormCollection form, ThingStore things, MakeStore makes)
    {
        var posted = new Posted(form);
        var problems = new List<Problem>();
        var expires = Dates.Parse(posted.Text("expires"), "expires", problems);
        if (!Enum.TryParse<ThingKind>(posted.Text("kind"), out var kind) || !Enum.IsDefined(kind)) problems.Add(new("kind", "Say what it is."));
        var begun = Thing.Begin(new(Guid.CreateVersion7()), makes.Now, kind, posted.Text("name"), expires, posted.Text("note"));
        problems.AddRange(begun.Problems);
        if (problems.Count > 0) return Page.Again<ShelfPage>(("Things", await things.AllAsync()), ("Makes", await makes.AllAsync()), ("Now", makes.Now), ("TypedForm", posted), ("Faults", Page.Faults(problems)));
        await things.BeginAsync(begun.Value);
        return Page.GoTo($"/shelf/{begun.Value.Id.Value}");
    }

    private static async Task<IResult> WriteAsync(Guid id, IFormCollection form, ThingStore things, MakeStore makes)
    {
        var posted = new Posted(form);
        var problems = new List<Problem>();
        var when = DayClock.Read(posted.Text("when"), "when", makes.Now, problems) ?? makes.Now;
        if (!Enum.TryParse<ThingDeed>(posted.Text("deed"), out var deed) || !Enum.IsDefined(deed)) problems.Add(new("deed", "Say what was done."));
        var wheels = Numbers(posted.Text("wheels"), problems);
        var outcome = problems.Count > 0 ? Outcome.Fault<Thing>(problems) : await things.WriteAsync(new(id), new ThingEvent(when, deed, posted.Text("note"), wheels, posted.Ticked("raw")));
        if (outcome.Ok) return Page.GoTo($"/shelf/{id}");
        return await things.FindAsync(new(id)) is { } thing ? Page.Again<ThingPage>(("Thing", thing), ("Makes", await makes.AllAsync()), ("Now", makes.Now), ("TypedForm", posted), ("Faults", Page.Faults(outcome.Problems))) : Results.NotFound();
    }

    private static ImmutableArray<int> Numbers(string text, List<Problem> problems)
    {
        var numbers = ImmutableArray.CreateBuilder<int>();
        foreach (var part in text.Split([',', ';', ' '], StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries))
        {
            if (int.TryParse(part, NumberStyles.None, CultureInfo.InvariantCulture, out var number)) numbers.Add(number);
            else problems.Add(new("wheels", $"“{part}” is no wheel's number: write them as 3, 4."));
        }

        return numbers.ToImmutable();
    }
}
