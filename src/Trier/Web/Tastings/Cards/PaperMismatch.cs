using System.Collections.Immutable;
using System.Globalization;
using Trier.Trials.Tastings;
using Trier.Trials.Tastings.Placing;

namespace Trier.Web.Tastings.Cards;

/// <summary>One field in which two entries of one sheet differ.</summary>
/// <param name="Field">Its name in the form: "place-417".</param>
/// <param name="Sample">The code.</param>
/// <param name="What">What it is about: "place", "liking", "words".</param>
/// <param name="First">What the first entry says; "nothing" where it is empty.</param>
/// <param name="Second">What the second says.</param>
public sealed record PaperMismatch(string Field, BlindCode Sample, string What, string First, string Second)
{
    /// <summary>Every field in which two entries differ, in the order of the sheet.</summary>
    /// <param name="first">The first entry.</param>
    /// <param name="second">The second, of the same samples.</param>
    public static ImmutableArray<PaperMismatch> Of(PaperSheet first, PaperSheet second) =>
        [.. first.Lines.Zip(second.Lines).SelectMany(pair => Fields(pair.First, first).Zip(Fields(pair.Second, second), (one, other) => new PaperMismatch(one.Name, pair.First.Sample, one.What, Shown(one.Value), Shown(other.Value))))
            .Where(field => field.First != field.Second)];

    /// <summary>The sheet once every difference is settled.</summary>
    /// <param name="first">The first entry.</param>
    /// <param name="second">The second.</param>
    /// <param name="choice">For each field that differs: "second" takes the second entry, "unclear" keeps a place as unclear with both readings; anything else stays with the first.</param>
    public static PaperSheet Settle(PaperSheet first, PaperSheet second, Func<string, string> choice) =>
        first with { Lines = [.. first.Lines.Zip(second.Lines, (one, other) => Settle(one, other, name => choice($"{name}-{one.Sample}")))] };

    private static PaperLine Settle(PaperLine first, PaperLine second, Func<string, string> choice)
    {
        T Take<T>(string name, T one, T other) => choice(name) == "second" ? other : one;
        var place = choice("place") == "unclear" ? Unclear(first.Place, second.Place) : Take("place", first.Place, second.Place);
        return first with
        {
            Liking = Take("liking", first.Liking, second.Liking),
            Remark = Take("remark", first.Remark, second.Remark),
            Place = place,
            Amounts = first.Amounts.Keys.ToDictionary(property => property, property => Take($"right {property}", first.Amounts[property], second.Amounts.GetValueOrDefault(property)), StringComparer.Ordinal),
            Words = Take("words", first.Words, second.Words),
            Again = Take("again", first.Again, second.Again),
        };
    }

    // The digits of what was typed: a note after them stays with its own entry.
    private static string Unclear(string first, string second)
    {
        var readings = new[] { first, second }.Select(place => string.Concat(place.TakeWhile(char.IsAsciiDigit))).Where(digits => digits.Length > 0).Distinct(StringComparer.Ordinal).ToList();
        return readings.Count == 2 ? string.Join('/', readings) : $"{readings.FirstOrDefault()}?";
    }

    private static IEnumerable<(string Name, string What, string Value)> Fields(PaperLine line, PaperSheet sheet)
    {
        yield return ($"liking-{line.Sample}", "liking", line.Liking);
        yield return ($"place-{line.Sample}", "place", line.Place);
        yield return ($"remark-{line.Sample}", "remark", line.Remark);
        foreach (var property in sheet.Asked.Right) yield return ($"right {property}-{line.Sample}", property, line.Amounts.GetValueOrDefault(property) switch { -1 => "too little", 0 => "just right", 1 => "too much", _ => "" });
        yield return ($"words-{line.Sample}", "words", string.Join(", ", line.Words));
        yield return ($"again-{line.Sample}", "again", line.Again switch { true => "yes", false => "no", _ => "" });
    }

    private static string Shown(string value) => value.Length == 0 ? "nothing" : value;
}
