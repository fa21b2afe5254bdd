namespace Trier.Publishing.Drawings;

/// <summary>The colours of paper, ink and cheese; there are no others.</summary>
public enum Tone
{
    Paper,
    Sheet,
    Cloth,
    Ink,
    Pencil,
    Line,
    Hair,
    Stamp,
    Butter,
    River,
    Crust,
    Ash,
    Plum,
    Bark,
    Curd,
    Soot,
}

/// <summary>What a tone is on paper and on a page.</summary>
public static class Tones
{
    /// <summary>A wheel's tone by its number.</summary>
    /// <param name="number">1 butter to 8 soot.</param>
    public static Tone OfWheel(int number) => Tone.Butter + (number - 1);

    /// <summary>The ink that reads on a wheel's tone: contrast of 4.8 or more.</summary>
    /// <param name="tone">A wheel's tone.</param>
    public static Tone InkOn(Tone tone) => tone is Tone.River or Tone.Plum or Tone.Bark or Tone.Soot ? Tone.Sheet : Tone.Ink;

    /// <summary>Red, green and blue in one number.</summary>
    /// <param name="tone">The tone.</param>
    public static int Rgb(Tone tone) => tone switch
    {
        Tone.Paper => 0xF6F2E4,
        Tone.Sheet => 0xFFFEF8,
        Tone.Cloth => 0xE8E4CF,
        Tone.Ink or Tone.Soot => 0x1B1A14,
        Tone.Pencil => 0x575240,
        Tone.Line => 0x7F7860,
        Tone.Hair => 0xCDC8B0,
        Tone.Stamp => 0x48307F,
        Tone.Butter => 0xECCB6A,
        Tone.River => 0x2C5A7A,
        Tone.Crust => 0xC8964E,
        Tone.Ash => 0xB4BCC0,
        Tone.Plum => 0x7C6B86,
        Tone.Bark => 0x4A321C,
        Tone.Curd => 0xFBF4DC,
        _ => throw new ArgumentOutOfRangeException(nameof(tone), tone, "There is no such tone."),
    };

    /// <summary>As a style sheet writes it: "#1B1A14".</summary>
    /// <param name="tone">The tone.</param>
    public static string Hex(Tone tone) => $"#{Rgb(tone):X6}";

    /// <summary>As a page of the site names it, so that a page that turns dark takes its drawings along: "var(--ink)".</summary>
    /// <param name="tone">The tone.</param>
    public static string Variable(Tone tone) => tone >= Tone.Butter ? $"var(--tone-{tone - Tone.Butter + 1})" : $"var(--{tone.ToString().ToLowerInvariant()})";
}
