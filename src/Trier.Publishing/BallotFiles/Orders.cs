using System.Collections.Immutable;
using System.Globalization;
using Trier.Trials.Tastings;

namespace Trier.Publishing.BallotFiles;

/// <summary>One order with the number of ballots that say so.</summary>
internal readonly record struct CountedOrder(int Line, int Count, ImmutableArray<ImmutableArray<string>> Groups);

/// <summary>Turns counted orders into ballots, one for each count.</summary>
internal static class Orders
{
    /// <summary>Most ballots a file may hold; more than any tasting and a guard against a slip in a count.</summary>
    public const int MostBallots = 100_000;

    public static int? Count(string text, int line, Faults faults)
    {
        if (int.TryParse(text, NumberStyles.None, CultureInfo.InvariantCulture, out var count) && count is >= 1 and <= MostBallots) return count;
        faults.AtLine(line, "count", string.Create(CultureInfo.InvariantCulture, $"{Faults.Quote(text)} is no whole number from 1 to {MostBallots}; write how many ballots have this order."));
        return null;
    }

    /// <summary>Adds a fault for every code that an order names twice.</summary>
    public static void CheckTwice(CountedOrder order, Faults faults)
    {
        var seen = new HashSet<string>(StringComparer.Ordinal);
        foreach (var code in order.Groups.SelectMany(g => g))
        {
            if (!seen.Add(code)) faults.AtLine(order.Line, "order", $"{Faults.Quote(code)} stands twice; each sample has one place.");
        }
    }

    public static ParsedBallots Expand(ImmutableArray<string> codes, IReadOnlyList<CountedOrder> orders, Faults faults)
    {
        var total = orders.Sum(o => (long)o.Count);
        if (total > MostBallots)
            faults.Add("count", string.Create(CultureInfo.InvariantCulture, $"The counts sum to {total} ballots; a file may hold {MostBallots}."));
        if (faults.Any) return new(codes, [], []);
        var ballots = ImmutableArray.CreateBuilder<ParsedBallot>((int)total);
        foreach (var order in orders)
        {
            for (var i = 0; i < order.Count; i++)
            {
                var name = (ballots.Count + 1).ToString("D6", CultureInfo.InvariantCulture);
                ballots.Add(new(name, order.Groups, codes, [], ImmutableSortedDictionary<string, SampleAnswer>.Empty));
            }
        }

        return new(codes, ballots.MoveToImmutable(), []);
    }
}
