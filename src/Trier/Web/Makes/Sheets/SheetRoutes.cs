using Trier.Storage.Makes;
using Trier.Trials.Common;
using Trier.Trials.Makes.Days;
using Trier.Trials.Makes.Sheets;
using Trier.Web.Hosting;
using Trier.Web.Makes.Recipes;

namespace Trier.Web.Makes.Sheets;

/// <summary>A recipe worked out for this milk, and a make begun by it.</summary>
internal static class SheetRoutes
{
    public static void MapSheets(this IEndpointRouteBuilder maker)
    {
        maker.MapGet("/recipes/{key}/sheet", ShowAsync);
        maker.MapPost("/recipes/{key}/makes", BeginAsync);
    }

    private static async Task<IResult> ShowAsync(string key, HttpContext context, RecipeStore recipes, MakeStore makes)
    {
        if (await RecipeRef.FindAsync(key, recipes) is not { } known) return Results.NotFound();
        var (units, typed) = (MakerUnits.Of(context), new VatForm(name => context.Request.Query[name].ToString().Trim()));
        // The form's own key for other units: what is typed comes along, and the form is shown again with it.
        if (context.Request.Query["show"].ToString() is { Length: > 0 } wanted)
        {
            MakerUnits.Named(wanted).Choose(context);
            return Page.GoTo($"{known.Path}/sheet{typed.Query}{(typed.Query.Length > 0 ? "&" : "?")}form=yes");
        }

        var here = $"{known.Path}/sheet{typed.Query}";
        if (!typed.Given || context.Request.Query.ContainsKey("form")) return Page.Of<SheetPage>(("Known", known), ("Chosen", units), ("Typed", typed.In(units)), ("Now", makes.Now), ("Here", here));
        var read = typed.Read(known.Recipe);
        return read.TryGet(out var vat)
            ? Page.Of<SheetPage>(("Known", known), ("Chosen", units), ("Typed", typed), ("Now", makes.Now), ("Here", here), ("Sheet", MakeSheet.Of(known.Recipe, vat)))
            : Page.Again<SheetPage>(("Known", known), ("Chosen", units), ("Typed", typed.In(units)), ("Now", makes.Now), ("Here", here), ("Faults", Page.Faults(units.Say(read.Problems))));
    }

    private static async Task<IResult> BeginAsync(string key, HttpContext context, IFormCollection form, RecipeStore recipes, MakeStore makes)
    {
        if (await RecipeRef.FindAsync(key, recipes) is not { } known) return Results.NotFound();
        var (posted, units) = (new Posted(form), MakerUnits.Of(context));
        var typed = new VatForm(posted.Text);
        var problems = new List<Problem>();
        var now = makes.Now;
        var begins = DayClock.Read(posted.Text("begins"), "begins", now, problems) ?? now;
        var read = typed.Read(known.Recipe);
        problems.AddRange(read.Problems);
        // A recipe that ships becomes the maker's own with its first make; its version is then frozen like any other.
        var outcome = problems.Count > 0
            ? Outcome.Fault<System.Collections.Immutable.ImmutableArray<MakeEvent>>(problems)
            : Make.Begin(now, posted.Text("name"), known.Line ?? await recipes.SaveAsync(new(Guid.CreateVersion7()), known.Recipe), read.Value.Vat, begins);
        if (!outcome.TryGet(out var events))
        {
            return Page.Again<SheetPage>(
                ("Known", known), ("Chosen", units), ("Typed", read.Ok ? typed : typed.In(units)), ("Now", now), ("Here", $"{known.Path}/sheet{typed.Query}"), ("Name", posted.Text("name")), ("Begins", posted.Text("begins")),
                ("Sheet", read.Ok ? MakeSheet.Of(known.Recipe, read.Value) : null), ("Faults", Page.Faults(units.Say(outcome.Problems))));
        }

        var id = new MakeId(Guid.CreateVersion7());
        await makes.BeginAsync(id, events);
        return Page.GoTo($"/makes/{id.Value}");
    }
}
