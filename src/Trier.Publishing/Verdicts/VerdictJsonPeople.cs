using System.Text.Json;
using Trier.Trials.Verdicts;
using Trier.Trials.Verdicts.Findings;

namespace Trier.Publishing.Verdicts;

/// <summary>The part of the JSON about the crowd: chances, camps, loved and hated, salt.</summary>
internal static class VerdictJsonPeople
{
    public static void Write(Utf8JsonWriter json, Verdict verdict)
    {
        json.Object("chances", verdict.Deep?.Chances, chances =>
        {
            json.WriteString("model", "Plackett-Luce");
            json.Number("priorScale", chances.PriorScale);
            json.Number("effectiveDraws", chances.EffectiveSize);
            json.Number("rHat", chances.RHat);
            json.Objects("samples", chances.Wheels, wheel => Chance(json, wheel));
            json.Objects("camps", chances.InCamps, camp =>
            {
                json.WriteString("taste", JsonNamingPolicy.CamelCase.ConvertName(camp.Taste.ToString()));
                json.WriteNumber("voices", camp.Voices);
                json.Objects("samples", camp.Wheels, wheel => Chance(json, wheel));
            });
        });
        json.Object("camps", verdict.Deep?.Camps, camps =>
        {
            json.WriteNumber("milder", camps.Milder);
            json.WriteNumber("stronger", camps.Stronger);
            json.Number("statistic", camps.Statistic);
            json.Chance(camps.P);
            json.Number("ways", camps.Ways);
            json.WriteBoolean("parted", camps.Parted);
            json.Objects("samples", camps.Wheels, wheel =>
            {
                json.WriteString("id", wheel.Id);
                json.Number("milder", wheel.Milder);
                json.Number("stronger", wheel.Stronger);
                json.Number("pValue", wheel.P);
                json.WriteBoolean("shown", wheel.Shown);
            });
        });
        json.Object("lovedAndHated", verdict.Deep?.Loved, loved =>
        {
            json.Number("measure", loved.Measure);
            json.Texts("samples", loved.Ids);
            json.Chance(loved.P);
            json.WriteBoolean("marked", loved.Marked);
        });
        json.Objects("salt", verdict.Salt, salt =>
        {
            json.WriteString("id", salt.Id);
            json.Object("tooLittle", salt.TooLittle, group => Group(json, group));
            json.Object("justRight", salt.JustRight, group => Group(json, group));
            json.Object("tooMuch", salt.TooMuch, group => Group(json, group));
        });
    }

    private static void Chance(Utf8JsonWriter json, WheelChance wheel)
    {
        json.WriteString("id", wheel.Id);
        json.Number("chance", wheel.Chance);
        json.Number("error", wheel.Error);
        json.Number("favouriteShare", wheel.FavouriteShare);
        json.Between("logWorth", wheel.LogWorth);
    }

    private static void Group(Utf8JsonWriter json, SaltGroup group)
    {
        json.WriteNumber("count", group.Count);
        json.Number("meanLiking", group.MeanLiking);
        json.Number("drop", group.Drop);
    }
}
