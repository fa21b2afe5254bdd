using System.Collections.Immutable;
using Trier.Statistics.ChoiceModels;
using Trier.Statistics.Randomness;
using Trier.Trials.Common;

namespace Trier.Trials.Verdicts.Together;

/// <summary>Recipes that ballots join, and what they say together.</summary>
/// <param name="Recipes">Their names.</param>
/// <param name="Wheels">Their wheels.</param>
/// <param name="Posterior">By the model; null with one recipe alone, or where it could not be sampled.</param>
public sealed record TogetherPiece(ImmutableArray<string> Recipes, ImmutableArray<TogetherWheel> Wheels, AcrossPosterior? Posterior);

/// <summary>One wheel of a piece, by the posterior's numbers.</summary>
/// <param name="Wheel">Which wheel.</param>
/// <param name="Name">What it is called.</param>
public sealed record TogetherWheel(WheelId Wheel, string Name);

/// <summary>Several tastings put together: worked out once and kept.</summary>
/// <param name="Tastings">How many tastings.</param>
/// <param name="People">How many voices: a person counts once over all of them.</param>
/// <param name="Ballots">How many ballots place two wheels or more.</param>
/// <param name="Pieces">What ballots join; several pieces are not compared with each other.</param>
public sealed record TogetherFindings(int Tastings, int People, long Ballots, ImmutableArray<TogetherPiece> Pieces)
{
    /// <summary>Changes whenever the same tastings could get another figure.</summary>
    public const string MethodsVersion = "1";

    /// <summary>Where chance comes from.</summary>
    public static Seed Seed { get; } = new(417_862);

    /// <summary>Puts tastings together.</summary>
    /// <param name="held">At least one, in the order they were held.</param>
    /// <param name="effort">How long to sample; the usual if null.</param>
    /// <param name="progress">Told the share done; null for nobody.</param>
    /// <param name="cancellation">Stops between two pieces.</param>
    /// <exception cref="OperationCanceledException">It was stopped.</exception>
    public static TogetherFindings Of(IReadOnlyList<HeldTasting> held, SamplingEffort? effort, Action<double>? progress, CancellationToken cancellation)
    {
        ArgumentNullException.ThrowIfNull(held);
        var pool = Pooling.Of(held);
        if (pool.Items.IsEmpty) return new(held.Count, 0, 0, []);
        var pieces = ImmutableArray.CreateBuilder<TogetherPiece>();
        var found = AcrossTastings.Pieces(pool.Items, pool.Ballots);
        foreach (var (piece, i) in found.Select((piece, i) => (piece, i)))
        {
            cancellation.ThrowIfCancellationRequested();
            pieces.Add(Piece(pool, piece, effort));
            progress?.Invoke((i + 1) / (double)found.Length);
        }

        return new(held.Count, pool.People, pool.Ballots.Ballots, pieces.ToImmutable());
    }

    private static TogetherPiece Piece(Pooling pool, ImmutableArray<int> recipes, SamplingEffort? effort)
    {
        int[] items = [.. Enumerable.Range(0, pool.Items.Length).Where(item => recipes.Contains(pool.Items[item].Recipe))];
        ImmutableArray<int> wheels = [.. items.Select(item => pool.Items[item].Wheel).Distinct().Order()];
        ImmutableArray<TogetherWheel> named = [.. wheels.Select(wheel => new TogetherWheel(pool.Wheels[wheel].Id, pool.Wheels[wheel].Name))];
        ImmutableArray<string> names = [.. recipes.Select(recipe => pool.Recipes[recipe])];
        if (recipes.Length < 2) return new(names, named, null);
        ImmutableArray<Served> served = [.. items.Select(item => new Served(recipes.IndexOf(pool.Items[item].Recipe), wheels.IndexOf(pool.Items[item].Wheel), pool.Items[item].AgeDays) { Make = pool.Items[item].Make })];
        var sampled = AcrossTastings.Sample(served, pool.Ballots.Restrict(items), Seed.Child(recipes[0]), effort);
        return new(names, named, sampled.Stands ? sampled.Value : null);
    }
}
