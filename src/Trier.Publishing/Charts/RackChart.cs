using Trier.Publishing.Drawings;
using Trier.Publishing.Writing;

namespace Trier.Publishing.Charts;

/// <summary>The every-ballot rack: a row a taster, rind end first place, tip last, tied wheels dashed together, a torn end where fewer wheels were tasted.</summary>
public static class RackChart
{
    private const double Type = 16;
    private const double Small = 14.5;
    private const double Rind = 15;
    private const double Mark = 15;
    private const double SmallMark = 12;

    /// <summary>Draws it.</summary>
    /// <param name="data">The ballots.</param>
    /// <param name="width">Units across; 16 units are one size of type.</param>
    /// <param name="pitch">Units from row to row; 26 sits well on paper.</param>
    public static Drawing Draw(RackData data, double width, double pitch = 28)
    {
        ArgumentNullException.ThrowIfNull(data);
        var canvas = new Canvas();
        var rows = data.Groups.SelectMany(group => group.Rows).ToList();
        var names = rows.Count == 0 ? 0 : rows.Max(row => TextRuler.Width(Named(row), Type));
        var left = Math.Min(Math.Max(names, 40), width * 0.3) + 12;
        var columns = Math.Max(data.Places, 1);
        var column = (width - left - Rind) / columns;
        var mark = column < 64 ? SmallMark : Mark;
        var room = column - mark - (mark < Mark ? 8 : 18);
        var longest = rows.SelectMany(row => row.Cells).Select(cell => TextRuler.Width(cell.Long, Type) + (cell.TiedWithPrevious ? 14 : 0)).DefaultIfEmpty(0).Max();
        var frame = new Frame(left, column, pitch, longest <= room, mark, mark < Mark ? 3 : 5);
        double y = 0;
        if (!frame.LongNames) y = Key(canvas, data.Keys, width) + 6;
        y += Type;
        for (var place = 1; place <= columns; place++) canvas.Text(frame.At(place - 1) + (place == 1 ? Rind : 0) + 6, y, Ordinal.English(place), Small, tone: Tone.Pencil);
        y += 8;
        foreach (var group in data.Groups)
        {
            y += pitch;
            var at = canvas.Text(0, y - (pitch * 0.3), Joined(group.Before), Type, Face.SerifItalic, Tone.Pencil);
            at = canvas.Text(at, y - (pitch * 0.3), group.Title, Type, Face.SerifStrong);
            y = After(canvas, group.After ?? "", at, y, pitch, width);
            foreach (var row in group.Rows)
            {
                Row(canvas, row, y, frame, width);
                y += pitch;
            }
        }

        foreach (var line in TextRuler.Wrap(data.Notes, width, Small))
        {
            y += Small * 1.35;
            canvas.Text(0, y, line, Small, tone: Tone.Pencil);
        }

        return canvas.Drawn(width, y + 4, data.Title, data.Description);
    }

    /// <summary>Words after a group's title: beside it where they fit, else on lines of their own.</summary>
    private static double After(Canvas canvas, string words, double at, double y, double pitch, double width)
    {
        if (at + TextRuler.Width(words, Type, Face.SerifItalic) <= width)
        {
            canvas.Text(at, y - (pitch * 0.3), words, Type, Face.SerifItalic, Tone.Pencil);
            return y;
        }

        foreach (var line in TextRuler.Wrap(words.TrimStart(',', ' '), width, Type, Face.SerifItalic))
        {
            y += Type * 1.3;
            canvas.Text(0, y - (pitch * 0.3), line, Type, Face.SerifItalic, Tone.Pencil);
        }

        return y;
    }

    private static double Key(Canvas canvas, IEnumerable<RackKey> keys, double width)
    {
        double x = 0, y = 0;
        foreach (var key in keys)
        {
            var words = TextRuler.Fit($"{key.Short} {key.Long}", width - Mark - 5, Type);
            var wide = Mark + 5 + TextRuler.Width(words, Type);
            if (x > 0 && x + wide > width) (x, y) = (0, y + (Type * 1.5));
            canvas.Add(MarkDrawing.Shapes(key.Look, x, y + 2, Mark));
            canvas.Text(x + Mark + 5, y + Type - 1, words, Type);
            x += wide + 18;
        }

        return y + (Type * 1.5);
    }

