using System.Collections.Immutable;
using System.Globalization;
using System.Text.RegularExpressions;
using Trier.Trials.Common;
using Trier.Trials.Makes.Recipes;

namespace Trier.Publishing.Recipes;

/// <summary>Guesses a step from a sentence of somebody else's recipe: its kind from the verb, temperature, time and pH from their units.</summary>
internal static partial class RecipeGuess
{
    public const int MostSteps = 60;

    // The first word that is found decides, so the more telling ones stand first.
    private static readonly (string Words, StepKind Kind)[] Verbs =
    [
        ("rennet|coagula|floccul", StepKind.Renneting), ("brine", StepKind.Brine), ("salt", StepKind.Salt), ("press", StepKind.Press),
        ("mould|mold|hoop|form", StepKind.Hoop), ("cut|mill", StepKind.Cut), ("turn|flip|cheddar", StepKind.Turn), ("drain|whey off|draw", StepKind.Drain),
        ("culture|starter|calcium|lipase|add", StepKind.Add), ("ripen|inocul", StepKind.Ripen), ("cook|scald", StepKind.Cook), ("stir", StepKind.Stir),
        ("settle|pitch", StepKind.Settle), ("dry", StepKind.Dry), ("heat|warm", StepKind.Heat),
    ];

    public static StepDraft Step(string text, int number, List<Problem> notes)
    {
        var path = string.Create(CultureInfo.InvariantCulture, $"steps[{number}]");
        var kind = Verbs.Where(verb => Regex.IsMatch(text, $@"\b(?:{verb.Words})", RegexOptions.IgnoreCase, TimeSpan.FromSeconds(1))).Select(verb => (StepKind?)verb.Kind).FirstOrDefault();
        if (kind is null) notes.Add(new($"{path}.kind", $"“{Short(text)}”: no kind of step was recognised; it was taken as stirring."));
        var shape = StepShape.Of(kind ?? StepKind.Stir);
        var aims = new List<AimDraft>();
        Take(Target.Celsius, Celsius(text));
        Take(Target.Minutes, Minutes(text));
        Take(Target.Ph, Number(Acidity().Match(text)));
        foreach (var missing in shape.Where(wanted => wanted.Required && aims.All(aim => aim.Key != wanted.Target.Key)))
            notes.Add(new($"{path}.{missing.Target.Key}", $"“{Short(text)}”: {missing.Target.Field.Name.ToLowerInvariant()} was not found; give it."));
        return new StepDraft { Kind = (kind ?? StepKind.Stir).Key(), Note = text.Length > 2000 ? text[..2000] : text, Aims = [.. aims] };

        void Take(Target target, double? value)
        {
            if (value is { } found && shape.Any(wanted => wanted.Target == target)) aims.Add(new(target.Key, Math.Round(found, 2)));
        }
    }

    private static double? Celsius(string text)
    {
        if (Number(InCelsius().Match(text)) is { } celsius) return celsius;
        return Number(InFahrenheit().Match(text)) is { } fahrenheit ? (fahrenheit - 32) * 5 / 9 : null;
    }

    private static double? Minutes(string text)
    {
        if (Number(InMinutes().Match(text)) is { } minutes) return minutes;
        if (Number(InHours().Match(text)) is { } hours) return hours * 60;
        return Number(InDays().Match(text)) is { } days ? days * 1440 : null;
    }

    private static double? Number(Match match) =>
        match.Success && double.TryParse(match.Groups["n"].Value.Replace(',', '.'), NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out var number) ? number : null;

    private static string Short(string text) => text.Length <= 60 ? text : text[..57] + "...";

    [GeneratedRegex(@"(?<n>\d+(?:[.,]\d+)?)\s*(?:°\s*C|degrees?\s+C(?:elsius)?|C)\b", RegexOptions.IgnoreCase | RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex InCelsius();

    [GeneratedRegex(@"(?<n>\d+(?:[.,]\d+)?)\s*(?:°\s*F|degrees?\s+F(?:ahrenheit)?|F)\b", RegexOptions.IgnoreCase | RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex InFahrenheit();

    [GeneratedRegex(@"(?<n>\d+(?:[.,]\d+)?)\s*min(?:ute)?s?\b", RegexOptions.IgnoreCase | RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex InMinutes();

    [GeneratedRegex(@"(?<n>\d+(?:[.,]\d+)?)\s*h(?:ou)?rs?\b", RegexOptions.IgnoreCase | RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex InHours();

    [GeneratedRegex(@"(?<n>\d+(?:[.,]\d+)?)\s*days?\b", RegexOptions.IgnoreCase | RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex InDays();

    [GeneratedRegex(@"\bpH\s*(?:of|is|at|=|to)?\s*(?<n>\d+(?:[.,]\d+)?)", RegexOptions.IgnoreCase | RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex Acidity();
}
