using System.Collections.Immutable;
using Trier.Statistics.Randomness;
using Trier.Statistics.RankTests;
using Trier.Statistics.Ratings;
using Trier.Statistics.Tests.Checks;

namespace Trier.Statistics.Tests.Ratings;

public sealed class LikingTests
{
    private static readonly Seed Seed = new(17);

    /// <summary>The demo's own figures, worked out apart: 946 too salty for 6 of 12, liking 4.3 against 7.3; 751 not salty enough for 7 of 14, 3.7 against 6.1.</summary>
    [Fact]
    public void Salt_on_the_demo_counts_and_drops_as_worked_out()
    {
        var old = Salt("946");
        Assert.Equal((0, 6, 6), (old.TooLittle, old.JustRight, old.TooMuch));
        Assert.Equal(7.3, old.MeanWhereRight, 0.05);
        Assert.Equal(4.3, old.Drops.Single().MeanLiking, 0.05);
        Assert.Null(old.Drops.Single().Interval);
        var acid = Salt("751");
        Assert.Equal((7, 7, 0), (acid.TooLittle, acid.JustRight, acid.TooMuch));
        Assert.Equal(3.7, acid.Drops.Single().MeanLiking, 0.05);
        Assert.Equal(6.1, acid.MeanWhereRight, 0.05);
        Assert.Equal(0.5, acid.Drops.Single().Share);
    }

    /// <summary>R's t.test with unequal variances; script and print-out in Checks/ratings.R and .txt.</summary>
    [Fact]
    public void The_interval_is_Welchs_with_eight_in_each_group()
    {
        double[] right = [7, 8, 6, 9, 7, 8, 7, 6, 8];
        double[] salty = [5, 4, 6, 3, 7, 5, 2, 6];
        var answers = right.Select(liking => ((Amount?)Amount.JustRight, (double?)liking)).Concat(salty.Select(liking => ((Amount?)Amount.TooMuch, (double?)liking)));
        var drop = JustAboutRight.Of(answers).Value.Drops.Single();
        var recorded = Recorded.Of("ratings.txt");
        Assert.Equal(recorded["drop"], drop.Drop, 1e-10);
        Assert.Equal(recorded["drop low"], drop.Interval!.Low, 1e-8);
        Assert.Equal(recorded["drop high"], drop.Interval.High, 1e-8);
        Assert.Null(JustAboutRight.Of(answers.SkipLast(1)).Value.Drops.Single().Interval);
    }

    [Fact]
    public void With_nobody_content_there_is_no_drop()
    {
        Assert.Equal(RefusalKind.TooFewBallots, JustAboutRight.Of([(Amount.TooMuch, 3)]).Refusal!.Kind);
        var same = JustAboutRight.Of(Enumerable.Range(0, 16).Select(i => ((Amount?)(i % 2 == 0 ? Amount.JustRight : Amount.TooMuch), (double?)5))).Value;
        Assert.Null(same.Drops.Single().Interval);
        Assert.Equal(0, same.Drops.Single().Drop);
    }

    /// <summary>SAS FREQ example: Q 8.470588235, p 0.0145; statsmodels the same. As one word among others Holm holds it against 0.05 over the words.</summary>
    [Fact]
    public void A_word_is_tested_by_Cochrans_Q_and_stepped_down_over_the_words()
    {
        var people = CheckData.Rows("cochran_drugs.csv").SelectMany(row => Enumerable.Repeat(row.Take(3).Select(cell => cell == "F").ToArray(), CheckData.Whole(row[3]))).ToArray();
        ImmutableArray<ImmutableArray<ImmutableArray<bool>?>> Ticks(int words) =>
            [.. people.Select(person => person.Select(answer => (ImmutableArray<bool>?)[.. Enumerable.Range(0, words).Select(word => word == 1 ? answer : word == 0)]).ToImmutableArray())];
        var two = CheckedWords.Compare(Ticks(2), Seed).Value;
        Assert.Equal([46, 46, 46], two[0].Counts);
        Assert.Null(two[0].Test);
        Assert.Equal([28, 28, 16], two[1].Counts);
        Assert.Equal(8.470588235, two[1].Test!.Q, 1e-8);
        Assert.Equal(TestMethod.Exact, two[1].Test!.P.Method);
        Assert.True(two[1].Stands);

        // Five words that say as much each: p about .017 is above .05 over 5.
        var five = CheckedWords.Compare([.. people.Select(person => person.Select(answer => (ImmutableArray<bool>?)[answer, answer, answer, answer, answer]).ToImmutableArray())], Seed).Value;
        Assert.All(five, word => Assert.False(word.Stands));
    }

    [Fact]
    public void People_who_were_not_served_everything_count_but_do_not_test()
    {
        ImmutableArray<ImmutableArray<ImmutableArray<bool>?>> ticks = [[[true], [false]], [[true], null], [[true], [false]]];
        var word = CheckedWords.Compare(ticks, Seed).Value.Single();
        Assert.Equal([3, 0], word.Counts);
        Assert.Equal(2, word.Test!.Q, 1e-12);
        Assert.Equal(RefusalKind.TooFewItems, CheckedWords.Compare([[[true]]], Seed).Refusal!.Kind);
        Assert.Equal(RefusalKind.TooFewBallots, CheckedWords.Compare([], Seed).Refusal!.Kind);
        Assert.Equal(RefusalKind.NoInformation, CheckedWords.Compare([[null, null]], Seed).Refusal!.Kind);
    }

    private static JustAboutRightResult Salt(string code) => JustAboutRight.Of(
        CheckData.Rows("demo_ballots.csv").Where(row => row[2] == code).Select(row => (
            CheckData.Optional(row[4]) is { } salt ? (Amount?)(Amount)(int)salt : null, CheckData.Optional(row[3])))).Value;
}
