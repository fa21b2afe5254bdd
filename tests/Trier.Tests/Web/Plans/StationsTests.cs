using Trier.Tests.Web.Ballots;
using Trier.Web.Plans;
using Trier.Web.Shared;

namespace Trier.Tests.Web.Plans;

/// <summary>The bar of the stations says of none that it is done before it is.</summary>
public sealed class StationsTests
{
    [Fact]
    public async Task Nothing_is_aged_or_cut_before_the_first_plate_is_out()
    {
        await using var evening = await Evening.BeginAsync(open: false);
        var before = Stations.Of(await evening.TastingAsync());
        Assert.All(["Age", "Cut"], name => Assert.Equal(StationState.ToCome, before.Single(station => station.Name == name).State));
        await evening.OpenAsync();
        var after = Stations.Of(await evening.TastingAsync());
        Assert.All(["Age", "Cut"], name => Assert.Equal(StationState.Done, after.Single(station => station.Name == name).State));
    }
}
