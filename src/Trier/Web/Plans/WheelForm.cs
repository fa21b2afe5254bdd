using System.Globalization;
using Trier.Trials.Common;
using Trier.Trials.Makes;
using Trier.Web.Hosting;

namespace Trier.Web.Plans;

/// <summary>Reads the facts of a wheel from a form, and says how each is asked for.</summary>
internal static class WheelForm
{
    /// <summary>What the fields are called on the page, with those of withdrawing.</summary>
    public static IReadOnlyDictionary<string, string> Labels { get; } = WheelFacts.Asked.Select(fact => KeyValuePair.Create(fact.Replace(' ', '-'), Words(fact).Label))
        .Append(new("reason", "Why")).Append(new("by", "Who decided")).ToDictionary(StringComparer.Ordinal);

    /// <summary>Label and hint of a fact that is asked for.</summary>
    public static (string Label, string Hint) Words(string fact) => fact switch
    {
        WheelFacts.RecipeFact => ("Recipe", "wheels of one recipe share a shape in every picture"),
        WheelFacts.MadeFact => ("Made on", "day/month/year"),
        WheelFacts.MilkFact => ("Milk", "animal and amount: sheep’s, 10 litres"),
        WheelFacts.HeatTreatmentFact => ("Heat treatment of the milk", "raw, thermised or pasteurised: guests are told"),
        WheelFacts.CoagulantFact => ("Coagulant", "what set the milk: calf, cardoon, microbial"),
        WheelFacts.RindFact => ("Rind", "natural, washed, waxed; leave empty where all are alike"),
        WheelFacts.CaveFact => ("Cave", "where it aged"),
        WheelFacts.AdditivesFact => ("Additives", "lysozyme, colour, preservative: guests are told"),
        WheelFacts.AllergensFact => ("Allergens besides milk", "such as egg (lysozyme is made from egg white); commas between"),
        WheelFacts.SizeFact => ("Weight and size", "1,57 kg"),
        WheelFacts.NotesFact => ("Notes", "never shown to guests before the key is opened"),
        _ => (fact, ""),
    };

    /// <summary>Reads the facts a form asks for; facts it does not ask for, such as those a make wrote, stay as they stand.</summary>
    public static Outcome<WheelFacts> Facts(Posted posted, WheelFacts? stands = null)
    {
        var problems = new List<Problem>();
        var made = Dates.Parse(posted.Text(WheelFacts.MadeFact), WheelFacts.MadeFact, problems);
        if (problems.Count > 0) return Outcome.Fault<WheelFacts>(problems);
        var values = WheelFacts.Asked
            .Where(fact => fact != WheelFacts.MadeFact)
            .Select(fact => new KeyValuePair<string, string?>(fact, posted.Optional(fact)))
            .Append(new(WheelFacts.MadeFact, made?.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture)))
            .Concat((stands ?? WheelFacts.None).Values.Where(fact => !WheelFacts.Asked.Contains(fact.Key)).Select(fact => new KeyValuePair<string, string?>(fact.Key, fact.Value)));
        return Outcome.Of(WheelFacts.Of(values));
    }

    public static string? Value(WheelFacts facts, string fact) => fact == WheelFacts.MadeFact && facts.MadeOn is { } day ? Dates.Write(day) : facts[fact];
}
