using Trier.Publishing.Charts;
using Trier.Publishing.Drawings;

namespace Trier.Publishing.Documents;

/// <summary>A table on paper: one rule under the heads, hairlines between rows, heads again on every page.</summary>
internal static class PdfTable
{
    private const double Type = 9.4;
    private const double Line = 12.4;
    private const double CaptionType = 9.8;
    private const double Gap = 12;
    private const double Mark = 9;
    private const double HeadWidth = 64;

    public static void Draw(PdfFlow flow, Table table)
    {
        if (table.Rows.IsEmpty) return;
        var widths = Widths(flow, table);
        var heads = table.Heads.Select((head, i) => TextRuler.Wrap(head.Text, widths[i], Type, Face.SansStrong).ToList()).ToList();
        var headHeight = (heads.Max(lines => lines.Count) * Line) + 6;
        var rows = table.Rows.Select(row => (Row: row, Cells: row.Select((cell, i) => TextRuler.Wrap(cell.Text, widths[i] - (cell.Look is null ? 0 : Mark + 4), Type, FaceOf(cell, i)).ToList()).ToList())).ToList();
        var captionWidth = Math.Min(flow.Width, 400);
        var top = (TextRuler.Wrap(table.Caption, captionWidth, CaptionType, Face.SerifItalic).Count() * CaptionType * 1.38) + (CaptionType * 0.2) + headHeight;
        var whole = top + rows.Sum(row => HeightOf(row.Cells));
        // A short table is not parted: its last rows under heads of their own say less than white paper costs.
        flow.Need(whole <= flow.WholeRoom / 2 ? whole : top + rows.Take(3).Sum(row => HeightOf(row.Cells)));
        flow.Paragraph(PdfFlow.Left, captionWidth, table.Caption, CaptionType, Face.SerifItalic, Tone.Pencil, after: 0.2);
        Heads(flow, table, widths, heads, headHeight);
        foreach (var (row, cells) in rows)
        {
            var height = HeightOf(cells);
            if (flow.Need(height)) Heads(flow, table, widths, heads, headHeight);
            Row(flow, table, widths, row, cells);
            flow.Y += height;
            flow.Rule(PdfFlow.Left, flow.Y, widths.Sum() + (Gap * (widths.Length - 1)), Tone.Hair, 0.5);
        }

        flow.Y += 12;
    }

    private static double HeightOf(List<List<string>> cells) => (Math.Max(1, cells.Max(lines => lines.Count)) * Line) + 5;

    private static void Heads(PdfFlow flow, Table table, double[] widths, List<List<string>> heads, double height)
    {
        var x = PdfFlow.Left;
        for (var i = 0; i < widths.Length; i++)
        {
            var y = flow.Y + height - 6 - ((heads[i].Count - 1) * Line);
            foreach (var line in heads[i])
            {
                flow.Text(table.Heads[i].Number ? x + widths[i] : x, y, line, Type, Face.SansStrong, anchor: table.Heads[i].Number ? Anchor.End : Anchor.Start);
                y += Line;
            }

            x += widths[i] + Gap;
        }

        flow.Y += height;
        flow.Rule(PdfFlow.Left, flow.Y, widths.Sum() + (Gap * (widths.Length - 1)), Tone.Ink, 1.4);
    }

    private static void Row(PdfFlow flow, Table table, double[] widths, IReadOnlyList<Cell> row, List<List<string>> cells)
    {
        var x = PdfFlow.Left;
        for (var i = 0; i < widths.Length; i++)
        {
            var left = x;
            if (row[i].Look is { } look)
            {
                foreach (var shape in MarkDrawing.Shapes(look, x, flow.Y + Line - Mark + 1, Mark)) flow.Add(shape);
                left += Mark + 4;
            }

            var y = flow.Y + Line;
            foreach (var line in cells[i])
            {
                var at = table.Heads[i].Number ? x + widths[i] : left;
                flow.Text(at, y, line, Type, FaceOf(row[i], i), anchor: table.Heads[i].Number ? Anchor.End : Anchor.Start);
                if (row[i].Best)
                {
                    var wide = TextRuler.Width(line, Type, Face.SansStrong);
                    flow.Rule(table.Heads[i].Number ? at - wide : at, y + 2.4, wide, Tone.Ink, 1.1);
                }

                y += Line;
            }

            x += widths[i] + Gap;
        }
    }

    private static Face FaceOf(Cell cell, int column) => cell.Best || column == 0 ? Face.SansStrong : Face.Sans;

    /// <summary>As wide as the longest of a column; where all together are too wide, the widest give way first.</summary>
    private static double[] Widths(PdfFlow flow, Table table)
    {
        var wanted = table.Heads.Select((head, i) => Math.Max(Longest(head.Text), table.Rows.Max(row => TextRuler.Width(row[i].Text, Type, Face.SansStrong) + (row[i].Look is null ? 0 : Mark + 4)))).ToArray();
        var room = flow.Width - (Gap * (wanted.Length - 1));
        while (wanted.Sum() > room)
        {
            var widest = wanted.Max();
            var next = wanted.Where(width => width < widest - 0.01).DefaultIfEmpty(0).Max();
            var count = wanted.Count(width => width >= widest - 0.01);
            var least = Math.Max(next, widest - ((wanted.Sum() - room) / count));
            wanted = [.. wanted.Select(width => width >= widest - 0.01 ? least : width)];
        }

        return wanted;
    }

    /// <summary>A head is broken, but not into a tower of single words.</summary>
    private static double Longest(string head) => Math.Max(head.Split(' ').Max(word => TextRuler.Width(word, Type, Face.SansStrong)), Math.Min(HeadWidth, TextRuler.Width(head, Type, Face.SansStrong)));
}
