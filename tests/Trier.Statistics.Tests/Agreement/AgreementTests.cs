using System.Collections.Immutable;
using Trier.Statistics.Agreement;
using Trier.Statistics.Randomness;
using Trier.Statistics.Rankings;
using Trier.Statistics.Tests.Checks;

namespace Trier.Statistics.Tests.Agreement;

/// <summary>Sections 7, 8 and 14 of the verdict's method page, on the demo ballots.</summary>
public sealed class AgreementTests
{
    private static readonly Seed Seed = new(11);

    [Fact]
    public void The_hidden_repeat_is_nearer_than_luck()
    {
        var repeat = HiddenRepeat.Compare(Demo.SampleSet, 1, 4).Value;
        Assert.Equal(13, repeat.Ballots);
        Assert.Equal(19, repeat.SumOfDistances);
        Assert.Equal(.0051, repeat.P, 5e-5);
        Assert.Equal(8, repeat.Adjacent);

        // Twelve ballots of six samples (chance 1/3) and one of five (2/5). The page's .035 takes a third for all thirteen: binomial .0347.
        Assert.Equal(.0378, repeat.AdjacentP, 5e-5);
        Assert.Equal(0.66, repeat.Yardstick!.Value, 5e-3);
    }

    [Fact]
    public void Loved_and_hated_is_not_marked()
    {
        var result = LovedAndHated.Test(Demo.Set(Demo.Wheels), Seed).Value;
        Assert.Equal(4, result.Measure);
        Assert.Equal([4], result.Items);
        Assert.Equal(.095, result.P.Value, 5e-4 + (4 * result.P.Error));
        Assert.False(result.Marked);
    }

    [Fact]
    public void The_declared_camps_are_the_most_extreme_split()
    {
        var camps = Test(joined: false);
        Assert.Equal(462, camps.Ways);
        Assert.Equal(1 / 462.0, camps.P.Value, 1e-12);
        Assert.True(camps.Parted);
        Assert.Equal(1.33, camps.Items[0].FirstCamp!.Value, 5e-3);
        Assert.Equal(4.20, camps.Items[0].SecondCamp!.Value, 5e-3);
        Assert.Equal([0, 4], camps.Items.Where(item => item.Shown).Select(item => item.Item));
        Assert.Equal(.022, camps.Items[2].P, 5e-4);
        Assert.Equal(.028, camps.Items[3].P, 5e-4);
        Assert.Equal(1 / 210.0, Test(joined: true).P.Value, 1e-12);
    }

    [Fact]
    public void Camps_of_two_are_refused()
    {
        var set = Demo.Set(Demo.Wheels);
        ImmutableArray<int?> labels = [.. Enumerable.Range(0, set.Rows.Length).Select(i => (int?)(i < 2 ? 1 : 0))];
        Assert.Equal(RefusalKind.TooFewBallots, Camps.Test(set, labels, Seed).Refusal!.Kind);
    }

    private static CampsResult Test(bool joined)
    {
        var set = Demo.Set(Demo.Wheels, joined);
        var tasters = Demo.Ballots.Where(b => b.Samples.Served.Length > 0 && b.Samples.Restrict(Demo.Wheels).IsComplete).Select(b => Demo.Camp(b.Taster));
        return Camps.Test(set, [.. tasters], Seed).Value;
    }
}
