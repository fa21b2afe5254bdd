using System.Collections.Immutable;
using Trier.Storage.Makes;
using Trier.Trials.Common;
using Trier.Trials.Makes.Days;
using Trier.Trials.Makes.Recipes;
using Trier.Trials.Makes.Sheets;
using Trier.Web.Hosting;

namespace Trier.Web.Makes.Days;

/// <summary>Vat days: the step in hand, the record, the wheels and their labels.</summary>
internal static class MakeRoutes
{
    public static void MapMakes(this IEndpointRouteBuilder maker)
    {
        MakerUnits.Map(maker);
        maker.MapGet("/makes", async (MakeStore makes) => Page.Of<MakesPage>(("Makes", await makes.AllAsync())));
        maker.MapGet("/makes/now", (MakeStore makes) => Results.Text(DayClock.Iso(makes.Now)));
        maker.MapGet("/makes/{id:guid}", async (Guid id, int? part, HttpContext context, MakeStore makes, ThingStore things) =>
            await makes.FindAsync(new(id)) is { } make ? Page.Of<VatDayPage>(("Make", make), ("Part", part), ("Chosen", MakerUnits.Of(context)), ("Now", makes.Now), ("Shelf", await things.AllAsync())) : Results.NotFound());
        maker.MapPost("/makes/{id:guid}/steps/{number:int}", TouchAsync);
        maker.MapPost("/makes/{id:guid}/undo", UndoAsync);
        maker.MapGet("/makes/{id:guid}/record", async (Guid id, HttpContext context, MakeStore makes, ThingStore things) =>
            await makes.FindAsync(new(id)) is { } make ? Page.Of<RecordPage>(("Make", make), ("Chosen", MakerUnits.Of(context)), ("Now", makes.Now), ("Shelf", await things.AllAsync())) : Results.NotFound());
        maker.MapGet("/makes/{id:guid}/steps/{number:int}", CorrectingAsync);
        maker.MapPost("/makes/{id:guid}/steps/{number:int}/correct", CorrectAsync);
        maker.MapGet("/makes/{id:guid}/wheels", (Guid id, HttpContext context, MakeStore makes) => ShowAsync<WheelsPage>(id, context, makes));
        maker.MapPost("/makes/{id:guid}/wheels", BearAsync);
        maker.MapGet("/makes/{id:guid}/labels", LabelsAsync);
        maker.MapGet("/wheels/{number:int}", async (int number, HttpContext context, MakeStore makes, ThingStore things) =>
            await makes.OfWheelAsync(number) is { } make ? Page.Of<WheelPage>(("Make", make), ("Number", number), ("Chosen", MakerUnits.Of(context)), ("Shelf", await things.AllAsync())) : Results.NotFound());
        maker.MapPost("/wheels/{number:int}/weight", WeighAsync);
        maker.MapGet("/wheels", (string? number) => Page.GoTo(int.TryParse(number, System.Globalization.NumberStyles.None, System.Globalization.CultureInfo.InvariantCulture, out var known) ? $"/wheels/{known}" : "/makes"));
    }

    private static async Task<IResult> ShowAsync<T>(Guid id, HttpContext context, MakeStore makes)
        where T : Microsoft.AspNetCore.Components.IComponent =>
        await makes.FindAsync(new(id)) is { } make ? Page.Of<T>(("Make", make), ("Chosen", MakerUnits.Of(context))) : Results.NotFound();

