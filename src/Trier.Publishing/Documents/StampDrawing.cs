using System.Collections.Immutable;
using System.Globalization;
using Trier.Publishing.Bundles;
using Trier.Publishing.Drawings;

namespace Trier.Publishing.Documents;

/// <summary>The round stamp: whose key it was and when it was opened, letter by letter round the rim.</summary>
internal static class StampDrawing
{
    private const double Middle = 100;
    private const double Tilt = -8;

    /// <summary>The stamp; null where no key was opened.</summary>
    public static Drawing? Of(Publication publication)
    {
        if (publication.OpenedAt is not { } opened) return null;
        var head = publication.Verdict.Record.Head;
        var club = string.IsNullOrEmpty(head.Host) ? head.Title : head.Host;
        var time = string.Create(CultureInfo.InvariantCulture, $"Key opened {opened:HH:mm}");
        var shapes = ImmutableArray.CreateBuilder<Shape>();
        shapes.Add(new Area(Outline.Circle(Middle, Middle, 94), null, Tone.Stamp, 3.5));
        shapes.Add(new Area(Outline.Circle(Middle, Middle, 62), null, Tone.Stamp, 1.8));
        shapes.Add(new Area(Turned(new(72, 62), new(128, 62), new(128, 73), new(106, 73), new(106, 87), new(94, 87), new(94, 73), new(72, 73)), Tone.Stamp));
        shapes.AddRange(Round(club.ToUpperInvariant(), 74, over: true));
        shapes.AddRange(Round(time.ToUpperInvariant(), 84, over: false));
        foreach (var (y, size, text) in new[] { (118.0, 23.0, opened.ToString("dd'·'MM", CultureInfo.InvariantCulture)), (140.0, 20.0, opened.ToString("yyyy", CultureInfo.InvariantCulture)) })
        {
            var at = Turn(new(Middle, y));
            shapes.Add(new Words(at.X, at.Y, text, size, Face.SansStrong, Tone.Stamp, Anchor.Middle, Tilt));
        }

        return new(200, 200, $"{club}, {time}, {opened.ToString("dd/MM/yyyy", CultureInfo.InvariantCulture)}", "The round stamp of the verdict.", shapes.ToImmutable());
    }

    private static IEnumerable<Words> Round(string text, double radius, bool over)
    {
        var size = Math.Clamp(300.0 / Math.Max(text.Length, 1), 8, 17);
        const double Space = 2;
        var total = text.Sum(letter => TextRuler.Width(letter.ToString(), size, Face.SansStrong) + Space) - Space;
        var at = -total / 2;
        foreach (var letter in text)
        {
            var wide = TextRuler.Width(letter.ToString(), size, Face.SansStrong);
            var angle = ((at + (wide / 2)) / radius * 180 / Math.PI) + Tilt;
            var turn = over ? angle : -((at + (wide / 2)) / radius * 180 / Math.PI) + Tilt;
            var towards = (over ? angle - 90 : 90 + turn) * Math.PI / 180;
            if (letter != ' ') yield return new Words(Middle + (radius * Math.Cos(towards)), Middle + (radius * Math.Sin(towards)), letter.ToString(), size, Face.SansStrong, Tone.Stamp, Anchor.Middle, turn);
            at += wide + Space;
        }
    }

    private static Outline Turned(params ImmutableArray<Spot> spots) => Outline.Polygon([.. spots.Select(Turn)]);

    private static Spot Turn(Spot spot)
    {
        var (sin, cos) = Math.SinCos(Tilt * Math.PI / 180);
        var (x, y) = (spot.X - Middle, spot.Y - Middle);
        return new(Middle + (x * cos) - (y * sin), Middle + (x * sin) + (y * cos));
    }
}
