using Trier.Publishing.Charts;
using Trier.Publishing.Drawings;

namespace Trier.Publishing.Documents;

/// <summary>A wheel's mark within a line of a page.</summary>
internal static class MarkSvg
{
    public static string Of(WheelLook look) => string.Concat(MarkDrawing.Shapes(look, 0, 0, 16).Cast<Area>().Select(area =>
        FormattableString.Invariant($"<path d=\"{area.Outline.Data()}\" fill=\"{(area.Fill is { } fill ? Tones.Hex(fill) : "none")}\"{(area.Stroke is { } stroke ? FormattableString.Invariant($" stroke=\"{Tones.Hex(stroke)}\" stroke-width=\"{area.Width:0.##}\"") : "")}/>")));
}