    private static async Task<IResult> TouchAsync(Guid id, int number, HttpContext context, IFormCollection form, MakeStore makes, ThingStore things)
    {
        var posted = new Posted(form);
        var units = MakerUnits.Typed(posted, context);
        var part = posted.Number("part");
        var outcome = await makes.ActAsync(new(id), posted.Id("sendId"), make =>
        {
            var problems = new List<Problem>();
            var when = DayClock.Read(posted.Text("when"), "when", makes.Now, problems) ?? DayClock.Read(posted.Text("at"), "when", makes.Now, problems) ?? makes.Now;
            if (posted.Text("do") == "start") return problems.Count > 0 ? Outcome.Fault<ImmutableArray<MakeEvent>>(problems) : make.Start(makes.Now, number, when, part, MarkForm.Used(posted));
            // Without such a step there is nothing to read; the make says why.
            var found = make.Find(number, part);
            var mark = found is null ? new StepMark(when, []) : MarkForm.Read(posted, found, when, units, problems);
            var outcome = make.Finish(makes.Now, number, mark, part);
            if (outcome.Ok && problems.Count == 0 && found is not null) problems.AddRange(MarkForm.Doubts(posted, found, mark));
            return problems.Count > 0 ? Outcome.Fault<ImmutableArray<MakeEvent>>(problems) : outcome;
        });
        if (outcome.Ok) return Page.GoTo(part is null ? $"/makes/{id}" : $"/makes/{id}?part={part}");
        return await makes.FindAsync(new(id)) is { } found
            ? Page.Again<VatDayPage>(("Make", found), ("Part", part), ("Chosen", units), ("Now", makes.Now), ("Shelf", await things.AllAsync()), ("Typed", posted), ("TypedStep", number), ("Faults", Page.Faults(units.Say(outcome.Problems), MarkForm.Labels)))
            : Results.NotFound();
    }

    private static async Task<IResult> UndoAsync(Guid id, IFormCollection form, MakeStore makes)
    {
        var posted = new Posted(form);
        var outcome = await makes.ActAsync(new(id), posted.Id("sendId"), make => make.Undo(makes.Now, posted.Number("sequence") ?? 0));
        var part = outcome.Ok ? outcome.Value.Log.FirstOrDefault(logged => logged.Sequence == posted.Number("sequence"))?.Event switch { StepDone done => done.Part, StepStarted started => started.Part, _ => null } : null;
        return outcome.Ok ? Page.GoTo(part is null ? $"/makes/{id}" : $"/makes/{id}?part={part}") : Page.Again<Plans.RefusedPage>(("Problems", outcome.Problems), ("Back", $"/makes/{id}"));
    }

    private static async Task<IResult> CorrectingAsync(Guid id, int number, int? part, HttpContext context, MakeStore makes, ThingStore things) =>
        await makes.FindAsync(new(id)) is { } make && make.Find(number, part) is { Done: not null }
            ? Page.Of<CorrectPage>(("Make", make), ("Number", number), ("Part", part), ("Chosen", MakerUnits.Of(context)), ("Shelf", await things.AllAsync()))
            : Results.NotFound();

    private static async Task<IResult> CorrectAsync(Guid id, int number, HttpContext context, IFormCollection form, MakeStore makes, ThingStore things)
    {
        var posted = new Posted(form);
        var units = MakerUnits.Typed(posted, context);
        var part = posted.Number("part");
        var outcome = await makes.ActAsync(new(id), posted.Id("sendId"), make =>
        {
            if (make.Find(number, part) is not { Done: { } stood } step) return Outcome.Fault<ImmutableArray<MakeEvent>>("step", "Nothing is written of this step yet.");
            var problems = new List<Problem>();
            // The form shows whole minutes; a time left as it was shown is the time that stood.
            var shown = DayClock.Write(stood.When, stood.When);
            var when = posted.Text("when") == shown ? stood.When : DayClock.Read(posted.Text("when"), "when", stood.When, problems) ?? stood.When;
            var mark = MarkForm.Read(posted, step, when, units, problems);
            var started = step.Started is { } rennet && posted.Text("started") != DayClock.Write(rennet) ? DayClock.Read(posted.Text("started"), "started", rennet, problems) : null;
            var corrected = make.Correct(makes.Now, number, mark, posted.Text("why"), part, started);
            if (corrected.Ok && problems.Count == 0) problems.AddRange(MarkForm.Doubts(posted, step, mark));
            return problems.Count > 0 ? Outcome.Fault<ImmutableArray<MakeEvent>>(problems) : corrected;
        });
        if (outcome.Ok) return Page.GoTo($"/makes/{id}/record");
        return await makes.FindAsync(new(id)) is { } found && found.Find(number, part) is { Done: not null }
            ? Page.Again<CorrectPage>(("Make", found), ("Number", number), ("Part", part), ("Chosen", units), ("Shelf", await things.AllAsync()), ("TypedForm", posted), ("Faults", Page.Faults(units.Say(outcome.Problems), MarkForm.Labels)))
            : Results.NotFound();
    }

