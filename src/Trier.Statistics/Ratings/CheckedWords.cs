using System.Collections.Immutable;
using Trier.Statistics.Randomness;
using Trier.Statistics.RankTests;

namespace Trier.Statistics.Ratings;

/// <summary>What one word says about the items.</summary>
/// <param name="Word">Its number.</param>
/// <param name="Counts">Per item how many people ticked it.</param>
/// <param name="Test">Cochran's test over the people who were served every item; null where nobody ticked it for one item and not for another.</param>
/// <param name="Stands">True where the word's p by shuffle stands by Holm's steps over all words at 0.05. A hint at most: never "shown".</param>
public sealed record WordResult(int Word, ImmutableArray<int> Counts, CochranResult? Test, bool Stands);

/// <summary>
/// Words to tick: counts per item, and per word Cochran's Q with its p by shuffling within each person, stepped down by Holm over the words.
/// Sources: [Cochran1950], [Holm1979].
/// </summary>
public static class CheckedWords
{
    private const double Level = 0.05;

    /// <summary>Compares the items word by word.</summary>
    /// <param name="ticks">Per person, per item, per word whether it was ticked; null for an item the person was not served.</param>
    /// <param name="seed">Where chance comes from, if arrangements must be drawn.</param>
    /// <param name="effort">How much work a word; <see cref="Effort.Usual"/> if null.</param>
    /// <returns>Refused for no person, one item or no word.</returns>
    /// <exception cref="ArgumentException">People differ in their number of items, or items in their number of words.</exception>
    public static Answer<ImmutableArray<WordResult>> Compare(ImmutableArray<ImmutableArray<ImmutableArray<bool>?>> ticks, Seed seed, Effort? effort = null)
    {
        if (ticks.IsEmpty) return new Refusal(RefusalKind.TooFewBallots, "Nobody ticked anything.");
        var items = ticks[0].Length;
        if (items < 2) return new Refusal(RefusalKind.TooFewItems, "There is one item: nothing can be compared.");
        var served = ticks.SelectMany(person => person).OfType<ImmutableArray<bool>>().ToArray();
        var words = served.Length == 0 ? 0 : served[0].Length;
        if (words == 0) return new Refusal(RefusalKind.NoInformation, "There is no word to tick.");
        if (ticks.Any(person => person.Length != items) || served.Any(item => item.Length != words))
            throw new ArgumentException($"Every person needs {items} items, and every item served {words} words.", nameof(ticks));
        var found = Enumerable.Range(0, words).Select(word => One(ticks, word, seed.Child(word), effort)).ToArray();
        var left = found.Count(result => result.Test is not null);
        foreach (var result in found.Where(result => result.Test is not null).OrderBy(result => result.Test!.P.Value).ThenBy(result => result.Word).ToArray())
        {
            if (result.Test!.P.Value > Level / left--) break;
            found[result.Word] = result with { Stands = true };
        }

        return found.ToImmutableArray();
    }

    private static WordResult One(ImmutableArray<ImmutableArray<ImmutableArray<bool>?>> ticks, int word, Seed seed, Effort? effort)
    {
        var counts = new int[ticks[0].Length];
        foreach (var person in ticks)
        {
            for (var item = 0; item < counts.Length; item++)
            {
                if (person[item] is { } ticked && ticked[word]) counts[item]++;
            }
        }

        ImmutableArray<ImmutableArray<bool>> complete =
            [.. ticks.Where(person => person.All(item => item is not null)).Select(person => person.Select(item => item!.Value[word]).ToImmutableArray())];
        var test = CochranResult.Of(complete, seed, effort);
        return new WordResult(word, [.. counts], test.Stands ? test.Value : null, false);
    }
}
