using System.Collections.Immutable;

namespace Trier.Statistics.Power;

/// <summary>People of one taste.</summary>
/// <param name="Worths">Per item its worth, above 0: such a person likes i better than j with chance w(i)/(w(i) + w(j)).</param>
/// <param name="Share">Their share of the crowd.</param>
public sealed record Taste(ImmutableArray<double> Worths, double Share);

/// <summary>
/// Where simulated panels come from: a crowd of one or several tastes, each judge ordering by Plackett and Luce's model. Source: [Plackett1975], [Luce1959].
/// </summary>
public sealed record PanelModel
{
    private PanelModel(ImmutableArray<Taste> tastes) => Tastes = tastes;

    /// <summary>The tastes, their shares summing to 1.</summary>
    public ImmutableArray<Taste> Tastes { get; }

    /// <summary>How many items.</summary>
    public int Items => Tastes[0].Worths.Length;

    /// <summary>Share of judges who order at random, 0 to 1.</summary>
    public double Noise { get; init => field = Share(value, nameof(Noise)); }

    /// <summary>Chance that two neighbours in a judge's order are tied on the ballot, 0 to 1.</summary>
    public double TieChance { get; init => field = Share(value, nameof(TieChance)); }

    /// <summary>Chance that a judge places only some, 0 to 1: then from 2 to all but one of the items, any number and any items equally likely.</summary>
    public double PartialChance { get; init => field = Share(value, nameof(PartialChance)); }

    /// <summary>How many pairs of judges compare notes: the second hands in the first one's ballot, and the two are one voice.</summary>
    public int JoinedPairs { get; init; }

    /// <summary>True where every ballot is complete, untied and a voice of its own.</summary>
    public bool IsPlain => TieChance == 0 && (PartialChance == 0 || Items == 2) && JoinedPairs == 0;

    /// <summary>A crowd of one taste.</summary>
    /// <param name="worths">At least 2, above 0 and finite.</param>
    /// <exception cref="ArgumentException">A worth is not above 0.</exception>
    public static PanelModel Of(params IEnumerable<double> worths) => Of([new Taste([.. worths], 1)]);

    /// <summary>A crowd of several tastes.</summary>
    /// <param name="tastes">At least one, about the same items; the shares are divided by their sum.</param>
    /// <exception cref="ArgumentException">A worth or share is not above 0, or the tastes are about different numbers of items.</exception>
    public static PanelModel Of(ImmutableArray<Taste> tastes)
    {
        if (tastes.IsDefaultOrEmpty) throw new ArgumentException("There is no taste.", nameof(tastes));
        foreach (var taste in tastes)
        {
            if (taste.Worths.Length < 2 || taste.Worths.Length != tastes[0].Worths.Length) throw new ArgumentException("The tastes need the same number of items, at least 2.", nameof(tastes));
            if (!taste.Worths.All(worth => worth > 0 && double.IsFinite(worth))) throw new ArgumentException("Worths must be above 0 and finite.", nameof(tastes));
            if (!(taste.Share > 0 && double.IsFinite(taste.Share))) throw new ArgumentException("Shares must be above 0 and finite.", nameof(tastes));
        }

        var sum = tastes.Sum(taste => taste.Share);
        return new PanelModel([.. tastes.Select(taste => taste with { Share = taste.Share / sum })]);
    }

    /// <summary>One favourite among equals: worths t, 1, ..., 1.</summary>
    /// <param name="items">At least 2.</param>
    /// <param name="ratio">t, above 0.</param>
    public static PanelModel Favourite(int items, double ratio) => Of(Enumerable.Range(0, items).Select(i => i == 0 ? ratio : 1.0));

    /// <summary>
    /// Per item the crowd's average place, mu(j) = 1 + sum over i of the chance that a random judge puts i above j; noise draws all towards the middle. Ties change no chance, halves counted.
    /// </summary>
    public ImmutableArray<double> AveragePlaces()
    {
        var k = Items;
        var places = new double[k];
        Array.Fill(places, Noise * (k + 1) / 2);
        foreach (var (worths, share) in Tastes)
        {
            for (var j = 0; j < k; j++)
            {
                places[j] += (1 - Noise) * share;
                for (var i = 0; i < k; i++)
                {
                    if (i != j) places[j] += (1 - Noise) * share * worths[i] / (worths[i] + worths[j]);
                }
            }
        }

        return [.. places];
    }

    private static double Share(double value, string name) =>
        value is >= 0 and <= 1 ? value : throw new ArgumentOutOfRangeException(name, value, "A chance lies between 0 and 1.");
}
