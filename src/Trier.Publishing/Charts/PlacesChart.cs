using Trier.Publishing.Drawings;
using Trier.Publishing.Writing;

namespace Trier.Publishing.Charts;

/// <summary>Places by camp: a lane a wheel, a column a place, a sign a taster; milder open and pointing down from above the line, stronger solid and pointing up from below, no idea a bar across it.</summary>
public static class PlacesChart
{
    private const double Type = 16;

    /// <summary>Draws it.</summary>
    /// <param name="data">The lanes.</param>
    /// <param name="width">Units across.</param>
    /// <param name="withKey">Whether the key to the dots stands above; a page has its own.</param>
    /// <param name="lane">Height of a lane, or null for the usual.</param>
    public static Drawing Draw(PlacesData data, double width, bool withKey = true, double? lane = null)
    {
        ArgumentNullException.ThrowIfNull(data);
        var names = data.Lanes.Select(one => TextRuler.Width(one.Name, Type, Face.SansStrong)).DefaultIfEmpty(0).Max();
        var layout = PlacesLayout.For(width, names, lane);
        var canvas = new Canvas();
        var key = withKey && data.Camps ? Key(canvas, data, width) : 0;
        var height = key + PlacesLayout.Head + (data.Lanes.Count * layout.Lane);
        for (var place = 1; place <= data.Places; place++)
        {
            var x = layout.X(place, data.Places);
            canvas.Line(x, key + PlacesLayout.Head - 4, x, height, Tone.Hair, 1.2);
            if (place % 2 == 1 || layout.X(2, data.Places) - layout.X(1, data.Places) > 34) canvas.Text(x, key + 18, Ordinal.English(place), Type, anchor: Anchor.Middle);
        }

        for (var i = 0; i < data.Lanes.Count; i++) Lane(canvas, layout, data, data.Lanes[i], key + PlacesLayout.Head + (i * layout.Lane));
        return canvas.Drawn(width, height, data.Title, data.Description);
    }

    private static void Lane(Canvas canvas, PlacesLayout layout, PlacesData data, PlacesLane lane, double top)
    {
        var line = top + layout.Line;
        var mark = layout.IsNarrow ? top + 8 : line - 8;
        canvas.Line(layout.Left - layout.Edge, line, layout.Right + layout.Edge, line, Tone.Ink, 1.6);
        canvas.Add(MarkDrawing.Shapes(lane.Look, 2, mark, 16));
        canvas.Text(26, mark + 13, TextRuler.Fit(lane.Name, layout.IsNarrow ? layout.Width - 40 - TextRuler.Width(string.Join(", ", lane.Averages), Type) : layout.Left - layout.Edge - 30, Type, Face.SansStrong), Type, Face.SansStrong);
        if (layout.IsNarrow)
        {
            canvas.Text(layout.Width - 2, mark + 13, string.Join(", ", lane.Averages), Type, anchor: Anchor.End);
        }
        else
        {
            for (var i = 0; i < lane.Averages.Count; i++) canvas.Text(layout.Width - 2, line + 5 + ((i - ((lane.Averages.Count - 1) / 2.0)) * 24), lane.Averages[i], Type, anchor: Anchor.End);
        }

        foreach (var (camp, x, y) in layout.Spread(lane.Dots, data.Places)) canvas.Add(Dot(camp, x, line + y, layout.Dot));
    }

    private static double Key(Canvas canvas, PlacesData data, double width)
    {
        double x = 0, y = 0;
        foreach (var (camp, words) in new[] { (Camp.Milder, data.Milder), (Camp.Stronger, data.Stronger), (Camp.None, data.None) }.Where(line => line.Item2.Length > 0))
        {
            var wide = 20 + TextRuler.Width(words, Type);
            if (x > 0 && x + wide > width) (x, y) = (0, y + (Type * 1.5));
            canvas.Add(Dot(camp, x + 8, y + 10, 6.5));
            canvas.Text(x + 20, y + Type - 1, words, Type);
            x += wide + 22;
        }

        return y + (Type * 1.5) + 6;
    }

    private static Area Dot(Camp camp, double x, double y, double radius) => camp switch
    {
        Camp.Milder => new(Outline.Polygon(new(x - radius + 0.5, y - radius + 0.5), new(x + radius - 0.5, y - radius + 0.5), new(x, y + radius - 0.5)), Tone.Paper, Tone.Ink, 1.8),
        Camp.Stronger => new(Outline.Polygon(new(x - radius, y + radius), new(x + radius, y + radius), new(x, y - radius)), Tone.Ink),
        _ => new(Outline.Polygon(new(x - 2, y - radius - 1), new(x + 2, y - radius - 1), new(x + 2, y + radius + 1), new(x - 2, y + radius + 1)), Tone.Ink),
    };
}
