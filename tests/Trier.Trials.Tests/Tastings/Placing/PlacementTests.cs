using CsCheck;
using Trier.Trials.Tastings;
using Trier.Trials.Tastings.Placing;

namespace Trier.Trials.Tests.Tastings.Placing;

public class PlacementTests
{
    private static readonly BlindCode[] Plate = [BlindCode.Of(417), BlindCode.Of(593), BlindCode.Of(751), BlindCode.Of(862)];

    [Theory]
    [InlineData("place:862", "417 593=751 862")]
    [InlineData("place:417", "417 593=751")]
    [InlineData("same:593", "417=593=751")]
    [InlineData("same:751", "417 593 751")]
    [InlineData("same:417", "417 593=751")]
    [InlineData("up:417", "417 593=751")]
    [InlineData("up:751", "417 751 593")]
    [InlineData("up:593", "593 417 751")]
    [InlineData("down:417", "593 417 751")]
    [InlineData("down:593", "417 751 593")]
    [InlineData("down:751", "417 593=751")]
    [InlineData("down:862", "417 593=751")]
    public void A_key_moves_one_code_and_takes_no_one_along(string move, string expected) =>
        Assert.Equal(expected, Shown(Read("417 593=751").Apply(PlaceMove.Read(move)!.Value, Plate)));

    [Theory]
    [InlineData("")]
    [InlineData(null)]
    [InlineData("up")]
    [InlineData("up:4171")]
    [InlineData("left:417")]
    [InlineData("up:417:593")]
    public void What_is_no_move_is_read_as_none(string? text) => Assert.Null(PlaceMove.Read(text));

    [Fact]
    public void A_code_that_is_not_served_gets_no_place() =>
        Assert.Equal("417", Shown(Read("417").Apply(new PlaceMove(PlaceDeed.Place, BlindCode.Of(238)), Plate)));

    [Fact]
    public void Every_unknown_and_every_repeated_code_is_told_at_once()
    {
        var read = Placement.Read(Plate, Plate, ["417", "417", "238", "x"], []);
        Assert.Equal(["Sample 417 stands in the places twice: give it one place.", "Sample 238 is not on this plate.", "Sample x is not on this plate."], read.Problems.Select(problem => problem.Sentence));
    }

    [Fact]
    public void A_code_withdrawn_while_the_page_was_open_is_passed_over_and_its_group_stays_apart_from_the_one_above()
    {
        var served = Plate.Where(code => code.Number != 593).ToList();
        Assert.Equal("417 751=862", Shown(Placement.Read(Plate, served, ["417", "593", "751", "862"], ["751", "862"]).Value));
    }

    [Fact]
    public void Any_row_of_keys_keeps_each_code_once_and_the_first_row_untied() =>
        Gen.Select(Gen.Enum<PlaceDeed>(), Gen.Int[0, 3]).Array[0, 40].Sample(presses =>
        {
            var places = Read("417 593=751");
            foreach (var (deed, code) in presses) places = places.Apply(new PlaceMove(deed, Plate[code]), Plate);
            Assert.Equal(places.Rows.Length, places.Rows.Select(row => row.Code).Distinct().Count());
            Assert.False(places.Rows[0].Tied);
            Assert.Equal(places.Rows.Length, places.Groups.Sum(group => group.Length));
            var ballot = Ballot.Of(Plate, [.. places.Groups.Select(group => (IReadOnlyCollection<BlindCode>)group)], []).Value;
            Assert.Equal(places.Groups.Select(group => string.Join("=", group.Order())), Placement.Of(ballot, Plate).Groups.Select(group => string.Join("=", group)));
        });

    internal static Placement Read(string text)
    {
        var order = text.Split(' ', '=');
        var tied = text.Split(' ').SelectMany(group => group.Split('=').Skip(1));
        return Placement.Read(Plate, Plate, order, tied).Value;
    }

    private static string Shown(Placement places) => string.Join(' ', places.Groups.Select(group => string.Join('=', group)));
}
