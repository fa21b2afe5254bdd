using System.CommandLine;
using Trier.Commands.Verdicts;
using Trier.Publishing.Plans;
using Trier.Trials.Plans;
using Trier.Trials.Plans.Panels;

namespace Trier.Commands.Plans;

/// <summary><c>trier plan FILE</c>: wheels and tasters in, what such a tasting can tell out, as a page of text or as JSON.</summary>
internal static class PlanCommand
{
    public static Command Create()
    {
        var file = new Argument<string>("FILE") { Description = "The plan: JSON, shown in docs/handbook/plan-json.md; - reads standard input." };
        var json = new Option<bool>("--json") { Description = "Write what was found as JSON." };
        var panels = new Option<int>("--panels") { Description = "Simulated panels for each figure; more are slower and nearer.", DefaultValueFactory = _ => PanelPlanning.UsualPanels };
        panels.Validators.Add(found =>
        {
            if (found.GetValueOrDefault<int>() is < 100 or > 100_000) found.AddError("--panels: between 100 and 100000.");
        });
        var command = new Command("plan", "Say what a planned tasting could tell, and how many tasters it takes.") { file, json, panels };
        command.SetAction((parsed, cancellation) => RunAsync(parsed.GetValue(file)!, parsed.GetValue(json), parsed.GetValue(panels), cancellation));
        return command;
    }

    private static async Task<int> RunAsync(string file, bool json, int panels, CancellationToken cancellation)
    {
        var outline = (await BallotInput.ReadAsync(file, cancellation)).Then(bytes => PlanJson.Read(bytes));
        if (!outline.TryGet(out var planned))
        {
            foreach (var problem in outline.Problems) await Console.Error.WriteLineAsync(problem.Sentence);
            await Console.Error.WriteLineAsync("Nothing was planned.");
            return CommandLine.WrongInput;
        }

        var review = PlanReview.Of(planned).Deepen(panels, null, cancellation);
        try
        {
            await Console.Out.WriteAsync(json ? PlanReviewJson.Write(review) : PlanText.Write(review));
            await Console.Out.FlushAsync(cancellation);
        }
        catch (IOException)
        {
            // Whoever read the other end of the pipe has seen enough.
        }

        return CommandLine.Done;
    }
}
