using System.Globalization;
using Trier.Statistics.Rankings;
using Trier.TestKit;

namespace Trier.Statistics.Tests.Checks;

/// <summary>Reads the check data of this folder, and those that lie only beside the checkout.</summary>
internal static class CheckData
{
    public static string[][] Rows(string name)
    {
        var own = Path.Combine(Checkout.Root, "tests", "Trier.Statistics.Tests", "Checks", "data", name);
        var path = File.Exists(own) ? own : Checkout.Shared(Path.Combine("data", name));
        Assert.SkipUnless(path is not null && File.Exists(path), Checkout.SharedAbsent);
        return [.. File.ReadLines(path!).Skip(1).Where(line => line.Length > 0).Select(line => line.Split(','))];
    }

    public static double Number(string cell) => double.Parse(cell, CultureInfo.InvariantCulture);

    public static int Whole(string cell) => int.Parse(cell, CultureInfo.InvariantCulture);

    public static double? Optional(string cell) => cell.Trim().Length == 0 ? null : Number(cell);

    /// <summary>Rows of scores after the first columns, ranked rising (or falling); an empty cell is not served.</summary>
    public static RankingSet Scores(string name, int skip = 1, bool highestFirst = false) =>
        RankingSet.Create(Rows(name).Select(row => Rank([.. row.Skip(skip).Select(Optional)], highestFirst)));

    public static Ranking Rank(double?[] scores, bool highestFirst = false) =>
        Ranking.FromPlaces(highestFirst ? [.. scores.Select(score => -score)] : scores);

    public static RankingSet Inline(params double[][] rows) =>
        RankingSet.Create(rows.Select(row => Rank([.. row.Select(value => (double?)value)])));
}
