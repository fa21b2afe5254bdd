using Bunit;
using Trier.Web.Shared;

namespace Trier.Tests.Web.Shared;

/// <summary>The rack is a real table that tells everything without tone.</summary>
public sealed class RackTests : BunitContext
{
    private static readonly WheelLook House = new(1);
    private static readonly WheelLook Thistle = new(2);
    private static readonly WheelLook House2 = new(1, WheelFill.Open, 7);

    private static readonly RackGroup Milder = new("usually prefer milder",
    [
        new("Amélia", [new("House", "W1", House), new("Thistle", "W2", Thistle), new("House 2", "W5", House2, TiedWithPrevious: true)]),
        new("Odete", [new("Thistle", "W2", Thistle), new("House", "W1", House)], "†", "no House 2"),
        new("Nuno", [], Words: "called away after three samples; no places"),
    ], "Said before tasting:");

    private static readonly RackGroup Maker = new("not blind", [new("Benedita", [new("House", "W1", House), new("Thistle", "W2", Thistle), new("House 2", "W5", House2)])], "Apart: the maker,", ", in no count");

    private IRenderedComponent<Rack> Shown() => Render<Rack>(p => p.Add(r => r.Groups, [Milder, Maker]).Add(r => r.Apart, Maker).Add(r => r.Keys, [new("House", "W1", House)]));

    [Fact]
    public void Every_row_is_headed_by_its_taster_and_every_column_by_its_place()
    {
        var rack = Shown();
        Assert.Equal(["taster", "1st", "2nd", "3rd"], rack.FindAll("thead th[scope=col]").Select(th => th.TextContent));
        Assert.Equal(["Amélia", "Odete †", "Nuno", "Benedita"], rack.FindAll("th[scope=row]").Select(th => th.TextContent));
        Assert.Equal("Said before tasting: usually prefer milder", rack.Find(".rack-group th").TextContent);
    }

    [Fact]
    public void Every_row_fills_the_same_number_of_columns()
    {
        static int Width(AngleSharp.Dom.IElement cell) => int.Parse(cell.GetAttribute("colspan") ?? "1", System.Globalization.CultureInfo.InvariantCulture);
        Assert.All(Shown().FindAll("tr"), row => Assert.Equal(4, row.Children.Sum(Width)));
    }

    [Fact]
    public void A_cell_names_its_wheel_and_a_tie_is_said_in_words()
    {
        var cells = Shown().FindAll("tbody:first-of-type tr:nth-child(2) .rack-cell");
        Assert.Equal(["House", "Thistle", "House 2"], cells.Select(cell => cell.QuerySelector(".rack-long")!.TextContent));
        Assert.Equal("tied with the one before:", cells[2].QuerySelector(".unseen")!.TextContent.Trim());
        Assert.Equal("=", cells[2].QuerySelector(".rack-tie")!.TextContent);
        Assert.Null(cells[1].QuerySelector(".rack-tie"));
    }

    [Fact]
    public void Fewer_wheels_and_no_places_are_told_in_words() =>
        Assert.Equal(["no House 2", "called away after three samples; no places"], Shown().FindAll(".rack-words").Select(words => words.TextContent));

    [Fact]
    public void The_maker_stands_apart() => Assert.Equal("Benedita", Shown().Find(".rack-apart th[scope=row]").TextContent);

    [Fact]
    public void Each_shape_and_each_fill_is_drawn_differently()
    {
        var drawings = (from shape in Enumerable.Range(1, WheelLook.Count)
                        from fill in Enum.GetValues<WheelFill>()
                        select Render<MarkShape>(p => p.Add(m => m.Look, new WheelLook(shape, fill)).Add(m => m.OnTone, true)).Markup).ToList();
        Assert.Equal(32, drawings.Distinct(StringComparer.Ordinal).Count());
    }

    [Theory]
    [InlineData(0)]
    [InlineData(9)]
    public void There_are_eight_shapes_and_no_more(int shape) => Assert.Throws<ArgumentOutOfRangeException>(() => new WheelLook(shape));

    [Theory]
    [InlineData(1, "1st")]
    [InlineData(2, "2nd")]
    [InlineData(3, "3rd")]
    [InlineData(11, "11th")]
    [InlineData(12, "12th")]
    [InlineData(13, "13th")]
    [InlineData(22, "22nd")]
    [InlineData(112, "112th")]
    public void Places_have_their_english_names(int place, string name) => Assert.Equal(name, Ordinal.English(place));
}
