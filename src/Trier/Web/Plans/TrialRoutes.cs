using System.Collections.Immutable;
using System.Globalization;
using Trier.Resources;
using Trier.Storage.Access;
using Trier.Storage.Makes;
using Trier.Storage.Tastings;
using Trier.Trials.Common;
using Trier.Trials.Makes;
using Trier.Trials.Plans;
using Trier.Trials.Tastings.Events;
using Trier.Trials.Tastings.Steps;
using Trier.Web.Hosting;
using Trier.Web.Tastings.Board;

namespace Trier.Web.Plans;

/// <summary>The maker's list of trials and a trial's plan: question, rule, wheels, tasters.</summary>
internal static class TrialRoutes
{
    public static void MapTrials(this IEndpointRouteBuilder maker)
    {
        maker.MapBallotPreview();
        maker.MapGet("/", async (TrialStore trials) => Page.Of<HomePage>(("Trials", await trials.AllAsync())));
        maker.MapGet("/trials/new", () => Page.Of<NewTrialPage>());
        maker.MapPost("/trials", BeginAsync);
        maker.MapGet("/trials/{id:guid}", ShowAsync);
        maker.MapGet("/trials/{id:guid}/plan", (Guid id, TrialStore trials) => TrialPages.ShowAsync<EditPlanPage>(id, trials));
        maker.MapPost("/trials/{id:guid}/plan", PlanAsync);
        maker.MapPost("/trials/{id:guid}/wheels", EnterAsync);
        maker.MapGet("/trials/{id:guid}/wheels/{wheel:guid}", EditWheelAsync);
        maker.MapPost("/trials/{id:guid}/wheels/{wheel:guid}", CorrectWheelAsync);
        maker.MapPost("/trials/{id:guid}/wheels/{wheel:guid}/remove", (Guid id, Guid wheel, IFormCollection _, TrialStore trials) =>
            TrialPages.DoAsync(id, trials, $"/trials/{id}", tasting => tasting is DraftTasting draft ? draft.Remove(trials.Now, new(wheel)) : TrialPages.TooLate("wheel", "The key is sealed: withdraw the wheel with its reason instead.")));
        maker.MapPost("/trials/{id:guid}/repeat", (Guid id, IFormCollection form, TrialStore trials) =>
            TrialPages.DoAsync(id, trials, $"/trials/{id}", tasting => tasting is DraftTasting draft
                ? draft.ServeTwice(trials.Now, new Posted(form).Id("repeat") is { } wheel ? new WheelId(wheel) : null)
                : TrialPages.TooLate("repeat", "The key is sealed: what is served twice stays as it is.")));
        maker.MapPost("/trials/{id:guid}/wheels/{wheel:guid}/flight", (Guid id, Guid wheel, IFormCollection form, TrialStore trials) =>
            TrialPages.DoAsync(id, trials, $"/trials/{id}#wheels", tasting => tasting is DraftTasting draft
                ? draft.ChooseFlight(trials.Now, new(wheel), new Posted(form).Text("flight") == "second")
                : TrialPages.TooLate("flight", "The key is sealed: the flights stay as they are.")));
        maker.MapPost("/trials/{id:guid}/tasters", AddTasterAsync);
        maker.MapGet("/trials/{id:guid}/tasters/{taster:guid}", EditTasterAsync);
        maker.MapPost("/trials/{id:guid}/tasters/{taster:guid}", CorrectTasterAsync);
        maker.MapPost("/trials/{id:guid}/tasters/{taster:guid}/let-go", (Guid id, Guid taster, IFormCollection _, TrialStore trials) =>
            TrialPages.DoAsync(id, trials, $"/trials/{id}", tasting => tasting switch
            {
                DraftTasting draft => draft.LetGo(trials.Now, new(taster)),
                SealedTasting sealedTasting => sealedTasting.LetGo(trials.Now, new(taster)),
                OpenTasting open => open.LetGo(trials.Now, new(taster)),
                _ => TrialPages.TooLate("taster", "The ballots are closed: everyone stays on the list."),
            }));
        maker.MapPost("/trials/{id:guid}/tasters/{taster:guid}/group", (Guid id, Guid taster, IFormCollection form, TrialStore trials) =>
            TrialPages.DoAsync(id, trials, $"/trials/{id}#tasters", tasting => tasting.JoinGroup(trials.Now, new(taster), new Posted(form).Optional("group"))));
        maker.MapPost("/trials/{id:guid}/tasters/{taster:guid}/scribe", (Guid id, Guid taster, IFormCollection form, TrialStore trials) =>
            TrialPages.DoAsync(id, trials, $"/trials/{id}/tasters/{taster}", tasting => tasting.NameScribe(trials.Now, new(taster), new Posted(form).Optional("scribe"))));
        maker.MapPost("/trials/{id:guid}/tasters/{taster:guid}/left-off", LeaveOffAsync);
    }

