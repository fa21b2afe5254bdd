using System.Collections.Immutable;
using System.Globalization;
using Trier.Storage.Makes;
using Trier.Storage.Tastings;
using Trier.Trials.Common;
using Trier.Trials.Makes;
using Trier.Trials.Plans;
using Trier.Trials.Plans.FollowUps;
using Trier.Trials.Plans.Repairs;
using Trier.Trials.Tastings.Events;
using Trier.Trials.Tastings.Steps;
using Trier.Web.Hosting;
using Trier.Web.Verdicts;

namespace Trier.Web.Plans.Planning;

/// <summary>The planning page of a trial, its three numbers, the changes it offers, and the trial that follows from a verdict.</summary>
internal static class PlanningRoutes
{
    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(2.5);

    public static void MapPlanning(this IEndpointRouteBuilder maker)
    {
        maker.MapGet("/trials/{id:guid}/planning", ShowAsync);
        maker.MapPost("/trials/{id:guid}/planning", AimAsync);
        maker.MapPost("/trials/{id:guid}/planning/again", AgainAsync);
        maker.MapPost("/trials/{id:guid}/follow-up", FollowAsync);
    }

    private static async Task<IResult> ShowAsync(Guid id, TrialStore trials, PlannedPanels panels, CancellationToken cancellation) =>
        await trials.FindAsync(new(id), cancellation) is { } tasting ? Page.Of<PlanningPage>(await ParametersAsync(tasting, panels, Patience, cancellation)) : Results.NotFound();

    private static async Task<(string, object?)[]> ParametersAsync(Tasting tasting, PlannedPanels panels, TimeSpan patience, CancellationToken cancellation)
    {
        var review = PlanReview.Of(TrialOutline.Of(tasting.Book));
        var found = await panels.FindAsync(review.Outline, patience, cancellation);
        return [("Tasting", tasting), ("Review", review with { Panels = found.Found }), ("Done", found.Done)];
    }

    private static async Task<IResult> AimAsync(Guid id, IFormCollection form, TrialStore trials, PlannedPanels panels, CancellationToken cancellation)
    {
        var posted = new Posted(form);
        var outcome = await trials.ActAsync(new(id), tasting => tasting is DraftTasting draft
            ? Aims(posted, draft.Book.Plan.Aims).Then(aims => draft.Plan(trials.Now, draft.Book.Plan with { Aims = aims }))
            : TrialPages.TooLate("tasters", "The plan was fixed when the key was sealed."), CancellationToken.None);
        if (outcome.Ok) return Page.GoTo($"/trials/{id}/planning#tasters");
        return await trials.FindAsync(new(id), cancellation) is { } found
            ? Page.Again<PlanningPage>([.. await ParametersAsync(found, panels, TimeSpan.Zero, cancellation), ("Typed", posted), ("Faults", Page.Faults(outcome.Problems, Labels))])
            : Results.NotFound();
    }

    private static IReadOnlyDictionary<string, string> Labels { get; } = new Dictionary<string, string>(StringComparer.Ordinal) { ["age"] = "Age on the day", ["preference"] = "The difference worth finding" };

    private static Outcome<PlanAims> Aims(Posted posted, PlanAims? stands)
    {
        var problems = new List<Problem>();
        double? Number(string field)
        {
            if (posted.Optional(field) is not { } text) return null;
            if (double.TryParse(text.Replace(',', '.'), NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out var number)) return number;
            problems.Add(new(field, $"“{text}” is no number."));
            return null;
        }

        int? Whole(string field)
        {
            if (Number(field) is not { } number) return null;
            if (Math.Abs(number) < 1e6 && number == Math.Floor(number)) return (int)number;
            problems.Add(new(field, "Write a whole number."));
            return null;
        }

        var (age, tasters, preference) = (Whole("age"), Whole("tasters"), Number("preference"));
        var aims = PlanAims.Create(age, tasters, preference, stands);
        return problems.Count > 0 ? Outcome.Fault<PlanAims>([.. problems, .. aims.Problems]) : aims;
    }

