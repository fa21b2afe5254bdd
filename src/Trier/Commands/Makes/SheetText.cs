using System.Globalization;
using Trier.Dairy.Eyes;
using Trier.Trials.Makes.Sheets;

namespace Trier.Commands.Makes;

/// <summary>A make sheet as a page of text, 80 columns at most.</summary>
internal static class SheetText
{
    private const int Width = 80;

    public static IEnumerable<string> Lines(MakeSheet sheet, IReadOnlyList<string> asked, UnitSystem units, TimeOnly? start, bool workings)
    {
        var notation = new Notation(units, '.');
        var numbered = new List<Figure>();
        var text = new List<string> { sheet.Recipe.Name, new('=', Math.Min(Width, sheet.Recipe.Name.Length)), "" };
        Section("Milk", sheet.Milk);
        foreach (var question in asked.Concat(sheet.Questions)) text.AddRange(Wrap($"? {notation.Say(question)}", "", "  "));
        text.Add("");
        text.Add("Steps");
        foreach (var step in sheet.Steps)
        {
            var when = start is { } clock ? clock.Add(step.Starts).ToString("HH:mm", CultureInfo.InvariantCulture) : notation.Write(Measure.Time, step.Starts.TotalMinutes);
            var aims = AimText.Write(step.Step, notation);
            text.AddRange(Wrap($"{step.Number.ToString(CultureInfo.InvariantCulture),2}  {when,-10} {step.Step.Heading}{(aims.Length > 0 ? ": " + aims : "")}", "", "               "));
            foreach (var figure in step.Figures) text.AddRange(Wrap($"               {Tell(figure)}", "", "                 "));
            if (step.Step.Note.Length > 0) text.AddRange(Wrap($"               {step.Step.Note}", "", "               "));
            foreach (var note in step.Notes) text.AddRange(Wrap($"               ? {notation.Say(note)}", "", "                 "));
        }

        if (sheet.Readings.Length > 0)
        {
            text.Add("");
            text.Add("Readings to expect");
            foreach (var reading in sheet.Readings)
                text.Add($"    {reading.Heading,-28} pH {reading.Aim.Value.ToString("0.00", CultureInfo.InvariantCulture)} (give or take {Telling.Number(reading.Aim.Slack)}){(reading.Table is { } table ? $"; table {table.ToString("0.00", CultureInfo.InvariantCulture)}" : "")}");
        }

        text.Add("");
        Section("The wheel to expect", sheet.Wheel.Figures);
        if (sheet.Wheel.Eyes is { } eyes) text.AddRange(Wrap("    " + Eyes(eyes), "", "    "));
        foreach (var limits in sheet.Wheel.Limits)
            text.AddRange(Wrap($"    Beside {limits.Standard.Cheese} ({limits.Standard.Authority}): {string.Join("; ", limits.Standings.Select(standing => $"{notation.Say(standing.Limit)}, {standing.Standing.ToString().ToLowerInvariant()}"))}.", "", "      "));
        text.Add("");
        text.Add("Mind");
        foreach (var caution in sheet.Cautions) text.AddRange(Wrap($"    {notation.Say(caution.Sentence)}", "", "    "));
        if (workings)
        {
            text.Add("");
            text.Add("How each number came about");
            for (var i = 0; i < numbered.Count; i++)
            {
                text.Add($"[{(i + 1).ToString(CultureInfo.InvariantCulture)}] {numbered[i].Name}");
                text.AddRange(Telling.Lines(numbered[i].Working, "    "));
            }
        }

        return text;

        void Section(string title, IEnumerable<Figure> figures)
        {
            text.Add(title);
            foreach (var figure in figures) text.AddRange(Wrap("    " + Tell(figure), "", "      "));
        }

        string Tell(Figure figure)
        {
            numbered.Add(figure);
            var number = workings ? $" [{numbered.Count.ToString(CultureInfo.InvariantCulture)}]" : "";
            var spoon = figure.Spoon is { } near ? $"; by spoon {near.InWords()}" : "";
            return $"{figure.Name}: {figure.InWords(notation)}{spoon}{number}";
        }
    }

    public static string Eyes(GasBudget eyes) => eyes.Verdict switch
    {
        EyesPossible.Likely => "Eyes are likely in a wheel of this size.",
        EyesPossible.CannotTell => "Eyes may or may not come in a wheel of this size: the error is larger than the answer.",
        _ => $"Eyes are unlikely: {Blind(eyes)}",
    };

    /// <summary>Why a wheel stays blind: its size is named only where a larger one would not.</summary>
    public static string Blind(GasBudget eyes) => eyes.SizeDecides
        ? "a wheel of this size loses its gas through the rind before it can gather. If it stays blind, that is physics and not a mistake."
        : "so little gas is made that the paste dissolves it all, and a larger wheel would be blind too. More lactic acid, or more of it turned in a longer or warmer room, is what is missing.";

    private static IEnumerable<string> Wrap(string text, string first, string rest)
    {
        var line = first + text;
        while (line.Length > Width)
        {
            var at = line.LastIndexOf(' ', Width);
            if (at <= rest.Length) break;
            yield return line[..at].TrimEnd();
            line = rest + line[(at + 1)..];
        }

        yield return line;
    }
}
