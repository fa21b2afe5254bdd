using System.Text.Json;
using Trier.Trials.Verdicts;
using Trier.Trials.Verdicts.Findings;

namespace Trier.Publishing.Verdicts;

/// <summary>The part of the JSON about the crowd: chances, camps, loved and hated, what the serving did.</summary>
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
                json.Number("milderLiking", wheel.MilderLiking);
                json.Number("strongerLiking", wheel.StrongerLiking);
            });
        });
        json.Object("twoTastes", verdict.Deep?.Tastes, tastes =>
        {
            json.Number("likelihoodRatio", tastes.LikelihoodRatio);
            json.Chance(tastes.P);
            json.Number("critical", tastes.Critical);
            json.WriteBoolean("parted", tastes.Parted);
            json.Objects("classes", tastes.Classes, one =>
            {
                json.Number("share", one.Share);
                json.Objects("samples", one.Wheels, wheel =>
                {
                    json.WriteString("id", wheel.Id);
                    json.Number("first", wheel.First);
                });
            });
        });
        json.Object("lovedAndHated", verdict.Deep?.Loved, loved =>
        {
            json.Number("measure", loved.Measure);
            json.Texts("samples", loved.Ids);
            json.Chance(loved.P);
            json.WriteBoolean("marked", loved.Marked);
        });
        Serving(json, verdict);
        VerdictJsonAsked.Write(json, verdict);
    }

    private static void Serving(Utf8JsonWriter json, Verdict verdict)
    {
        json.Object("servingOrder", verdict.Deep?.Order, order =>
        {
            json.WriteString("measure", order.ByLiking ? "liking" : "place");
            json.Objects("positions", order.Positions, position =>
            {
                json.WriteNumber("answers", position.Answers);
                json.Number("mean", position.Mean);
            });
            json.Chance(order.P);
            json.Number("first", order.First);
            json.Between("firstInterval", order.FirstInterval);
            json.Number("firstPValue", order.FirstP.Value);
            json.Texts("best", order.Best);
            json.Texts("bestWithoutPosition", order.BestWithout);
        });
        json.Object("sittings", verdict.Deep?.Sittings, sittings =>
        {
            json.Chance(sittings.P);
            json.WriteBoolean("apart", sittings.Apart);
            json.Objects("each", sittings.Sittings, line =>
            {
                json.WriteNumber("sitting", line.Number);
                json.WriteNumber("ballots", line.Ballots);
                json.Texts("leader", line.Leaders);
            });
        });
        json.Number("smallestPreferenceShown", verdict.Deep?.Reach?.SmallestPreference);
    }

    private static void Chance(Utf8JsonWriter json, WheelChance wheel)
    {
        json.WriteString("id", wheel.Id);
        json.Number("chance", wheel.Chance);
        json.Number("error", wheel.Error);
        json.Number("favouriteShare", wheel.FavouriteShare);
        json.Between("logWorth", wheel.LogWorth);
    }
}