    /// <summary>Enters a recipe's next wheel, still to be made.</summary>
    private static async Task<IResult> AgainAsync(Guid id, IFormCollection form, TrialStore trials, WheelStore wheels)
    {
        var recipe = new Posted(form).Text("recipe");
        var wheel = default(Wheel);
        var outcome = await trials.ActAsync(new(id), tasting =>
        {
            if (tasting is not DraftTasting draft) return TrialPages.TooLate("recipe", "The key is sealed: a wheel more belongs in another trial.");
            var review = PlanReview.Of(TrialOutline.Of(draft.Book));
            if (!review.Repairs.Any(repair => repair.Kind == RepairKind.MakeAgain && string.Equals(repair.Subject, recipe, StringComparison.OrdinalIgnoreCase)))
                return TrialPages.TooLate("recipe", "This recipe has two wheels already, or there is no place on the plate.");
            wheel = new Wheel(new(Guid.CreateVersion7()), FreeName(draft, recipe), WheelFacts.Of([new(WheelFacts.RecipeFact, recipe)]));
            return draft.Enter(trials.Now, wheel);
        });
        if (!outcome.Ok) return Page.Again<RefusedPage>(("Problems", outcome.Problems), ("Back", $"/trials/{id}/planning"));
        await wheels.SaveAsync(wheel!);
        return Page.GoTo($"/trials/{id}/planning");
    }

    private static string FreeName(DraftTasting draft, string recipe)
    {
        var stem = recipe.Length > 26 ? recipe[..26].TrimEnd() : recipe;
        for (var number = 2; ; number++)
        {
            var name = string.Create(CultureInfo.InvariantCulture, $"{stem} {number}");
            if (!draft.Book.Entries.Any(entry => string.Equals(entry.Name, name, StringComparison.OrdinalIgnoreCase))) return name;
        }
    }

    /// <summary>One act: the draft of the trial that would settle what the verdict left open.</summary>
    private static async Task<IResult> FollowAsync(Guid id, IFormCollection _, TrialStore trials, WheelStore wheels, JudgedTastings verdicts, CancellationToken cancellation)
    {
        if (await verdicts.FindAsync(new(id), TimeSpan.FromSeconds(20), cancellation) is not { } judged) return Results.NotFound();
        var planned = FollowUp.From(judged.Verdict, new(id), judged.Tasting.Book.Plan);
        if (!planned.TryGet(out var follow)) return Page.Again<RefusedPage>(("Problems", planned.Problems), ("Back", $"/trials/{id}/verdict"));
        var begun = DraftTasting.Begin(trials.Now, follow.Plan);
        if (!begun.TryGet(out var events)) return Page.Again<RefusedPage>(("Problems", begun.Problems), ("Back", $"/trials/{id}/verdict"));
        var next = new TrialId(Guid.CreateVersion7());
        await trials.BeginAsync(next, events, cancellation);
        var made = follow.Wheels.Select(wheel => new Wheel(new(Guid.CreateVersion7()), wheel.Name, wheel.Facts)).ToImmutableArray();
        foreach (var wheel in made)
        {
            var entered = await trials.ActAsync(next, tasting => ((DraftTasting)tasting).Enter(trials.Now, wheel), CancellationToken.None);
            if (!entered.Ok) return Page.Again<RefusedPage>(("Problems", entered.Problems), ("Back", $"/trials/{next.Value}"));
            await wheels.SaveAsync(wheel, CancellationToken.None);
        }

        if (follow.ServeTwice is { } twice) await trials.ActAsync(next, tasting => ((DraftTasting)tasting).ServeTwice(trials.Now, made[twice].Id), CancellationToken.None);
        return Page.GoTo($"/trials/{next.Value}/planning");
    }
}