    private static void Row(Canvas canvas, RackRow row, double top, Frame frame, double width)
    {
        var (height, basis) = (frame.Pitch - 4, top + ((frame.Pitch - 4) / 2) + (Type * 0.34));
        canvas.Text(0, basis, TextRuler.Fit(Named(row), frame.Left - 8, Type), Type);
        for (var i = 0; i < row.Cells.Count; i++) Cell(canvas, row, i, top, height, basis, frame);
        if (row.Cells.Count > 0)
        {
            canvas.Box(frame.Left, top, 9, height, Tone.Ink);
            canvas.Box(frame.Left + 9, top, 2.5, height, Tone.Sheet);
            canvas.Box(frame.Left + 11.5, top, 1.5, height, Tone.Ink);
        }

        var words = row.Cells.Count == 0 ? row.Words ?? "" : (frame.LongNames ? row.TornWords : row.TornShort) ?? "";
        var start = frame.At(row.Cells.Count) + (row.Cells.Count == 0 ? 8 : 6);
        canvas.Text(start, basis, TextRuler.Fit(words, width - start, Small, Face.SerifItalic), Small, Face.SerifItalic, Tone.Pencil);
    }

    private static void Cell(Canvas canvas, RackRow row, int index, double top, double height, double basis, Frame frame)
    {
        var cell = row.Cells[index];
        var (x, tone) = (frame.At(index), Tones.OfWheel(cell.Look.Tone));
        var wide = frame.At(index + 1) - x;
        var ink = Tones.InkOn(tone);
        var last = index == row.Cells.Count - 1;
        var outline = last && row.TornWords is not null ? Torn(x, top, wide, height)
            : last ? Outline.Tip(x, top, wide, height)
            : Outline.Rectangle(x, top, wide, height);
        canvas.Add(new Area(outline, tone, Tone.Ink, 1.2));
        if (cell.TiedWithPrevious)
        {
            canvas.Line(x, top + 1, x, top + height - 1, tone, 2.4);
            canvas.Line(x, top + 1, x, top + height - 1, ink, 1.6, dashed: true);
        }

        var at = x + (index == 0 ? Rind : 0) + frame.Gap;
        canvas.Add(MarkDrawing.Shapes(cell.Look, at, top + ((height - frame.Mark) / 2), frame.Mark, ink));
        at += frame.Mark + frame.Gap;
        if (cell.TiedWithPrevious) at = canvas.Text(at, basis, frame.LongNames ? "= " : "=", Type, Face.SansStrong, ink);
        var words = frame.LongNames ? cell.Long : cell.Short;
        canvas.Text(at, basis, TextRuler.Fit(words, x + wide - at - 1, Type), Type, tone: ink);
    }

    private static Outline Torn(double x, double y, double width, double height)
    {
        var (right, third) = (x + width, height / 3);
        return Outline.Polygon(new(x, y), new(right, y), new(right - 8, y + (third / 2)), new(right - 1, y + third), new(right - 9, y + (third * 1.6)), new(right - 1, y + (third * 2.2)), new(right - 7, y + (third * 2.6)), new(right, y + height), new(x, y + height));
    }

    private static string Named(RackRow row) => row.NoteMarks is null ? row.Name : $"{row.Name} {row.NoteMarks}";

    private static string Joined(string? before) => before is null ? "" : before + " ";

    private readonly record struct Frame(double Left, double Column, double Pitch, bool LongNames, double Mark, double Gap)
    {
        /// <summary>Where a cell begins; the first is wider by its rind.</summary>
        public double At(int index) => Left + (index * Column) + (index == 0 ? 0 : Rind);
    }
}
