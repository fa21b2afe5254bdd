using System.Buffers;
using System.Globalization;
using System.Text.Encodings.Web;
using System.Text.Json;
using Trier.Statistics.Power;
using Trier.Trials.Plans;
using Trier.Trials.Plans.Differences;
using Trier.Trials.Plans.Panels;

namespace Trier.Publishing.Plans;

/// <summary>Writes what planning says as JSON; docs/handbook/plan-json.md lists its members.</summary>
public static class PlanReviewJson
{
    private static readonly JsonWriterOptions Readable = new() { Indented = true, Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping };

    /// <summary>Writes a review, indented, ending with a line feed.</summary>
    /// <param name="review">The review.</param>
    public static string Write(PlanReview review)
    {
        ArgumentNullException.ThrowIfNull(review);
        var buffer = new ArrayBufferWriter<byte>();
        using (var json = new Utf8JsonWriter(buffer, Readable))
        {
            json.WriteStartObject();
            json.WriteNumber("trierPlanReview", 1);
            json.WriteString("title", review.Outline.Title);
            json.WriteBoolean("invented", review.Outline.Invented);
            Texts(json, "question", review.Question);
            if (review.Table is { } table) Table(json, table);
            Repairs(json, review);
            Amounts(json, review);
            json.WriteNumber("tasters", review.Outline.Tasters);
            json.WriteNumber("preference", review.Outline.Preference);
            if (review.Outline.Wheels.Length > 1) json.WriteNumber("smallestPanel", PanelPlanning.SmallestPanel(review.Outline.Wheels.Length));
            if (review.Panels is { } panels) Panels(json, review, panels);
            json.WriteEndObject();
        }

        return System.Text.Encoding.UTF8.GetString(buffer.WrittenSpan) + "\n";
    }

    private static void Table(Utf8JsonWriter json, DifferenceTable table)
    {
        json.WriteStartObject("differences");
        json.WriteString("heading", DifferenceWords.Heading(table));
        json.WriteString("comparedWith", table.Wheels[table.Reference].Name);
        json.WriteStartArray("columns");
        for (var column = 0; column < table.Columns.Length; column++)
        {
            json.WriteStartObject();
            json.WriteString("name", table.Columns[column].Name);
            json.WriteStartArray("values");
            for (var wheel = 0; wheel < table.Wheels.Length; wheel++)
            {
                json.WriteStartObject();
                json.WriteString("wheel", table.Wheels[wheel].Name);
                json.WriteString("value", table.Columns[column].Values[wheel]);
                json.WriteString("level", table.Columns[column].Levels[wheel]);
                json.WriteBoolean("differs", table.Differs(column, wheel));
                json.WriteEndObject();
            }

            json.WriteEndArray();
            if (table.Told.FirstOrDefault(told => told.Column == column) is { } found)
            {
                json.WriteString("fromTheRecipe", found.Telling.ToString().ToLowerInvariant());
                if (found.Inflation is { } inflation && double.IsFinite(inflation)) json.WriteNumber("varianceInflation", inflation);
            }

            json.WriteEndObject();
        }

        json.WriteEndArray();
        Texts(json, "cords", table.Cords.Select(cord => DifferenceWords.Of(table, cord)));
        Texts(json, "cannotBeToldApart", DifferenceWords.Knots(table));
        Texts(json, "canBeSaid", DifferenceWords.CanBeSaid(table));
        json.WriteEndObject();
    }

    private static void Repairs(Utf8JsonWriter json, PlanReview review)
    {
        json.WriteStartArray("repairs");
        foreach (var repair in review.Repairs)
        {
            json.WriteStartObject();
            json.WriteString("deed", repair.Deed);
            json.WriteString("gain", repair.Gain);
            json.WriteString("price", repair.Price);
            json.WriteNumber("loosens", repair.Loosens);
            json.WriteBoolean("least", repair.Least);
            json.WriteEndObject();
        }

        json.WriteEndArray();
    }

    private static void Amounts(Utf8JsonWriter json, PlanReview review)
    {
        json.WriteStartObject("amounts");
        json.WriteNumber("gramsASample", Math.Round(review.Amounts.GramsASample, 1));
        json.WriteNumber("gramsAWheel", Math.Round(review.Amounts.GramsAWheel, 1));
        if (review.Amounts.GramsTwice is { } twice) json.WriteNumber("gramsOfTheWheelServedTwice", Math.Round(twice, 1));
        if (review.Amounts.WheelKilograms is { } kilograms) json.WriteNumber("smallestWheelKilograms", Math.Round(kilograms, 2));
        Texts(json, "inWords", review.AmountsInWords);
        json.WriteStartArray("makes");
        foreach (var make in review.Makes)
        {
            json.WriteStartObject();
            json.WriteString("wheel", make.Wheel);
            json.WriteString("recipe", make.Recipe);
            json.WriteString("make", make.Make.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture));
            json.WriteNumber("ageDays", make.AgeDays);
            json.WriteEndObject();
        }

        json.WriteEndArray();
        json.WriteEndObject();
    }

    private static void Panels(Utf8JsonWriter json, PlanReview review, PanelFindings panels)
    {
        json.WriteStartObject("panels");
        json.WriteNumber("panelsAFigure", panels.Panels);
        json.WriteNumber("seed", PanelPlanning.Seed.Value);
        Texts(json, "inWords", PanelWords.All(review.Outline, panels));
        json.WriteStartArray("curves");
        foreach (var curve in panels.Curves)
        {
            json.WriteStartObject();
            json.WriteNumber("preference", curve.Preference);
            Points(json, curve.Points);
            json.WriteEndObject();
        }

        json.WriteEndArray();
        json.WriteStartArray("plansCompared");
        foreach (var (option, points) in panels.Options)
        {
            json.WriteStartObject();
            json.WriteString("name", option.Name);
            json.WriteString("onThePlate", option.What);
            json.WriteNumber("vatsToMake", option.VatDays);
            json.WriteString("says", option.Says);
            Points(json, points);
            json.WriteEndObject();
        }

        json.WriteEndArray();
        if (panels.SmallestPreference is { } smallest) json.WriteNumber("smallestPreferenceShown8In10", Math.Round(smallest, 2));
        json.WriteEndObject();
    }

    private static void Points(Utf8JsonWriter json, IEnumerable<PanelPoint> points)
    {
        json.WriteStartArray("points");
        foreach (var point in points)
        {
            json.WriteStartObject();
            json.WriteNumber("tasters", point.Tasters);
            Share(json, "right", point.Right);
            Share(json, "shown", point.Shown);
            Share(json, "wrongShown", point.Wrong);
            json.WriteEndObject();
        }

        json.WriteEndArray();
    }

    private static void Share(Utf8JsonWriter json, string name, Simulated found)
    {
        json.WriteNumber(name, found.Share);
        json.WriteNumber(name + "Error", Math.Round(found.Error, 5));
    }

    private static void Texts(Utf8JsonWriter json, string name, IEnumerable<string> texts)
    {
        json.WriteStartArray(name);
        foreach (var text in texts) json.WriteStringValue(text);
        json.WriteEndArray();
    }
}
