using System.Collections.Immutable;
using System.Globalization;
using System.Text.Json;
using Trier.Trials.Common;
using Trier.Trials.Makes;
using Trier.Trials.Plans;
using Trier.Trials.Tastings.Steps;

namespace Trier.Publishing.Plans;

/// <summary>Reads the outline of a trial from JSON; its members stand in docs/handbook/plan-json.md. All faults are told at once, each by its field; no member is taken that is not known.</summary>
public static class PlanJson
{
    /// <summary>The largest file read, bytes.</summary>
    public const int LargestFile = 1_000_000;

    private const string Mark = "trierPlan";
    private const int Version = 1;
    private static readonly string[] Members = [Mark, "title", "question", "rule", "points", "juniorsCount", "day", "ageDays", "tasters", "preference", "servedTwice", "invented", "wheels"];
    private static readonly string[] WheelMembers = ["name", "recipe", "made", "milk", "heatTreatment", "coagulant", "additives", "size", "rind", "cave", "notes", "facts"];

    /// <summary>Reads an outline.</summary>
    /// <param name="json">The file's bytes, UTF-8.</param>
    /// <returns>The outline, or every fault.</returns>
    public static Outcome<TrialOutline> Read(ReadOnlyMemory<byte> json)
    {
        if (json.Length > LargestFile) return Outcome.Fault<TrialOutline>("file", "The file is larger than 1 MB: a plan is a page of text.");
        try
        {
            using var document = JsonDocument.Parse(json, new JsonDocumentOptions { AllowTrailingCommas = true, CommentHandling = JsonCommentHandling.Skip });
            return Read(document.RootElement);
        }
        catch (JsonException fault)
        {
            return Outcome.Fault<TrialOutline>("file", $"This is not JSON: look at line {((fault.LineNumber ?? 0) + 1).ToString(CultureInfo.InvariantCulture)}. docs/handbook/plan-json.md shows a plan.");
        }
    }

    private static Outcome<TrialOutline> Read(JsonElement root)
    {
        if (root.ValueKind != JsonValueKind.Object) return Outcome.Fault<TrialOutline>("file", "A plan is an object in curly brackets; docs/handbook/plan-json.md shows one.");
        var fields = new Fields(root, "", Members);
        if (fields.Number(Mark) is not Version) fields.Fault(Mark, $"“{Mark}” must be {Version.ToString(CultureInfo.InvariantCulture)}, the version of this format.");
        var title = fields.Text("title") ?? "A plan";
        var question = fields.Text("question");
        if (string.IsNullOrWhiteSpace(question)) fields.Fault("question", "Write the one question the tasting should answer, as “question”.");
        var aims = PlanAims.Create(fields.Whole("ageDays"), fields.Whole("tasters"), fields.Number("preference"));
        foreach (var problem in aims.Problems) fields.Fault(problem.Field == "age" ? "ageDays" : problem.Field, problem.Sentence);
        var day = fields.Day("day");
        var wheels = Wheels(fields);
        var rule = Rule(fields, wheels.Length);
        var twice = fields.Text("servedTwice");
        var label = twice is null ? null : wheels.FirstOrDefault(wheel => string.Equals(wheel.Name, twice, StringComparison.OrdinalIgnoreCase))?.Label;
        if (twice is not null && label is null) fields.Fault("servedTwice", $"“servedTwice” names {twice}, and no wheel is called that.");
        var (juniors, invented) = (fields.Flag("juniorsCount") ?? true, fields.Flag("invented") ?? false);
        return fields.Faults.Count > 0
            ? Outcome.Fault<TrialOutline>(fields.Faults)
            : Outcome.Of(new TrialOutline(title, question!, rule, juniors, day, aims.Value.Tasters ?? PlanAims.UsualTasters, aims.Value.Preference ?? PlanAims.UsualPreference, aims.Value.AgeDays, label, wheels) { Invented = invented });
    }

    private static CountingRule Rule(Fields fields, int wheels)
    {
        var name = fields.Text("rule") ?? "average place";
        var points = fields.Numbers("points");
        switch (name)
        {
            case "average place": return new CountingRule.AveragePlace();
            case "firsts": return new CountingRule.Firsts();
            case "average liking": return new CountingRule.MeanLiking();
            case "place points":
                if (points.Length != wheels) fields.Fault("points", "“points” needs a number for each wheel, first place first.");
                else if (points.Zip(points.Skip(1)).Any(pair => pair.First < pair.Second) || points[0] == points[^1]) fields.Fault("points", "Place points fall from the first place to the last.");
                if (CountingRule.PlacePoints.Fault(points) is not { } fault) return new CountingRule.PlacePoints(points);
                fields.Fault("points", fault);
                return CountingRule.Default;
            default:
                fields.Fault("rule", $"“rule” is “{name}”; it is one of “average place”, “firsts”, “place points”, “average liking”.");
                return CountingRule.Default;
        }
    }

    private static ImmutableArray<PlannedWheel> Wheels(Fields fields)
    {
        if (fields.List("wheels") is not { } list) return [];
        if (list.Count is < 2 or > DraftTasting.MostWheels) fields.Fault("wheels", $"A plan has 2 to {DraftTasting.MostWheels.ToString(CultureInfo.InvariantCulture)} wheels; this one has {list.Count.ToString(CultureInfo.InvariantCulture)}.");
        var wheels = ImmutableArray.CreateBuilder<PlannedWheel>();
        for (var i = 0; i < list.Count; i++)
        {
            var path = $"wheels[{(i + 1).ToString(CultureInfo.InvariantCulture)}]";
            if (list[i].ValueKind != JsonValueKind.Object)
            {
                fields.Fault(path, $"{path} must be an object in curly brackets, with its “name”.");
                continue;
            }

            var one = new Fields(list[i], path + ".", WheelMembers, fields.Faults);
            var name = one.Text("name")?.Trim();
            if (string.IsNullOrEmpty(name)) one.Fault("name", $"“{path}.name” is missing: write what the wheel is called.");
            else if (wheels.Any(wheel => string.Equals(wheel.Name, name, StringComparison.OrdinalIgnoreCase))) one.Fault("name", $"Two wheels are called {name}: give each a name of its own.");
            var facts = new List<KeyValuePair<string, string?>>
            {
                new(WheelFacts.RecipeFact, one.Text("recipe")),
                new(WheelFacts.MadeFact, one.Day("made")?.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture)),
                new(WheelFacts.MilkFact, one.Text("milk")),
                new(WheelFacts.HeatTreatmentFact, one.Text("heatTreatment")),
                new(WheelFacts.CoagulantFact, one.Text("coagulant")),
                new(WheelFacts.AdditivesFact, one.Text("additives")),
                new(WheelFacts.SizeFact, one.Text("size")),
                new(WheelFacts.RindFact, one.Text("rind")),
                new(WheelFacts.CaveFact, one.Text("cave")),
                new(WheelFacts.NotesFact, one.Text("notes")),
            };
            facts.AddRange(one.Named("facts"));
            wheels.Add(new PlannedWheel($"W{(i + 1).ToString(CultureInfo.InvariantCulture)}", name ?? path, WheelFacts.Of(facts), null));
        }

        return wheels.ToImmutable();
    }
}
