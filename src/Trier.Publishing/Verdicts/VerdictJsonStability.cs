using System.Text.Json;
using Trier.Trials.Verdicts;
using Trier.Trials.Verdicts.Findings;

namespace Trier.Publishing.Verdicts;

/// <summary>The part of the JSON about repeats, variants and the fewest ballots.</summary>
internal static class VerdictJsonStability
{
    public static void Write(Utf8JsonWriter json, Verdict verdict)
    {
        json.Objects("repeats", verdict.Repeats, repeat =>
        {
            json.WriteString("check", repeat.Check);
            json.WriteString("counts", repeat.Counts);
            json.WriteNumber("ballots", repeat.Ballots);
            json.Number("sumOfDistances", repeat.SumOfDistances);
            json.Number("meanDistance", repeat.MeanDistance);
            json.Number("meanByLuck", repeat.MeanByLuck);
            json.Number("pValue", repeat.P);
            json.WriteNumber("nextToEachOther", repeat.NextToEachOther);
            json.Number("nextByLuck", repeat.NextByLuck);
            json.Number("nextPValue", repeat.NextP);
            json.Number("yardstick", repeat.Yardstick);
            json.Number("meanLikingGap", repeat.MeanLikingGap);
        });
        json.Objects("sameRecipe", verdict.SameRecipe, same =>
        {
            json.WriteString("recipe", same.Recipe);
            json.WriteString("better", same.Better);
            json.WriteString("worse", same.Worse);
            json.Number("gap", same.Gap);
            json.Between("gapInterval", same.Interval);
            json.WriteBoolean("oneMake", same.OneMake);
        });
        json.Objects("variants", verdict.Variants, variant =>
        {
            json.WriteString("kind", JsonNamingPolicy.CamelCase.ConvertName(variant.Kind.ToString()));
            json.WriteString("subject", variant.Subject);
            json.Texts("leader", variant.Leaders);
            json.Texts("mostFirsts", variant.MostFirsts);
            if (variant.Level is { } level) json.WriteNumber("level", level);
            else json.WriteNull("level");
            json.WriteString("effect", variant.Effect switch
            {
                VariantEffect.Same => "leaderSame",
                VariantEffect.LevelChanges => "levelChanges",
                _ => "leaderChanges",
            });
        });
        json.Object("steadiness", verdict.Deep?.Steady, steady =>
        {
            json.WriteNumber("draws", steady.Draws);
            json.Objects("samples", steady.Wheels, wheel =>
            {
                json.WriteString("id", wheel.Id);
                json.Number("leads", wheel.Leads);
                json.Number("error", wheel.Error);
                json.Between("middle", wheel.Average);
            });
        });
        json.Object("fewestBallots", verdict.Fewest, fewest =>
        {
            json.Number("toTie", fewest.ToTie);
            json.Number("toPass", fewest.ToPass);
            json.Texts("rivals", fewest.Rivals);
            json.WriteBoolean("atLeast", fewest.AtLeast);
        });
    }
}
