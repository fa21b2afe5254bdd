using System.Globalization;
using Trier.Commands.Verdicts;
using Trier.Trials.Plans;
using Trier.Trials.Plans.Differences;
using Trier.Trials.Plans.Panels;

namespace Trier.Commands.Plans;

/// <summary>What planning says as plain text, at most 80 signs wide, in the manner of the verdict's page.</summary>
internal static class PlanText
{
    private const int NameWidth = 18;
    private const int Cell = 14;
    private const int MostColumns = 4;
    private const int CurveWidth = 20;

    public static string Write(PlanReview review)
    {
        var page = new TerminalText();
        page.Line(string.Join("     ", new[] { review.Outline.Title, review.Outline.Day?.ToString("dd/MM/yyyy", CultureInfo.InvariantCulture) ?? "", review.Outline.Invented ? "an invented trial" : "" }.Where(text => text.Length > 0)));
        page.Gap();
        foreach (var sentence in review.Question) page.Paragraph(sentence);
        if (review.Table is { } table)
        {
            page.Line(DifferenceWords.Heading(table));
            page.Gap();
            Table(page, table);
            page.Section("Cannot be told apart", table.Cords.Select(cord => $"({cord.Number.ToString(CultureInfo.InvariantCulture)}) {DifferenceWords.Of(table, cord)}").Concat(DifferenceWords.Knots(table)));
            page.Section("What can be said", DifferenceWords.CanBeSaid(table));
        }

        page.Section("What would mend it", review.Repairs.Select(repair => $"{(repair.Least ? "* " : "")}{repair.Deed}. {repair.Gain}{(repair.Gain.Length > 0 ? " " : "")}{repair.Price}").Concat(review.Repairs.Any(repair => repair.Least) ? ["* the least change"] : []));
        if (review.Outline.Wheels.Length > 1) page.Section("How many tasters", (review.Panels is { } found ? PanelWords.All(review.Outline, found) : [$"Panels are simulated for up to {PanelPlanning.MostWheels.ToString(CultureInfo.InvariantCulture)} wheels."]).Prepend(PanelWords.Smallest(review.Outline)));
        if (review.Panels is { } panels)
        {
            Curves(page, review, panels);
            Options(page, review, panels);
        }

        page.Section("Grams and dates", review.AmountsInWords.Concat(review.Makes.Select(make => $"{make.Make.ToString("dd/MM/yyyy", CultureInfo.InvariantCulture)} {make.Wheel}, {make.AgeDays.ToString(CultureInfo.InvariantCulture)} days old on the day")));
        if (review.Panels is { } method) page.Paragraph($"{PanelWords.Method(method)} Seed {PanelPlanning.Seed.Value.ToString(CultureInfo.InvariantCulture)}. In full: --json.", indent: 0);
        return page.ToString();
    }

    /// <summary>Wheels against what differs, some columns at a time; what differs from the wheel compared with stands in square brackets.</summary>
    private static void Table(TerminalText page, DifferenceTable table)
    {
        for (var from = 0; from < table.Columns.Length; from += MostColumns)
        {
            var columns = Enumerable.Range(from, Math.Min(MostColumns, table.Columns.Length - from)).ToList();
            page.Line("wheel".PadRight(NameWidth) + string.Concat(columns.Select(column => TerminalText.Fit(table.Columns[column].Name, Cell) + " ")));
            for (var wheel = 0; wheel < table.Wheels.Length; wheel++)
            {
                var row = wheel;
                page.Line(TerminalText.Fit(table.Wheels[row].Name, NameWidth - 1) + " " + string.Concat(columns.Select(column => Value(table, column, row) + " ")));
            }

            var cords = columns.Select(column => string.Join(' ', table.Cords.Where(cord => cord.Columns.Contains(column)).Select(cord => $"({cord.Number.ToString(CultureInfo.InvariantCulture)})"))).ToList();
            if (cords.Any(cord => cord.Length > 0)) page.Line("tied together".PadRight(NameWidth) + string.Concat(cords.Select(cord => TerminalText.Fit(cord, Cell) + " ")));
            page.Gap();
        }

        page.Line($"[ ] differs from {table.Wheels[table.Reference].Name}; ages from two weeks on, weights from a fifth on.");
        page.Gap();
    }

    private static string Value(DifferenceTable table, int column, int wheel)
    {
        var value = table.Columns[column].Values[wheel] ?? "not noted";
        return TerminalText.Fit(table.Differs(column, wheel) ? $"[{TerminalText.Cut(value, Cell - 2)}]" : value, Cell);
    }

    private static void Curves(TerminalText page, PlanReview review, PanelFindings panels)
    {
        // Three stand beside each other; the one worth finding is always among them.
        var curves = panels.Curves.OrderBy(curve => Math.Abs(curve.Preference - review.Outline.Preference)).Take(3).OrderBy(curve => curve.Preference).ToList();
        page.Line("Of 100 tastings, ± the drawing’s error: the right leader alone, and shown ahead");
        page.Line("".PadRight(NameWidth) + string.Concat(curves.Select(curve => TerminalText.Fit($"if {PanelWords.Ratio(curve.Preference)}", CurveWidth))));
        page.Line("tasters".PadRight(NameWidth) + string.Concat(curves.Select(_ => TerminalText.Fit("right   shown", CurveWidth))));
        for (var i = 0; i < curves[0].Points.Length; i++)
        {
            var at = i;
            var tasters = curves[0].Points[at].Tasters;
            var marked = tasters == review.Outline.Tasters ? " *" : "";
            page.Line($"{tasters.ToString(CultureInfo.InvariantCulture),5}{marked}".PadRight(NameWidth) + string.Concat(curves.Select(curve => TerminalText.Fit($"{Whole(curve.Points[at].Right.Share),5}   {PanelWords.Share(curve.Points[at].Shown)}", CurveWidth))));
        }

        page.Line("  * as many as are expected");
        page.Gap();
    }

    private static void Options(TerminalText page, PlanReview review, PanelFindings panels)
    {
        if (panels.Options.Length < 2) return;
        page.Section("Plans compared", panels.Options.Select(option =>
        {
            var here = option.Points.First(point => point.Tasters == review.Outline.Tasters);
            return $"{option.Option.Name} ({option.Option.What}; vats to make: {option.Option.VatDays.ToString(CultureInfo.InvariantCulture)}): right {Whole(here.Right.Share).Trim()}, shown {Whole(here.Shown.Share).Trim()} of 100. {option.Option.Says}";
        }));
    }

    private static string Whole(double share) => Math.Round(100 * share).ToString("0", CultureInfo.InvariantCulture).PadLeft(3);
}
