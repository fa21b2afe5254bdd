using Trier.Trials.Verdicts.Findings;

namespace Trier.Trials.Verdicts.Sentences;

/// <summary>Camps by what tasters said before tasting.</summary>
internal static class CampSentences
{
    /// <summary>What is shown of the camps; null where they are not parted or were not tested.</summary>
    public static string? Parted(Verdict verdict)
    {
        if (verdict.Deep?.Camps is not { Parted: true } camps) return null;
        var over = camps.Wheels.Where(wheel => wheel.Shown).ToList();
        var people = $"Shown: people who like milder cheese ({Phrase.Number(camps.Milder)} {Phrase.Voices(camps.Milder)}) and people who like stronger cheese ({Phrase.Number(camps.Stronger)}) parted";
        var luck = $"had they said it at random, the two would lie this far apart {Chance.OneIn(camps.P.Value)}";
        if (over.Count == 0) return $"{people}, though over which {Phrase.Wheel(verdict.Record)} is open; {luck}.";
        var places = over.Select(wheel => $"{Naming.Of(verdict, wheel.Id)} at {Phrase.Tenths(wheel.Milder!.Value)} against {Phrase.Tenths(wheel.Stronger!.Value)}");
        return $"{people} over {Phrase.List(over.Select(wheel => Naming.Of(verdict, wheel.Id)))}: average places {string.Join(", ", places)}; {luck}.";
    }

    /// <summary>The headline form, without numbers of the test.</summary>
    public static string? Headline(Verdict verdict)
    {
        if (verdict.Deep?.Camps is not { Parted: true } camps) return null;
        var over = camps.Wheels.Where(wheel => wheel.Shown).Select(wheel => Naming.Of(verdict, wheel.Id)).ToList();
        return over.Count == 0
            ? "People who like milder and people who like stronger cheese parted here."
            : $"People who like milder and people who like stronger cheese parted over {Phrase.List(over)}.";
    }

    /// <summary>What is said where camps were tested and are not parted.</summary>
    public static string? NotParted(Verdict verdict) =>
        verdict.Deep?.Camps is { Parted: false } camps
            ? $"By what people had said they like ({Phrase.Number(camps.Milder)} milder, {Phrase.Number(camps.Stronger)} stronger) the ballots part no further than luck does {Chance.TimesInTen(camps.P.Value)}."
            : null;
}
