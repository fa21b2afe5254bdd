using System.Globalization;
using Trier.Publishing.Drawings;

namespace Trier.Publishing.Charts;

/// <summary>One wheel of the forest.</summary>
/// <param name="Name">The wheel's name.</param>
/// <param name="Look">Its mark.</param>
/// <param name="Behind">How far it lies behind the first wheel of the list, in the unit of the scale.</param>
/// <param name="Low">Lower end of the interval; equal to <paramref name="High"/> where there is none.</param>
/// <param name="High">Upper end of the interval.</param>
/// <param name="Words">Words at the right: "about 8 in 10"; empty where there are none.</param>
public sealed record ForestRow(string Name, WheelLook Look, double Behind, double Low, double High, string Words);

/// <summary>A length drawn under the forest, to hold gaps against.</summary>
/// <param name="Length">How long, in the unit of the scale.</param>
/// <param name="Words">What it is.</param>
public sealed record ForestRuler(double Length, string Words);

/// <summary>How far each wheel lies behind the leader.</summary>
/// <param name="Rows">The wheels, best first.</param>
/// <param name="Rulers">Lengths to hold the gaps against.</param>
/// <param name="Scale">Words under the scale.</param>
/// <param name="Column">Words over the right column; empty where there is none.</param>
/// <param name="Title">What it shows.</param>
/// <param name="Description">What it says.</param>
public sealed record ForestData(IReadOnlyList<ForestRow> Rows, IReadOnlyList<ForestRuler> Rulers, string Scale, string Column, string Title, string Description);

/// <summary>The forest: a mark at each wheel's gap behind the leader, a thick line for its interval, rulers below to hold the gaps against.</summary>
public static class ForestChart
{
    private const double Type = 16;
    private const double Small = 14.5;

    /// <summary>Draws it.</summary>
    /// <param name="data">The wheels and rulers.</param>
    /// <param name="width">Units across.</param>
    /// <param name="pitch">Units from row to row.</param>
    public static Drawing Draw(ForestData data, double width, double pitch = 40)
    {
        ArgumentNullException.ThrowIfNull(data);
        var canvas = new Canvas();
        var narrow = width < 600;
        var names = data.Rows.Max(row => TextRuler.Width(row.Name, Type, Face.SansStrong)) + 30;
        var words = data.Rows.Select(row => TextRuler.Width(row.Words, Type)).Append(TextRuler.Width(data.Column, Small)).Max();
        var left = narrow ? 14 : Math.Min(names, width * 0.3) + 14;
        var right = narrow || words == 0 ? width - 16 : width - words - 26;
        var low = Math.Floor(Math.Min(0, data.Rows.Min(row => row.Low)) * 2) / 2;
        var high = Math.Max(1, Math.Ceiling(Math.Max(data.Rows.Max(row => row.High), data.Rulers.Select(ruler => ruler.Length).DefaultIfEmpty(0).Max()) * 2) / 2);
        double X(double value) => left + ((value - low) / (high - low) * (right - left));
        double y = 0;
        if (data.Column.Length > 0)
        {
            y = Small + 6;
            canvas.Text(width - 2, Small, data.Column, Small, tone: Tone.Pencil, anchor: Anchor.End);
        }

        var rowPitch = narrow ? pitch * 1.5 : pitch;
        var bottom = y + (data.Rows.Count * rowPitch);
        var step = Step(high - low, right - left);
        for (var tick = Math.Ceiling(low / step) * step; tick <= high + 1e-9; tick += step)
        {
            canvas.Line(X(tick), y, X(tick), bottom + 4, Math.Abs(tick) < 1e-9 ? Tone.Line : Tone.Hair, 1.2);
            canvas.Text(X(tick), bottom + 20, Mark(tick), Small, anchor: Anchor.Middle);
        }

        foreach (var row in data.Rows)
        {
            var middle = y + (narrow ? rowPitch * 0.68 : rowPitch / 2);
            var text = narrow ? middle - 18 : middle + (Type * 0.34);
            canvas.Text(0, text, TextRuler.Fit(row.Name, narrow ? width - TextRuler.Width(row.Words, Type) - 14 : left - 20, Type, Face.SansStrong), Type, Face.SansStrong);
            canvas.Text(width - 2, text, row.Words, Type, anchor: Anchor.End);
            if (row.High > row.Low) canvas.Line(X(row.Low), middle, X(row.High), middle, Tone.Ink, 4.5);
            canvas.Add(new Area(Outline.Circle(X(row.Behind), middle, 13), Tone.Paper));
            canvas.Add(MarkDrawing.Shapes(row.Look, X(row.Behind) - 10, middle - 10, 20));
            y += rowPitch;
        }

        y = bottom + 26;
        foreach (var line in TextRuler.Wrap(data.Scale, width - left, Small, Face.SerifItalic))
        {
            y += Small * 1.3;
            canvas.Text(left, y, line, Small, Face.SerifItalic, Tone.Pencil);
        }

        foreach (var ruler in data.Rulers)
        {
            y += pitch * 0.75;
            canvas.Line(X(0), y, X(ruler.Length), y, Tone.Ink, 1.8);
            foreach (var end in new[] { X(0), X(ruler.Length) }) canvas.Line(end, y - 5, end, y + 5, Tone.Ink, 1.8);
            y = Beside(canvas, ruler.Words, X(ruler.Length) + 10, left, width, y);
        }

        return canvas.Drawn(width, y + 10, data.Title, data.Description);
    }

    private static double Beside(Canvas canvas, string words, double at, double left, double width, double y)
    {
        if (TextRuler.Width(words, Type) <= width - at)
        {
            canvas.Text(at, y + (Type * 0.34), words, Type);
            return y;
        }

        y += 8;
        foreach (var line in TextRuler.Wrap(words, width - left, Type))
        {
            y += Type * 1.25;
            canvas.Text(left, y, line, Type);
        }

        return y;
    }

    private static double Step(double span, double room)
    {
        foreach (var step in new[] { 0.5, 1, 2, 5, 10, 20, 50, 100 })
        {
            if (room / (span / step) >= 44) return step;
        }

        return span;
    }

    private static string Mark(double tick) => Math.Abs(tick) < 1e-9 ? "0" : tick.ToString("0.#", CultureInfo.InvariantCulture).Replace('.', ',').Replace('-', '−');
}