    private static async Task<IResult> BearAsync(Guid id, HttpContext context, IFormCollection form, MakeStore makes)
    {
        var posted = new Posted(form);
        var units = MakerUnits.Typed(posted, context);
        var problems = new List<Problem>();
        var count = Math.Clamp(posted.Number("count") ?? 0, 0, Vat.MostWheels);
        ImmutableArray<BornWheel> wheels =
        [
            .. Enumerable.Range(1, count).Where(row => posted.Text($"name-{row}").Length > 0).Select(row => new BornWheel(
                new(Guid.CreateVersion7()),
                0,
                posted.Text($"name-{row}"),
                MakerUnits.Read(posted.Text($"mass-{row}"), $"mass-{row}", "Mass", problems) is { } mass ? units.ToCore("kg", mass) : null,
                posted.Text($"differs-{row}"),
                posted.Number($"part-{row}"))),
        ];
        var weighed = string.Join('+', Enumerable.Range(1, count).Select(row => posted.Text($"mass-{row}")));
        if (problems.Count == 0 && posted.Text("sure-mass") != weighed && (await makes.FindAsync(new(id)))?.WeightDoubt(wheels) is { } doubt)
            problems.Add(doubt with { Field = $"mass-{RowOf(int.Parse(doubt.Field, System.Globalization.CultureInfo.InvariantCulture))}" });
        var outcome = problems.Count > 0 ? Outcome.Fault<Make>(problems) : await makes.BearAsync(new(id), posted.Id("sendId"), wheels);
        if (outcome.Ok) return Page.GoTo($"/makes/{id}/wheels");
        return await makes.FindAsync(new(id)) is { } found
            ? Page.Again<WheelsPage>(("Make", found), ("Chosen", units), ("TypedForm", posted), ("Weighed", weighed), ("Faults", Page.Faults(units.Say(outcome.Problems))))
            : Results.NotFound();

        // A row without a name is no wheel: the third wheel may stand in the fifth row.
        int RowOf(int place) => Enumerable.Range(1, count).Where(row => posted.Text($"name-{row}").Length > 0).ElementAt(place - 1);
    }

    private static async Task<IResult> WeighAsync(int number, HttpContext context, IFormCollection form, MakeStore makes, ThingStore things)
    {
        if (await makes.OfWheelAsync(number) is not { } make) return Results.NotFound();
        var posted = new Posted(form);
        var units = MakerUnits.Typed(posted, context);
        var problems = new List<Problem>();
        double? mass = MakerUnits.Read(posted.Text("mass"), "mass", "Weight", problems) is { } typed ? units.ToCore("kg", typed) : null;
        if (problems.Count == 0 && posted.Text("sure-mass") != posted.Text("mass") && make.WeightDoubt([make.Wheels.First(wheel => wheel.Number == number) with { Kilograms = mass }]) is { } doubt)
            problems.Add(doubt with { Field = "mass" });
        var outcome = problems.Count > 0 ? Outcome.Fault<Make>(problems) : await makes.ActAsync(make.Id, posted.Id("sendId"), stands => stands.Weigh(makes.Now, number, mass, posted.Text("why")));
        return outcome.Ok
            ? Page.GoTo($"/wheels/{number}")
            : Page.Again<WheelPage>(("Make", make), ("Number", number), ("Chosen", units), ("Shelf", await things.AllAsync()), ("TypedForm", posted), ("Faults", Page.Faults(units.Say(outcome.Problems), WheelPage.Labels)));
    }

    private static async Task<IResult> LabelsAsync(Guid id, string? one, HttpContext context, MakeStore makes, PhoneAddress address) =>
        await makes.FindAsync(new(id)) is { } make ? Page.Of<LabelsPage>(("Make", make), ("Site", address.Now(context)), ("OneAPage", one is not null)) : Results.NotFound();
}
