using System.Collections.Immutable;
using Trier.Statistics.Randomness;

namespace Trier.Statistics.Designs;

/// <summary>Who gets which samples in which order, and how even that is.</summary>
/// <param name="Orders">One order per taster, in order of arrival: the plan stays even if only the first come.</param>
/// <param name="Balance">Positions and neighbours counted.</param>
/// <param name="Blocks">Who gets which items; null where everybody gets all.</param>
/// <param name="WithoutRepeat">What the same numbers reach where no two samples need be kept apart; null where none are. The difference is what the hidden repeat costs.</param>
public sealed record ServingPlan(ImmutableArray<ImmutableArray<int>> Orders, Balance Balance, BlockDesign? Blocks, Balance? WithoutRepeat)
{
    /// <summary>The average efficiency factor of the blocks; 1 where everybody gets all.</summary>
    public double Efficiency => Blocks?.Efficiency ?? 1;

    /// <summary>What keeping the repeat apart costs: by how much the counts of neighbours are less even (root mean squared deviation), 0 or more. 0 without a repeat.</summary>
    public double RepeatCost => WithoutRepeat is { } plain ? Math.Max(0, Balance.CarryOverUnevenness - plain.CarryOverUnevenness) : 0;

    /// <summary>A plan for any numbers.</summary>
    /// <param name="items">Samples, a repeat counted twice; at least 2.</param>
    /// <param name="tasters">At least 1.</param>
    /// <param name="perTaster">How many each taster gets, from 2 to <paramref name="items"/>.</param>
    /// <param name="seed">Fixes the plan.</param>
    /// <param name="repeat">Two samples of one item, never to be served next to each other; null for none.</param>
    /// <returns>Refused where two servings of a repeat cannot be kept apart.</returns>
    /// <exception cref="ArgumentException">A number is out of range, or the repeat's servings are not two of the samples.</exception>
    public static Answer<ServingPlan> For(int items, int tasters, int perTaster, Seed seed, (int A, int B)? repeat = null)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(items, 2);
        ArgumentOutOfRangeException.ThrowIfLessThan(tasters, 1);
        ArgumentOutOfRangeException.ThrowIfLessThan(perTaster, 2);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(perTaster, items);
        if (perTaster < items) return Blocked(items, tasters, perTaster, seed, repeat);
        var plain = ServingOrders.Williams(items, tasters, seed);
        if (repeat is not { } pair) return new ServingPlan(plain, Balance.Of(items, plain), null, null);
        var apart = ServingOrders.WithRepeat(items, tasters, pair.A, pair.B, seed);
        if (!apart.Stands) return apart.Refusal!;
        return new ServingPlan(apart.Value, Balance.Of(items, apart.Value), null, Balance.Of(items, plain));
    }

    private static Answer<ServingPlan> Blocked(int items, int tasters, int perTaster, Seed seed, (int A, int B)? repeat)
    {
        if (repeat is { } pair && (pair.A == pair.B || Math.Min(pair.A, pair.B) < 0 || Math.Max(pair.A, pair.B) >= items))
            throw new ArgumentException($"Samples {pair.A} and {pair.B} are not two different ones of the {items}.", nameof(repeat));
        if (repeat is not null && perTaster == 2)
            return new Refusal(RefusalKind.NotFound, "With two samples a taster the two servings of the repeat cannot be kept apart.");
        var blocks = NearBalancedBlocks.Find(items, perTaster, tasters, seed.Child("blocks"));
        var orders = BlockOrders.Of(blocks, repeat, seed.Child("orders"));
        var plain = repeat is null ? null : Balance.Of(items, BlockOrders.Of(blocks, null, seed.Child("orders")));
        return new ServingPlan(orders, Balance.Of(items, orders), blocks, plain);
    }
}