    private static async Task<IResult> BeginAsync(IFormCollection form, TrialStore trials)
    {
        var posted = new Posted(form);
        var outcome = PlanForm.Read(posted).Then(plan => DraftTasting.Begin(trials.Now, plan));
        if (!outcome.TryGet(out var events)) return Page.Again<NewTrialPage>(("Typed", posted), ("Faults", Page.Faults(outcome.Problems, PlanForm.Labels)));
        var id = new TrialId(Guid.CreateVersion7());
        await trials.BeginAsync(id, events);
        return Page.GoTo($"/trials/{id.Value}");
    }

    private static async Task<IResult> ShowAsync(Guid id, TrialStore trials, WheelStore wheels)
    {
        if (await trials.FindAsync(new(id)) is not { } tasting) return Results.NotFound();
        return Page.Of<TrialPage>(("Tasting", tasting), ("Wheels", await wheels.AllAsync()));
    }

    private static async Task<IResult> PlanAsync(Guid id, IFormCollection form, TrialStore trials)
    {
        var posted = new Posted(form);
        var outcome = await trials.ActAsync(new(id), tasting => tasting is DraftTasting draft
            ? PlanForm.Read(posted, draft.Book.Plan).Then(plan => draft.Plan(trials.Now, plan))
            : TrialPages.TooLate("rule", "The plan was fixed when the key was sealed."));
        if (outcome.Ok) return Page.GoTo($"/trials/{id}");
        return await trials.FindAsync(new(id)) is { } found ? Page.Again<EditPlanPage>(("Tasting", found), ("Typed", posted), ("Faults", Page.Faults(outcome.Problems, PlanForm.Labels))) : Results.NotFound();
    }

    private static async Task<IResult> EnterAsync(Guid id, IFormCollection form, TrialStore trials, WheelStore wheels)
    {
        var posted = new Posted(form);
        var known = posted.Id("known") is { } chosen ? (await wheels.HistoryAsync(new(chosen))).LastOrDefault() : null;
        var facts = WheelForm.Facts(posted);
        var wheel = known ?? new Wheel(new(Guid.CreateVersion7()), posted.Text("name"), facts.Ok ? facts.Value : WheelFacts.None);
        var outcome = await trials.ActAsync(new(id), tasting => tasting is not DraftTasting draft
            ? TrialPages.TooLate("name", "The key is sealed: break the seal first, or begin another trial.")
            : facts.Ok ? draft.Enter(trials.Now, wheel) : Outcome.Fault<ImmutableArray<DayEvent>>([.. facts.Problems, .. draft.Enter(trials.Now, wheel).Problems]));
        if (!outcome.Ok)
        {
            return await trials.FindAsync(new(id)) is { } found
                ? Page.Again<TrialPage>(("Tasting", found), ("Wheels", await wheels.AllAsync()), ("Typed", posted), ("Faults", Page.Faults(outcome.Problems, WheelForm.Labels)))
                : Results.NotFound();
        }

        if (known is null) await wheels.SaveAsync(wheel);
        return Page.GoTo($"/trials/{id}#wheels");
    }

    private static async Task<IResult> EditWheelAsync(Guid id, Guid wheel, TrialStore trials) =>
        await trials.FindAsync(new(id)) is { } tasting && tasting.Book.Entry(new(wheel)) is { } entry
            ? Page.Of<EditWheelPage>(("Tasting", tasting), ("Entry", entry))
            : Results.NotFound();

    private static async Task<IResult> CorrectWheelAsync(Guid id, Guid wheel, IFormCollection form, TrialStore trials, WheelStore wheels)
    {
        var posted = new Posted(form);
        var outcome = await trials.ActAsync(new(id), tasting =>
            WheelForm.Facts(posted, tasting.Book.Entry(new(wheel))?.Facts).Then(read => tasting.CorrectEntry(trials.Now, new(wheel), posted.Text("name"), read)));
        if (!outcome.TryGet(out var after))
        {
            return await trials.FindAsync(new(id)) is { } found && found.Book.Entry(new(wheel)) is { } entry
                ? Page.Again<EditWheelPage>(("Tasting", found), ("Entry", entry), ("Typed", posted), ("Faults", Page.Faults(outcome.Problems, WheelForm.Labels)))
                : Results.NotFound();
        }

        var corrected = after.Book.Entry(new(wheel))!;
        await wheels.SaveAsync(new Wheel(corrected.Wheel, corrected.Name, corrected.Facts));
        return Page.GoTo($"/trials/{id}#wheels");
    }

