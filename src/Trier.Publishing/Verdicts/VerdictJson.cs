using System.Buffers;
using System.Globalization;
using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Unicode;
using Trier.Trials.Verdicts;
using Trier.Trials.Verdicts.Findings;

namespace Trier.Publishing.Verdicts;

/// <summary>
/// Writes a verdict as JSON: numbers in full precision, members in a fixed order, so that the same verdict gives the same
/// bytes. Tasters stand by id, never by name. The members are described in docs/handbook/verdict-json.md.
/// </summary>
public static class VerdictJson
{
    private static readonly JsonWriterOptions Options = new()
    {
        Indented = true,
        NewLine = "\n",
        Encoder = JavaScriptEncoder.Create(UnicodeRanges.All),
    };

    /// <summary>The JSON text, ending in a line end.</summary>
    public static string Write(Verdict verdict)
    {
        ArgumentNullException.ThrowIfNull(verdict);
        var buffer = new ArrayBufferWriter<byte>();
        using (var json = new Utf8JsonWriter(buffer, Options))
        {
            json.WriteStartObject();
            Head(json, verdict);
            Counts(json, verdict);
            Tests(json, verdict);
            VerdictJsonStability.Write(json, verdict);
            VerdictJsonPeople.Write(json, verdict);
            Words(json, verdict);
            json.WriteEndObject();
        }

        return Encoding.UTF8.GetString(buffer.WrittenSpan) + "\n";
    }

    private static void Head(Utf8JsonWriter json, Verdict verdict)
    {
        var head = verdict.Record.Head;
        json.WriteString("methodsVersion", Verdict.MethodsVersion);
        json.WriteString("title", head.Title);
        json.WriteString("question", head.Question);
        json.WriteString("day", head.Day?.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture));
        json.WriteBoolean("invented", head.Invented);
        json.WriteString("seed", verdict.Seed.ToString(CultureInfo.InvariantCulture));
        json.WriteNumber("tasters", verdict.Panel.Tasters);
        json.WriteStartObject("panel");
        json.WriteNumber("placing", verdict.Panel.Placing);
        json.WriteNumber("complete", verdict.Panel.Complete);
        json.WriteString("main", verdict.Panel.Main == MainCount.CompleteBallots ? "complete" : "all");
        json.WriteNumber("ballots", verdict.Panel.Ballots);
        json.WriteNumber("voices", verdict.Panel.Voices);
        json.WriteNumber("withTies", verdict.Panel.WithTies);
        json.WriteEndObject();
        json.Objects("samples", verdict.Record.Samples.OrderBy(s => s.Id, StringComparer.Ordinal), sample =>
        {
            json.WriteString("id", sample.Id);
            json.WriteString("wheel", sample.RepeatOf is null ? sample.Name : verdict.Sample(sample.RepeatOf).Name);
            json.Texts("codes", sample.Code is null ? [] : [sample.Code]);
            json.WriteString("repeatOf", sample.RepeatOf);
        });
        json.Texts("leader", verdict.Leaders);
    }

    private static void Counts(Utf8JsonWriter json, Verdict verdict)
    {
        json.Objects("tally", verdict.Tally, line => Tally(json, line));
        json.Objects("tallyWithTheKey", verdict.TallyWithTheKey, line => Tally(json, line));
        json.Objects("headToHead", verdict.HeadToHead, pair =>
        {
            json.WriteString("id", pair.Id);
            json.WriteString("other", pair.Other);
            json.WriteNumber("above", pair.Above);
            json.WriteNumber("ties", pair.Ties);
            json.WriteNumber("below", pair.Below);
        });
        json.Objects("places", verdict.Places, place =>
        {
            json.WriteString("id", place.Id);
            json.Number("complete", place.Complete);
            json.Number("adjusted", place.Adjusted);
        });
        json.Objects("otherWeights", verdict.OtherWeights, tried =>
        {
            json.List("weights", tried.Weights, json.WriteNumberValue);
            json.Texts("leader", tried.Leaders);
            json.Objects("samples", tried.Lines, line =>
            {
                json.WriteString("id", line.Id);
                json.Number("points", line.Points);
                json.Number("average", line.Average);
            });
        });
    }

    private static void Tally(Utf8JsonWriter json, TallyLine line)
    {
        json.WriteString("id", line.Id);
        json.WriteNumber("firsts", line.Firsts);
        json.WriteNumber("firstsShared", line.FirstsShared);
        json.WriteNumber("lasts", line.Lasts);
        json.WriteNumber("lastsShared", line.LastsShared);
        json.WriteNumber("ballots", line.Ballots);
        json.Number("rankSum", line.RankSum);
        json.Number("averagePlace", line.AveragePlace);
        json.Number("placePoints", line.PlacePoints);
        json.Number("meanLiking", line.MeanLiking);
        json.WriteNumber("likings", line.Likings);
    }

    private static void Tests(Utf8JsonWriter json, Verdict verdict)
    {
        json.Object("friedman", verdict.Friedman, friedman =>
        {
            json.Number("statistic", friedman.Statistic);
            json.WriteNumber("degreesOfFreedom", friedman.DegreesOfFreedom);
            json.Chance(friedman.P);
            json.Number("chiSquareP", friedman.ChiSquareP);
            json.WriteNumber("ballots", friedman.Ballots);
        });

        json.Number("kendallW", verdict.Friedman?.KendallW);
        json.Number("meanRankCorrelation", verdict.Gate?.MeanCorrelation);
        json.Object("gate", verdict.Gate, gate =>
        {
            json.Number("statistic", gate.Statistic);
            json.Chance(gate.P);
            json.Number("leadLuck", gate.LeadLuck?.Value);
            json.Number("tieLuck", gate.TieLuck);
        });

        json.WriteNumber("level", verdict.Level.Level);
        json.Texts("shownOver", verdict.Level.ShownOver);
        json.Texts("open", verdict.Level.Open);
        json.Objects("pairs", verdict.Pairs, pair =>
        {
            json.WriteString("better", pair.Better);
            json.WriteString("worse", pair.Worse);
            json.WriteBoolean("shown", pair.Shown);
            json.Number("pValue", pair.P);
            json.WriteNumber("divisor", pair.Divisor);
            json.Number("gap", pair.Gap);
            json.Between("gapInterval", pair.GapInterval);
            json.Number("preferring", pair.Preferring);
            json.WriteNumber("voices", pair.Voices);
        });
        json.Object("kemeny", verdict.Kemeny, kemeny =>
        {
            json.WriteNumber("optima", kemeny.Optima);
            json.Number("distance", kemeny.Distance);
            json.Number("agreement", kemeny.Agreement);
            json.List("orders", kemeny.Orders, order =>
            {
                json.WriteStartArray();
                foreach (var id in order) json.WriteStringValue(id);
                json.WriteEndArray();
            });
        });
    }

    private static void Words(Utf8JsonWriter json, Verdict verdict)
    {
        json.Texts("sentences", verdict.Words.Top);
        json.Texts("headlines", verdict.Words.Headlines);
        json.Texts("howSure", verdict.Words.HowSureUnfolded);
        json.Texts("yardstickSentences", verdict.Words.Yardsticks);
        json.Texts("whatTipsIt", verdict.Words.Tips);
        json.Texts("disagreement", verdict.Words.Disagreement);
        json.Texts("answers", verdict.Words.Answers);
        json.Texts("serving", verdict.Words.Serving);
        json.Texts("next", verdict.Words.Next);
        json.Texts("limits", verdict.Words.Limits);
        json.Texts("cautions", verdict.Cautions);
    }
}
