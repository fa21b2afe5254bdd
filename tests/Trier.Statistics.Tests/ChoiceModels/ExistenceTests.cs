using System.Collections.Immutable;
using CsCheck;
using Trier.Statistics.ChoiceModels;
using Trier.Statistics.Rankings;

namespace Trier.Statistics.Tests.ChoiceModels;

/// <summary>
/// A fit is refused where and only where the estimate runs away. The slow second way: the same equations with the finest of ghost comparisons, whose estimate stays within bounds as the ghosts fade where a finite one exists, and
/// grows without end where none does.
/// </summary>
public sealed class ExistenceTests
{
    private static readonly (int A, int B)[] Ordered = [(0, 1), (1, 2), (0, 2), (1, 0), (2, 1), (2, 0)];

    private static readonly Gen<(ImmutableArray<PairCount> Rows, bool Order)> Tables =
        from counts in Gen.Int[0, 2].Array[3].Array[6]
        from order in Gen.Bool
        from ties in Gen.Bool
        select (ImmutableArray.CreateRange(counts.Select((c, r) => new PairCount(
            Ordered[r].A, Ordered[r].B, c[0], c[1], ties ? c[2] : 0))), order);

    [Fact]
    public void Paired_comparisons_are_fitted_where_and_only_where_the_estimate_is_finite() =>
        Tables.Sample(
            table =>
            {
                var answer = BradleyTerry.Fit(3, table.Rows, TieModel.Davidson, table.Order);
                if (answer.Stands)
                {
                    Assert.True(answer.Value.StandardErrors.Max() < 50, "A large number was printed.");
                    Assert.True(answer.Value.LargestResidual < 1e-6);
                    return;
                }

                Assert.NotEqual(RefusalKind.NotConverged, answer.Refusal!.Kind);
                if (answer.Refusal.Kind != RefusalKind.Separated) return;

                // Where ghosts alone make it finite, the estimate must grow as they fade: by the log of the ratio of ghosts, and no slower than half of it.
                var (thick, thin) = (BradleyTerry.Fit(3, table.Rows, TieModel.Davidson, table.Order, 1e-2), BradleyTerry.Fit(3, table.Rows, TieModel.Davidson, table.Order, 1e-4));
                if (!thick.Stands || !thin.Stands) return;
                Assert.True(Spread(thin.Value) > Spread(thick.Value) + (Math.Log(100) / 4), $"{Spread(thick.Value)} {Spread(thin.Value)}");
            },
            iter: 3_000, threads: 1);

    [Fact]
    public void Orders_are_fitted_where_and_only_where_the_estimate_is_finite() =>
        (from places in Gen.Int[0, 3].Array[4].Array[1, 8] select RankingSet.Create(places.Select(row => Ranking.FromPlaces([.. row.Select(place => place == 0 ? (double?)null : place)]))))
        .Sample(
            set =>
            {
                var answer = PlackettLuce.Fit(set);
                if (answer.Stands)
                {
                    Assert.True(answer.Value.StandardErrors.Max() < 50, "A large number was printed.");
                    return;
                }

                Assert.NotEqual(RefusalKind.NotConverged, answer.Refusal!.Kind);
                if (answer.Refusal.Kind != RefusalKind.Separated) return;
                double Width(double ghosts)
                {
                    var worths = PlackettLuce.Fit(set, ghosts).Value.LogWorths;
                    return worths.Max() - worths.Min();
                }

                Assert.True(Width(1e-4) > Width(1e-2) + 1, $"{Width(1e-2)} {Width(1e-4)}");
            },
            iter: 2_000, threads: 1);

    private static double Spread(BradleyTerryFit fit) =>
        fit.LogWorths.Max() - fit.LogWorths.Min() + Math.Abs(fit.LogTie?.Value ?? 0) + Math.Abs(fit.OrderEffect?.Value ?? 0);
}
