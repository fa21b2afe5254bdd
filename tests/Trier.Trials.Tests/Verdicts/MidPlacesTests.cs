using System.Collections.Immutable;
using Trier.Trials.Verdicts;

namespace Trier.Trials.Tests.Verdicts;

public class MidPlacesTests
{
    private static readonly ImmutableArray<ImmutableArray<string>> Groups = [["A"], ["B", "C"], [], ["D"]];

    [Fact]
    public void Tied_samples_share_the_mean_of_their_places() =>
        Assert.Equal(new Dictionary<string, double> { ["A"] = 1, ["B"] = 2.5, ["C"] = 2.5, ["D"] = 4 }, MidPlaces.Of(Groups));

    [Fact]
    public void A_sample_that_does_not_count_leaves_the_places() =>
        Assert.Equal(new Dictionary<string, double> { ["A"] = 1, ["C"] = 2, ["D"] = 3 }, MidPlaces.Of(Groups, id => id != "B"));
}
