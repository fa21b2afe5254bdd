using System.Globalization;
using Trier.Trials.Plans;

namespace Trier.Trials.Verdicts.Sentences;

/// <summary>Small pieces of sentences, the same everywhere.</summary>
internal static class Phrase
{
    private const string HardSpace = "\u00A0";

    /// <summary>"A", "A and B", "A, B and C".</summary>
    public static string List(IEnumerable<string> names, string last = "and")
    {
        var all = names.ToList();
        return all.Count switch
        {
            0 => "",
            1 => all[0],
            _ => $"{string.Join(", ", all.Take(all.Count - 1))} {last} {all[^1]}",
        };
    }

    /// <summary>"Ana’s", "Ana’s and Bo’s".</summary>
    public static string Possessive(IEnumerable<string> names) => List(names.Select(n => n + "’s"));

    public static string Ballots(long count) => count == 1 ? "ballot" : "ballots";

    public static string Voices(long count) => count == 1 ? "voice" : "voices";

    public static string Verb(int subjects, string one, string many) => subjects == 1 ? one : many;

    /// <summary>A file knows samples, a trial wheels.</summary>
    public static string Wheels(TastingRecord record) => record.Head.FromFile ? "samples" : "wheels";

    public static string Wheel(TastingRecord record) => record.Head.FromFile ? "sample" : "wheel";

    /// <summary>A whole number; from 10 000 on in groups of three.</summary>
    public static string Number(long number)
    {
        var digits = number.ToString(CultureInfo.InvariantCulture);
        if (digits.Length < 5) return digits;
        for (var at = digits.Length - 3; at > 0; at -= 3) digits = digits.Insert(at, HardSpace);
        return digits;
    }

    /// <summary>A number to one decimal, without a trailing zero.</summary>
    public static string Tenths(double number) => Rounded(number).ToString("0.#", CultureInfo.InvariantCulture);

    /// <summary>"1 place", "1.2 places".</summary>
    public static string Places(double number) => Tenths(number) == "1" ? "1 place" : $"{Tenths(number)} places";

    /// <summary>Whether one gap is larger than another as both are written.</summary>
    public static bool Further(double one, double other) => Rounded(one) > Rounded(other);

    private static double Rounded(double number) => Math.Round(number, 1, MidpointRounding.AwayFromZero);

    /// <summary>"2 firsts and a shared one" is left to tables; a sentence says the share: "4", "3½", "2.33".</summary>
    public static string Count(double number)
    {
        var whole = Math.Floor(number);
        if (Math.Abs(number - whole) < 1e-9) return Number((long)whole);
        return Math.Abs(number - whole - 0.5) < 1e-9
            ? (whole > 0 ? Number((long)whole) : "") + "½"
            : number.ToString("0.##", CultureInfo.InvariantCulture);
    }

    /// <summary>What leading by the rule is called: "the best average place".</summary>
    public static string Lead(CountingRule rule) => rule switch
    {
        CountingRule.Firsts => "the most firsts",
        CountingRule.PlacePoints => "the most place points",
        CountingRule.MeanLiking => "the highest average liking",
        _ => "the best average place",
    };

    /// <summary>The rule's name: "average place".</summary>
    public static string Name(CountingRule rule) => rule switch
    {
        CountingRule.Firsts => "firsts",
        CountingRule.PlacePoints => "place points",
        CountingRule.MeanLiking => "average liking",
        _ => "average place",
    };

    /// <summary>With a capital first letter.</summary>
    public static string Capital(string text) => text.Length == 0 ? text : char.ToUpperInvariant(text[0]) + text[1..];
}
