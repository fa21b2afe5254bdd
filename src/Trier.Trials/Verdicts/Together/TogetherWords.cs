using System.Collections.Immutable;
using System.Globalization;
using Trier.Statistics.Distributions;
using Trier.Trials.Verdicts.Sentences;

namespace Trier.Trials.Verdicts.Together;

/// <summary>Several tastings in words: odds by one stated model, never "shown".</summary>
public static class TogetherWords
{
    // |u - v| of two wheels of one recipe is 0.954 tau in the middle: the median of a half-normal is 0.6745 of its scale, the scale here tau times the root of two.
    private const double TypicalGap = 0.9539;

    /// <summary>What was put together, and what cannot be.</summary>
    /// <param name="findings">What was found.</param>
    public static ImmutableArray<string> All(TogetherFindings findings)
    {
        ArgumentNullException.ThrowIfNull(findings);
        var sentences = ImmutableArray.CreateBuilder<string>();
        sentences.Add($"{Phrase.Number(findings.Tastings)} {(findings.Tastings == 1 ? "tasting" : "tastings")}, {Phrase.Number(findings.Ballots)} {Phrase.Ballots(findings.Ballots)} by {Phrase.Number(findings.People)} {Phrase.Voices(findings.People)}: whoever came twice, told by name, is one voice.");
        if (findings.Pieces.Length > 1)
            sentences.Add($"No ballot joins {string.Join(", nor ", findings.Pieces.Select(piece => Phrase.List(piece.Recipes)))}: they are not compared with each other. A recipe served in both, or one cheese served at every tasting, would join them.");
        return sentences.ToImmutable();
    }

    /// <summary>What one piece says.</summary>
    /// <param name="piece">The piece.</param>
    public static ImmutableArray<string> Of(TogetherPiece piece)
    {
        ArgumentNullException.ThrowIfNull(piece);
        var sentences = ImmutableArray.CreateBuilder<string>();
        if (piece.Posterior is not { } found)
        {
            sentences.Add(piece.Recipes.Length == 1 ? $"{piece.Recipes[0]} met no other recipe: there is nothing to compare it with." : "The odds could not be worked out for these.");
            return sentences.ToImmutable();
        }

        if (!found.Mixed)
        {
            sentences.Add("The draws did not settle for these, so no odds are told.");
            return sentences.ToImmutable();
        }

        var able = piece.Recipes.Zip(found.Recipes, (name, recipe) => (Name: name, Recipe: recipe)).Where(pair => pair.Recipe.ChanceBest is not null).OrderByDescending(pair => pair.Recipe.ChanceBest).ToList();
        if (able.Count > 0)
        {
            var best = able[0];
            sentences.Add($"Of the {Phrase.Number(able.Count)} recipes with two makes or more, {best.Name} is the best bet, {ChanceSentence.Tenths(best.Recipe.ChanceBest!.Value)}, at one age for all; a blind guess is right 1 time in {Phrase.Number(able.Count)}.");
            sentences.Add($"That the next make of {best.Name} is liked above the next of the others has odds of {ChanceSentence.Tenths(best.Recipe.ChanceNext!.Value)}: makes stray.");
        }
        else
        {
            sentences.Add("Fewer than two recipes have two makes, so no recipe is called better: what follows is told of wheels.");
        }

        ImmutableArray<string> lone = [.. piece.Recipes.Zip(found.Recipes).Where(pair => pair.Second.Makes == 1).Select(pair => pair.First)];
        if (!lone.IsEmpty) sentences.Add($"Of {Phrase.List(lone)} there is one make {(lone.Length == 1 ? "" : "each ")}so far: its wheels are told, the recipe is not.");
        sentences.Add($"Two makes of one recipe typically stand about {Phrase.Tenths(Math.Exp(TypicalGap * found.WheelSpread))} to 1 in what people prefer (in 90 of 100 draws between {Phrase.Tenths(Math.Exp(TypicalGap * found.WheelSpreadInterval.Low))} and {Phrase.Tenths(Math.Exp(TypicalGap * found.WheelSpreadInterval.High))} to 1).");
        if (found is { AgePer30Days: { } slope, AgeInterval: { } age }) sentences.Add(Age(slope, age));
        sentences.Add("These are odds by one stated model over what was taken beforehand: a guide for the vat, and no proof.");
        return sentences.ToImmutable();
    }

    private static string Age(double slope, Interval age)
    {
        var (low, high) = (Hundredths(Math.Exp(age.Low)), Hundredths(Math.Exp(age.High)));
        return age.Low > 0 || age.High < 0
            ? $"Thirty days more seem to make a wheel {(slope > 0 ? "more" : "less")} liked: about {Hundredths(Math.Exp(Math.Abs(slope)))} to 1, if age works in a straight line. What else goes with age goes with it here."
            : $"What age does is open: for thirty days more the odds of being preferred change by a factor between {low} and {high}.";
    }

    private static string Hundredths(double number) => number.ToString("0.##", CultureInfo.InvariantCulture);
}
