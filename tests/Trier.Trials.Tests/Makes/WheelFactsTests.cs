using CsCheck;
using Trier.Trials.Makes;

namespace Trier.Trials.Tests.Makes;

public class WheelFactsTests
{
    [Fact]
    public void Blank_names_and_values_are_left_out_and_the_rest_trimmed()
    {
        var facts = WheelFacts.Of([new(" milk ", " sheep’s, 10 litres "), new("size", "  "), new(" ", "x"), new("notes", null)]);
        Assert.Equal("sheep’s, 10 litres", facts["milk"]);
        Assert.Equal(["milk"], facts.Values.Keys);
        Assert.Null(facts["size"]);
        Assert.Same(WheelFacts.None, WheelFacts.Of([new("size", " ")]));
    }

    [Theory]
    [InlineData("2025-02-28", 28)]
    [InlineData("2025-02-29", null)]
    [InlineData("28/02/2025", null)]
    [InlineData(null, null)]
    public void A_make_date_is_a_day_only_where_it_is_written_as_one(string? written, int? day) =>
        Assert.Equal(day, WheelFacts.Of([new(WheelFacts.MadeFact, written)]).MadeOn?.Day);

    [Fact]
    public void Allergens_stand_once_each_in_the_order_written() =>
        Assert.Equal(["egg", "walnut"], WheelFacts.Of([new(WheelFacts.AllergensFact, "egg, walnut,, EGG ")]).Allergens);

    [Fact]
    public void Facts_are_equal_when_every_named_value_is_in_whatever_order_they_were_written() =>
        Gen.Select(Gen.String[Gen.Char['a', 'e'], 1, 2], Gen.String[Gen.Char['x', 'z'], 1, 2]).Array[0, 6].Sample(pairs =>
        {
            var named = pairs.DistinctBy(pair => pair.Item1).Select(pair => KeyValuePair.Create(pair.Item1, (string?)pair.Item2)).ToList();
            var (one, other) = (WheelFacts.Of(named), WheelFacts.Of(Enumerable.Reverse(named)));
            Assert.Equal(one, other);
            Assert.Equal(one.GetHashCode(), other.GetHashCode());
            Assert.NotEqual(one, WheelFacts.Of([.. named, new("z", "more")]));
        });
}
