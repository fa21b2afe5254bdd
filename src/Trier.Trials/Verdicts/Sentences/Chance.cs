namespace Trier.Trials.Verdicts.Sentences;

/// <summary>Chances in words of times, never in percent.</summary>
internal static class Chance
{
    /// <summary>"about 1 time in 26". The same words on either side of a threshold.</summary>
    public static string OneIn(double p)
    {
        if (p < 1e-6) return "less than 1 time in a million";
        var times = 1 / p;
        if (times > 100)
        {
            var unit = Math.Pow(10, Math.Floor(Math.Log10(times)) - 1);
            times = Math.Round(times / unit) * unit;
        }

        return $"about 1 time in {Phrase.Number((long)Math.Round(times, MidpointRounding.AwayFromZero))}";
    }

    /// <summary>"about 5 times in 10"; up to 1 in 5 as one in so many, the finer words.</summary>
    public static string TimesInTen(double p)
    {
        if (p <= 0.2) return OneIn(p);
        if (p >= 0.95) return "nearly always";
        return $"about {Phrase.Number((int)Math.Round(10 * p, MidpointRounding.AwayFromZero))} times in 10";
    }
}
