using System.Collections.Immutable;
using Trier.Statistics.Rankings;

namespace Trier.Statistics.Tests.Checks;

/// <summary>The demo trial's ballots, invented for this project. Samples in code order 238 417 593 751 862 946.</summary>
internal static class Demo
{
    public static readonly string[] Codes = ["238", "417", "593", "751", "862", "946"];

    /// <summary>Wheels W1 W2 W3 W5 W6 as samples: 417, 593, 238, 751, 946; 862 is W1 again.</summary>
    public static readonly int[] Wheels = [1, 2, 0, 3, 5];

    /// <summary>The same with the other serving of W1 counted.</summary>
    public static readonly int[] OtherCode = [4, 2, 0, 3, 5];

    public static readonly ImmutableArray<(string Taster, Ranking Samples)> Ballots = Read();

    /// <summary>Fourteen tasters less the one who placed nothing, over the wheels; T06 and T07 joined if asked.</summary>
    public static RankingSet Set(int[] keep, bool joined = false, bool completeOnly = true)
    {
        var rows = Ballots
            .Where(ballot => ballot.Samples.Served.Length > 0)
            .Select(ballot => new RankingRow(ballot.Samples.Restrict(keep), 1, joined && ballot.Taster is "T06" or "T07" && joined ? 67 : null));
        var all = RankingSet.Create(keep.Length, rows);
        return completeOnly ? all.Complete : all;
    }

    public static RankingSet SampleSet => RankingSet.Create(Codes.Length, Ballots.Where(b => b.Samples.Served.Length > 0).Select(b => new RankingRow(b.Samples)));

    /// <summary>Declared at sign-in: milder 0, stronger 1, no idea null; complete ballots only, in order.</summary>
    public static int? Camp(string taster) => taster switch
    {
        "T01" or "T02" or "T04" or "T05" or "T08" or "T10" or "T13" => 0,
        "T12" => null,
        _ => 1,
    };

    private static ImmutableArray<(string Taster, Ranking Samples)> Read()
    {
        return [.. CheckData.Rows("demo_ballots.csv")
            .GroupBy(row => row[0])
            .Select(taster =>
            {
                var places = new double?[Codes.Length];
                foreach (var row in taster) places[Array.IndexOf(Codes, row[2])] = CheckData.Optional(row[5]);
                return (taster.Key, Ranking.FromPlaces(places));
            })];
    }
}
