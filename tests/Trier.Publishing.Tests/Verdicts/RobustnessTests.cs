using System.Text.Json;
using CsCheck;
using Trier.Publishing.BallotFiles;
using Trier.Publishing.Tests.BallotFiles;
using Trier.Publishing.Verdicts;
using Trier.Statistics.ChoiceModels;
using Trier.Statistics.Randomness;
using Trier.Statistics.RankTests;
using Trier.Trials.Verdicts;

namespace Trier.Publishing.Tests.Verdicts;

public class RobustnessTests
{
    private static readonly JudgingEffort Little = new(Effort.Usual with { ExactWork = 1e4, Draws = 99, CloseDraws = 99 }, new SamplingEffort(2, 20, 100), 1e7, 0, 99, 19);

    [Fact]
    public void Whatever_can_be_read_can_be_judged_and_written() =>
        Gen.OneOf("taster", "taster,A,B,C\n", "count,order\n", "1,A>B=C\n", "2,C>A\n", "x,1,2,3\n", "y,2,,1\n", "z,1,1,\n", "w,,,\n", "u,3,3,3\n", ",", "\n", "taster,code,place\n", "a,A,1\n", "a,B,2\n", "b,A,\n", "b,B,1\n")
            .Array[1, 12].Sample(parts => Judged(string.Concat(parts)), iter: 4_000);

    [Theory]
    [InlineData(7)]
    [InlineData(8)]
    [InlineData(16)]
    public void Ballots_of_every_length_with_ties_of_every_size_are_judged(int samples)
    {
        var orders = Enumerable.Range(2, samples - 1).Select(length => "1," + string.Concat(Enumerable.Range(0, length).Select(i => (i == 0 ? "" : i == length - 1 ? ">" : "=") + (char)('A' + ((i + length) % samples)))));
        Assert.True(Judged("count,order\n" + string.Join('\n', orders) + "\n5," + string.Join('>', "ABCDEFGHIJKLMNOP"[..samples].ToCharArray()) + "\n"));
    }

    private static bool Judged(string text)
    {
        foreach (var unplaced in Enum.GetValues<Unplaced>())
        {
            var outcome = Reading.Text(text, unplaced);
            if (!outcome.Ok) continue;
            using var json = JsonDocument.Parse(VerdictJson.Write(Judge.Of(outcome.Value, new Seed(3), Little)));
            if (json.RootElement.GetProperty("headlines").GetArrayLength() != 3) return false;
        }

        return true;
    }
}
