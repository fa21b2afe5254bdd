using Trier.Trials.Makes;
using Trier.Trials.Verdicts;

namespace Trier.Commands.Verdicts;

/// <summary>A sign for every wheel, never without its name: shape says the recipe, solid or open which wheel of it.</summary>
internal sealed class TerminalMarks
{
    private const string Solid = "●◆■▲▮▬⬢✚";
    private const string Open = "○◇□△▯▭⬡✛";

    private readonly Dictionary<string, string> _signs;
    private readonly Dictionary<string, string> _names;

    public TerminalMarks(Verdict verdict)
    {
        var wheels = verdict.Wheels.OrderBy(w => w.Id, StringComparer.Ordinal).ToList();
        _signs = wheels.Select((w, i) => (w.Id, Sign: SignOf(w.Mark ?? new WheelMark((i % Solid.Length) + 1, i / Solid.Length, 1)))).ToDictionary(w => w.Id, w => w.Sign, StringComparer.Ordinal);
        _names = wheels.ToDictionary(w => w.Id, w => w.Name, StringComparer.Ordinal);
    }

    public string Sign(string id) => _signs[id];

    public string Name(string id) => _names[id];

    public string Marked(string id) => $"{_signs[id]} {_names[id]}";

    public int LongestName => _names.Values.Select(n => n.Length).DefaultIfEmpty(0).Max();

    private static string SignOf(WheelMark mark) =>
        (mark.Fill == 0 ? Solid : Open)[Math.Clamp(mark.Shape, 1, Solid.Length) - 1].ToString();
}
