using System.Collections.Immutable;

namespace Trier.Statistics.Designs;

/// <summary>What differs between units: one level per unit.</summary>
/// <param name="Name">What it is called.</param>
/// <param name="Levels">Per unit its level; null where it is not known.</param>
public sealed record Factor(string Name, ImmutableArray<string?> Levels);

/// <summary>How far two factors can be told apart.</summary>
public enum Telling
{
    /// <summary>The factor has one level: nothing differs.</summary>
    Same,

    /// <summary>The effects of the two can be separated.</summary>
    Apart,

    /// <summary>They can be separated, but no unit is left over to say how far off the answer is: only if nothing else differs.</summary>
    Saturated,

    /// <summary>Some differences of the one are differences of the other as well: the two move together.</summary>
    Together,
}

/// <summary>One factor held against the one in question.</summary>
/// <param name="Factor">Its name.</param>
/// <param name="Telling">Whether the two can be told apart.</param>
/// <param name="Shared">How many independent comparisons of the factor are also comparisons of the one in question; 0 where they can be told apart.</param>
/// <param name="Groups">
/// The groups of units within which both can be compared: where there is more than one, nothing ties the groups together and a difference between them may come from either factor. Units in rising order; those with an unknown level are left out.
/// </param>
/// <param name="LeftOver">Units beyond those that the main effects of both use up.</param>
public sealed record Aliased(string Factor, Telling Telling, int Shared, ImmutableArray<ImmutableArray<int>> Groups, int LeftOver);

/// <summary>
/// Which factors can be told apart by which units there are. X holds the main effects of the two factors; where rank(X) = rank of the one in question + levels - 1 they can be told apart. For two factors
/// the rank is levels + levels - pieces, the pieces being those of the graph that joins a level of the one to a level of the other wherever a unit has both. Source: [Searle1987], on connectedness.
/// </summary>
public static class Aliasing
{
    /// <summary>Above this variance inflation a number nearly moves together with a factor.</summary>
    public const double NearlyTogether = 10;

    /// <summary>Holds factors one by one against the one in question.</summary>
    /// <param name="question">The factor in question, every level known.</param>
    /// <param name="others">The others, about the same units.</param>
    /// <returns>In the order given.</returns>
    /// <exception cref="ArgumentException">A factor is about another number of units, or a level of the one in question is unknown.</exception>
    public static ImmutableArray<Aliased> Of(Factor question, IEnumerable<Factor> others)
    {
        ArgumentNullException.ThrowIfNull(question);
        ArgumentNullException.ThrowIfNull(others);
        if (question.Levels.Any(level => level is null)) throw new ArgumentException($"A unit's level of {question.Name} is unknown.", nameof(question));
        return [.. others.Select(other => One(question, other))];
    }

    /// <summary>Which factors can be told from all the others at once, not only two by two.</summary>
    /// <param name="factors">All about the same units, every level known.</param>
    /// <returns>
    /// Per factor how many of its levels - 1 comparisons all the others together already hold, and how many units are left over beyond all main effects.
    /// </returns>
    public static (ImmutableArray<int> Shared, int LeftOver) AllAtOnce(ImmutableArray<Factor> factors)
    {
        if (factors.IsEmpty) throw new ArgumentException("There is no factor.", nameof(factors));
        if (factors.Any(factor => factor.Levels.Length != factors[0].Levels.Length)) throw new ArgumentException("The factors are not about the same units.", nameof(factors));
        if (factors.Any(factor => factor.Levels.Any(level => level is null))) throw new ArgumentException("A unit's level is unknown.", nameof(factors));
        var whole = MainEffects.Rank(factors);
        var shared = factors.Select((factor, i) => Levels(factor) - 1 - (whole - MainEffects.Rank(factors.RemoveAt(i), factors[0].Levels.Length)));
        return ([.. shared], factors[0].Levels.Length - whole);
    }

    /// <summary>
    /// Variance inflation of a number beside a factor: 1/(1 - R^2), R^2 the share of the number's variance that lies between the factor's levels. At least 1; infinite where the number is the same within every level; 1 where it is
    /// the same for all.
    /// </summary>
    /// <param name="question">The factor, every level known.</param>
    /// <param name="numbers">Per unit a finite number, such as an age in days.</param>
    public static double VarianceInflation(Factor question, ImmutableArray<double> numbers)
    {
        ArgumentNullException.ThrowIfNull(question);
        if (numbers.Length != question.Levels.Length) throw new ArgumentException($"There are {numbers.Length} numbers for {question.Levels.Length} units.", nameof(numbers));
        if (question.Levels.Any(level => level is null)) throw new ArgumentException($"A unit's level of {question.Name} is unknown.", nameof(question));
        if (numbers.IsEmpty) return 1;
        var mean = numbers.Average();
        var total = numbers.Sum(x => (x - mean) * (x - mean));
        var within = question.Levels.Zip(numbers).GroupBy(unit => unit.First, unit => unit.Second).Sum(level => level.Sum(x => Math.Pow(x - level.Average(), 2)));
        if (total <= 1e-12 * Math.Max(1, mean * mean)) return 1;
        return within <= 1e-12 * total ? double.PositiveInfinity : total / within;
    }

    private static Aliased One(Factor question, Factor other)
    {
        if (other.Levels.Length != question.Levels.Length)
            throw new ArgumentException($"{other.Name} is about {other.Levels.Length} units, {question.Name} about {question.Levels.Length}.", nameof(other));
        var units = Enumerable.Range(0, other.Levels.Length).Where(unit => other.Levels[unit] is not null).ToImmutableArray();
        var groups = Pieces(question, other, units);
        var levels = units.Select(unit => other.Levels[unit]).Distinct(StringComparer.Ordinal).Count();
        var asked = units.Select(unit => question.Levels[unit]).Distinct(StringComparer.Ordinal).Count();
        var shared = Math.Max(0, groups.Length - 1);
        var leftOver = units.Length - (asked + levels - groups.Length);
        var telling = levels <= 1 ? Telling.Same : shared > 0 ? Telling.Together : leftOver == 0 ? Telling.Saturated : Telling.Apart;
        return new Aliased(other.Name, telling, shared, groups, leftOver);
    }

    private static ImmutableArray<ImmutableArray<int>> Pieces(Factor question, Factor other, ImmutableArray<int> units)
    {
        var piece = new Dictionary<int, int>();
        foreach (var start in units)
        {
            if (piece.ContainsKey(start)) continue;
            var reach = new Stack<int>([start]);
            piece[start] = start;
            while (reach.TryPop(out var unit))
            {
                foreach (var next in units)
                {
                    if (piece.ContainsKey(next) || (question.Levels[next] != question.Levels[unit] && other.Levels[next] != other.Levels[unit])) continue;
                    piece[next] = start;
                    reach.Push(next);
                }
            }
        }

        return [.. piece.GroupBy(entry => entry.Value, entry => entry.Key).OrderBy(group => group.Key).Select(group => group.Order().ToImmutableArray())];
    }

    private static int Levels(Factor factor) => factor.Levels.Distinct(StringComparer.Ordinal).Count();
}
