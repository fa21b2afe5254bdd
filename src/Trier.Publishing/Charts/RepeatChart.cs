using Trier.Publishing.Drawings;
using Trier.Publishing.Writing;

namespace Trier.Publishing.Charts;

/// <summary>One taster's two places for one cheese.</summary>
/// <param name="Name">Who.</param>
/// <param name="Counts">Place of the serving that counts.</param>
/// <param name="Check">Place of the serving that is only a check.</param>
public sealed record RepeatRow(string Name, double Counts, double Check);

/// <summary>One cheese under two codes, taster by taster.</summary>
/// <param name="Rows">The tasters, nearest first.</param>
/// <param name="Places">How many places there are, the second serving among them.</param>
/// <param name="Look">The wheel's mark.</param>
/// <param name="CountsWords">Key to the mark of the serving that counts.</param>
/// <param name="CheckWords">Key to the other.</param>
/// <param name="Title">What it shows.</param>
/// <param name="Description">What it says.</param>
public sealed record RepeatData(IReadOnlyList<RepeatRow> Rows, int Places, WheelLook Look, string CountsWords, string CheckWords, string Title, string Description);

/// <summary>The hidden repeat: a row a taster, the two places of one cheese joined by a line.</summary>
public static class RepeatChart
{
    private const double Type = 16;
    private const double Mark = 16;

    /// <summary>Draws it.</summary>
    /// <param name="data">The tasters.</param>
    /// <param name="width">Units across.</param>
    /// <param name="pitch">Units from row to row.</param>
    public static Drawing Draw(RepeatData data, double width, double pitch = 28)
    {
        ArgumentNullException.ThrowIfNull(data);
        var canvas = new Canvas();
        var left = Math.Min(data.Rows.Max(row => TextRuler.Width(row.Name, Type)), width * 0.3) + 30;
        var right = width - 16;
        double X(double place) => data.Places < 2 ? left : left + ((place - 1) / (data.Places - 1) * (right - left));
        var y = Key(canvas, data, width) + 20;
        var bottom = y + 10 + (data.Rows.Count * pitch);
        for (var place = 1; place <= data.Places; place++)
        {
            canvas.Text(X(place), y, Ordinal.English(place), Type, anchor: Anchor.Middle, tone: Tone.Pencil);
            canvas.Line(X(place), y + 8, X(place), bottom, Tone.Hair, 1.2);
        }

        y += 10;
        foreach (var row in data.Rows)
        {
            var middle = y + (pitch / 2);
            canvas.Text(0, middle + (Type * 0.34), TextRuler.Fit(row.Name, left - 26, Type), Type);
            canvas.Line(X(row.Counts), middle, X(row.Check), middle, Tone.Ink, 2.6);
            canvas.Add(MarkDrawing.Shapes(data.Look.Again, X(row.Check) - (Mark / 2), middle - (Mark / 2), Mark));
            canvas.Add(MarkDrawing.Shapes(data.Look, X(row.Counts) - (Mark / 2), middle - (Mark / 2), Mark));
            y += pitch;
        }

        return canvas.Drawn(width, bottom + 6, data.Title, data.Description);
    }

    private static double Key(Canvas canvas, RepeatData data, double width)
    {
        double x = 0, y = 0;
        foreach (var (look, whole) in new[] { (data.Look, data.CountsWords), (data.Look.Again, data.CheckWords) })
        {
            var words = TextRuler.Fit(whole, width - Mark - 6, Type);
            var wide = Mark + 6 + TextRuler.Width(words, Type);
            if (x > 0 && x + wide > width) (x, y) = (0, y + (Type * 1.5));
            canvas.Add(MarkDrawing.Shapes(look, x, y + 2, Mark));
            canvas.Text(x + Mark + 6, y + Type - 1, words, Type);
            x += wide + 22;
        }

        return y + (Type * 1.5);
    }
}
