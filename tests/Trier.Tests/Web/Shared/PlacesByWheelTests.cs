using Bunit;
using Trier.Web.Shared;

namespace Trier.Tests.Web.Shared;

/// <summary>The places chart: accessible, one sign a taster, nothing over its edge.</summary>
public sealed class PlacesByWheelTests : BunitContext
{
    private static readonly PlacesLane Thistle = new("Thistle", new WheelLook(2),
        [new(1, Camp.Milder), new(1, Camp.Milder), new(2.5, Camp.Milder), new(3, Camp.Stronger), new(2, Camp.None)], ["milder 1,50", "stronger 3,00"]);

    [Fact]
    public void Both_drawings_have_a_title_a_description_and_one_sign_a_taster()
    {
        var chart = Render<PlacesByWheel>(p => p.Add(c => c.Data, new PlacesData([Thistle], 5, "milder, 3", "stronger, 1", "no idea, 1", "Places by camp", "Thistle lies near the top for both.")));
        var drawings = chart.FindAll("svg[role=img]");
        Assert.Equal(2, drawings.Count);
        Assert.All(drawings, drawing =>
        {
            var named = drawing.GetAttribute("aria-labelledby")!.Split(' ').Select(id => chart.Find("#" + id).TextContent);
            Assert.Equal(["Places by camp", "Thistle lies near the top for both."], named);
            // Three open signs; one solid one and the bar; the lines have no fill and the mark has its own tone.
            Assert.Equal(3, drawing.QuerySelectorAll("path[fill='var(--paper)']").Length);
            Assert.Equal(2, drawing.QuerySelectorAll("path[fill='var(--ink)']").Length);
            Assert.Single(drawing.QuerySelectorAll("path[fill='var(--tone-2)']"));
        });
        Assert.Equal(4, chart.FindAll("[id]").Select(e => e.Id).Distinct(StringComparer.Ordinal).Count());
    }

    [Fact]
    public void Camps_lie_on_their_own_side_of_the_line_so_that_tone_tells_nothing_alone()
    {
        var spread = PlacesLayout.Wide.Spread(Thistle.Dots, 5).ToList();
        Assert.All(spread, dot => Assert.Equal(dot.Camp switch { Camp.Milder => -1, Camp.Stronger => 1, _ => 0 }, Math.Sign(dot.Y)));
    }

    [Theory]
    [InlineData(1)]
    [InlineData(12)]
    [InlineData(40)]
    public void However_many_share_a_place_they_stay_nearer_to_it_than_to_the_next(int tasters)
    {
        foreach (var layout in new[] { PlacesLayout.Wide, PlacesLayout.Narrow })
        {
            double half = (layout.X(2, 6) - layout.X(1, 6)) / 2;
            var dots = layout.Spread([.. Enumerable.Repeat(new PlacesDot(3, Camp.Milder), tasters)], 6).ToList();
            Assert.Equal(tasters, dots.Count);
            Assert.All(dots, dot => Assert.InRange(Math.Abs(dot.X - layout.X(3, 6)) + layout.Dot, 0, half));
            var ends = layout.Spread([.. Enumerable.Repeat(new PlacesDot(1, Camp.Milder), tasters), .. Enumerable.Repeat(new PlacesDot(6, Camp.Milder), tasters)], 6);
            Assert.All(ends, dot => Assert.InRange(dot.X, layout.Left - layout.Edge + layout.Dot - 1e-9, layout.Right + layout.Edge - layout.Dot + 1e-9));
        }
    }
}
