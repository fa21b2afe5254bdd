using System.Collections.Immutable;
using System.Globalization;
using Trier.Publishing.Drawings;
using Trier.Publishing.Writing;
using Trier.Trials.Verdicts;

namespace Trier.Publishing.Charts;

/// <summary>A shape of picture.</summary>
public enum ChartFormat
{
    /// <summary>1920 by 1080.</summary>
    Wide,

    /// <summary>1080 by 1080.</summary>
    Square,

    /// <summary>1080 by 1920.</summary>
    Tall,

    /// <summary>1920 by 1080, nothing but the chart on its own paper; the rest lets a film through.</summary>
    Overlay,
}

/// <summary>One chart of a verdict, ready to be drawn at any width.</summary>
/// <param name="Name">A name for files and ids: "rack".</param>
/// <param name="Title">What it shows.</param>
/// <param name="Natural">Draws it at a width and a stretch of its rows (1 is usual).</param>
public sealed record VerdictChart(string Name, string Title, Func<double, double, Drawing> Natural);

/// <summary>The charts of a verdict, and each of them as a picture of a fixed size with its heading, in the largest type that fits.</summary>
public static class ChartSheet
{
    private const double LargestScale = 3.4;
    private const double SmallestScale = 0.4;
    private const double Stretch = 1.3;

    /// <summary>The charts there are, in their order.</summary>
    /// <param name="verdict">The verdict.</param>
    public static ImmutableArray<VerdictChart> Of(Verdict verdict)
    {
        var charts = ImmutableArray.CreateBuilder<VerdictChart>();
        var rack = VerdictRack.Of(verdict);
        charts.Add(new("rack", rack.Title, (width, stretch) => RackChart.Draw(rack, width, 28 * stretch)));
        var places = VerdictPlaces.Of(verdict);
        if (places.Lanes.Count > 0) charts.Add(new("places", places.Title, (width, stretch) => PlacesChart.Draw(places, width, lane: (width < 500 ? 96 : 72) * stretch)));
        if (VerdictForest.Of(verdict) is { } forest) charts.Add(new("forest", forest.Title, (width, stretch) => ForestChart.Draw(forest, width, 40 * stretch)));
        var repeats = VerdictRepeats.Of(verdict).ToList();
        for (var i = 0; i < repeats.Count; i++)
        {
            var repeat = repeats[i];
            charts.Add(new(repeats.Count == 1 ? "repeat" : string.Create(CultureInfo.InvariantCulture, $"repeat-{i + 1}"), repeat.Title, (width, stretch) => RepeatChart.Draw(repeat, width, 28 * stretch)));
        }

        return charts.ToImmutable();
    }

    /// <summary>A chart as a picture.</summary>
    /// <param name="verdict">The verdict, for the line below.</param>
    /// <param name="chart">The chart.</param>
    /// <param name="format">Its shape.</param>
    public static Drawing Picture(Verdict verdict, VerdictChart chart, ChartFormat format)
    {
        var (width, height) = Size(format);
        var (edge, title, foot) = format == ChartFormat.Overlay ? (36.0, 40.0, 24.0) : (width * 0.05, 50.0, 26.0);
        var inner = width - (2 * edge) - (format == ChartFormat.Overlay ? 120 : 0);
        var head = title * 1.9;
        var room = height - (2 * edge) - head - (foot * 2.2);
        var (drawn, scale) = Largest(chart, inner, room);
        var canvas = new Canvas();
        var left = (width - (drawn.Width * scale)) / 2;
        var top = format == ChartFormat.Overlay ? height - edge - (foot * 2.2) - (drawn.Height * scale) - head : edge;
        if (format == ChartFormat.Overlay) canvas.Box(left - edge, top - (edge * 0.6), (drawn.Width * scale) + (2 * edge), height - top + (edge * 0.1), Tone.Paper);
        canvas.Text(left, top + title, TextRuler.Fit(chart.Title, inner, title, Face.SerifStrong), title, Face.SerifStrong);
        canvas.Add(drawn.Placed(left, top + head, scale));
        canvas.Text(left, height - edge, TextRuler.Fit(Foot(verdict), inner, foot, Face.SerifItalic), foot, Face.SerifItalic, Tone.Pencil);
        var picture = canvas.Drawn(width, height, chart.Title, drawn.Description);
        return format == ChartFormat.Overlay ? picture : picture with { Ground = Tone.Paper };
    }

    /// <summary>Pixels across and down.</summary>
    /// <param name="format">A shape.</param>
    public static (double Width, double Height) Size(ChartFormat format) => format switch
    {
        ChartFormat.Square => (1080, 1080),
        ChartFormat.Tall => (1080, 1920),
        _ => (1920, 1080),
    };

    private static string Foot(Verdict verdict)
    {
        var head = verdict.Record.Head;
        var parts = new[] { head.Title, head.Host, head.Day?.ToString("dd/MM/yyyy", CultureInfo.InvariantCulture), $"{Numbers.Plain(verdict.Panel.Ballots)} {(verdict.Panel.Ballots == 1 ? "ballot counts" : "ballots count")}", head.Invented ? "an invented trial" : "" };
        return string.Join(" · ", parts.Where(part => !string.IsNullOrEmpty(part)));
    }

    /// <summary>The largest type in which the chart fits, and, where room is left, its rows a little further apart.</summary>
    private static (Drawing Drawn, double Scale) Largest(VerdictChart chart, double width, double height)
    {
        for (var scale = LargestScale; scale > SmallestScale; scale -= 0.05)
        {
            if (width / scale < 340) continue;
            var drawn = chart.Natural(width / scale, 1);
            if (drawn.Height * scale > height) continue;
            for (var stretch = Stretch; stretch > 1; stretch -= 0.05)
            {
                var stretched = chart.Natural(width / scale, stretch);
                if (stretched.Height * scale <= height) return (stretched, scale);
            }

            return (drawn, scale);
        }

        var smallest = chart.Natural(width / SmallestScale, 1);
        return (smallest, Math.Min(SmallestScale, height / smallest.Height));
    }
}