    private static readonly Dictionary<string, string> TasterLabels = new(StringComparer.Ordinal) { ["taster"] = "Name", ["off"] = "Left off" };

    private static async Task<IResult> AddTasterAsync(Guid id, IFormCollection form, TrialStore trials, WheelStore wheels, WalkIns walkIns, Copies copies)
    {
        var posted = new Posted(form);
        var taster = new TasterId(Guid.CreateVersion7());
        var (knows, junior, sitting) = (posted.Ticked("knows"), posted.Ticked("junior"), Math.Clamp(posted.Number("sitting") ?? 1, 1, 9));
        var outcome = await trials.ActAsync(new(id), tasting => tasting switch
        {
            DraftTasting draft => draft.AddTaster(trials.Now, taster, posted.Text("taster"), knows, junior, sitting),
            SealedTasting sealedTasting => sealedTasting.AddTaster(trials.Now, taster, posted.Text("taster"), knows, junior, sitting),
            OpenTasting open => open.AddTaster(trials.Now, taster, posted.Text("taster"), knows, junior, sitting),
            _ => TrialPages.TooLate("name", "The ballots are closed: nobody can join any more."),
        });
        var atTheBoard = posted.Text("back") == "board";
        if (outcome.Ok) return Page.GoTo(atTheBoard ? $"/trials/{id}/board" : $"/trials/{id}#tasters");
        if (atTheBoard && await trials.FindAsync(new(id)) is RoomTasting room) return await BoardRoutes.BoardAsync(room, trials, walkIns, copies, RefusedNote.Of("newcomer", posted, outcome.Problems));
        var faults = outcome.Problems.Select(problem => problem with { Field = problem.Field == "name" ? "taster" : problem.Field });
        return await trials.FindAsync(new(id)) is { } found
            ? Page.Again<TrialPage>(("Tasting", found), ("Wheels", await wheels.AllAsync()), ("Typed", posted), ("Faults", Page.Faults(faults, TasterLabels)))
            : Results.NotFound();
    }

    private static async Task<IResult> EditTasterAsync(Guid id, Guid taster, TrialStore trials) =>
        await trials.FindAsync(new(id)) is { } tasting && tasting.Book.Taster(new(taster)) is { } found
            ? Page.Of<EditTasterPage>(("Tasting", tasting), ("Taster", found))
            : Results.NotFound();

    private static async Task<IResult> CorrectTasterAsync(Guid id, Guid taster, IFormCollection form, TrialStore trials)
    {
        var posted = new Posted(form);
        var outcome = await trials.ActAsync(new(id), tasting => tasting.CorrectTaster(trials.Now, new(taster), posted.Text("name"), posted.Ticked("junior")));
        if (outcome.TryGet(out var after) && BallotWords.Find(posted.Text("language")) is { } language && language.Name != (after.Book.Taster(new(taster))!.Language ?? "en"))
            await trials.ActAsync(new(id), tasting => tasting.ChooseLanguage(trials.Now, new(taster), language.Name));
        if (outcome.Ok) return Page.GoTo($"/trials/{id}#tasters");
        return await trials.FindAsync(new(id)) is { } found && found.Book.Taster(new(taster)) is { } who
            ? Page.Again<EditTasterPage>(("Tasting", found), ("Taster", who), ("Typed", posted), ("Faults", Page.Faults(outcome.Problems)))
            : Results.NotFound();
    }

    private static async Task<IResult> LeaveOffAsync(Guid id, Guid taster, IFormCollection form, TrialStore trials, Chance chance)
    {
        var wheels = new Posted(form).Ids("off").Select(wheel => new WheelId(wheel)).ToImmutableArray();
        var outcome = await trials.ActBesideAsync(new(id), (tasting, said) => Chance.Committed(tasting, tasting switch
        {
            DraftTasting draft => draft.LeaveOff(trials.Now, new(taster), wheels),
            SealedTasting sealedTasting => sealedTasting.LeaveOff(trials.Now, new(taster), wheels, chance.Draw()),
            OpenTasting open => open.LeaveOff(trials.Now, new(taster), wheels, said.Contains(new(taster))),
            _ => TrialPages.TooLate("off", "The ballots are closed: a taster can leave a sample untouched, and the ballot then counts without it."),
        }));
        if (outcome.Ok) return Page.GoTo($"/trials/{id}#tasters");
        return await trials.FindAsync(new(id)) is { } found && found.Book.Taster(new(taster)) is { } who
            ? Page.Again<EditTasterPage>(("Tasting", found), ("Taster", who), ("Faults", Page.Faults(outcome.Problems.Select(problem => problem with { Field = "off" }), TasterLabels)))
            : Results.NotFound();
    }
}
