using CsCheck;
using Trier.Statistics.Randomness;
using Trier.Trials.Tastings;

namespace Trier.Trials.Tests.Tastings;

public class BlindCodeTests
{
    [Theory]
    [InlineData("317", 317)]
    [InlineData(" 582 ", 582)]
    [InlineData("100", 100)]
    [InlineData("999", null)]
    [InlineData("111", null)]
    [InlineData("123", null)]
    [InlineData("987", null)]
    [InlineData("012", null)]
    [InlineData("099", null)]
    [InlineData("31", null)]
    [InlineData("3170", null)]
    [InlineData("-17", null)]
    [InlineData("3 7", null)]
    [InlineData("٣١٧", null)]
    [InlineData("", null)]
    [InlineData(null, null)]
    public void A_code_is_three_digits_that_spell_nothing(string? text, int? number)
    {
        Assert.Equal(number is not null, BlindCode.TryParse(text, out var code));
        if (number is { } expected) Assert.Equal(expected, code.Number);
    }

    [Fact]
    public void No_code_is_a_repeated_digit_or_a_run()
    {
        string[] spelling = ["111", "222", "333", "444", "555", "666", "777", "888", "999", "123", "234", "345", "456", "567", "678", "789", "987", "876", "765", "654", "543", "432", "321", "210"];
        var refused = Enumerable.Range(100, 900).Where(number => !BlindCode.Allowed(number)).Select(number => $"{number}");
        Assert.Equal(spelling.Order(StringComparer.Ordinal), refused);
    }

    [Theory]
    [InlineData(317, 582, true)]
    [InlineData(317, 318, false)]
    [InlineData(317, 327, false)]
    [InlineData(317, 417, false)]
    [InlineData(317, 371, true)]
    [InlineData(619, 610, false)]
    [InlineData(168, 891, false)]
    [InlineData(906, 609, true)]
    public void Two_codes_stand_together_when_two_digits_differ_and_neither_is_the_other_upside_down(int one, int other, bool together)
    {
        Assert.Equal(together, BlindCode.Of(one).CanStandBeside(BlindCode.Of(other)));
        Assert.Equal(together, BlindCode.Of(other).CanStandBeside(BlindCode.Of(one)));
    }

    [Theory]
    [InlineData(168, 891)]
    [InlineData(906, 906)]
    [InlineData(690, 69)]
    [InlineData(317, null)]
    public void Upside_down_six_and_nine_change_places(int number, int? turned) => Assert.Equal(turned, BlindCode.Of(number).UpsideDown());

    [Fact]
    public void Any_two_codes_drawn_can_stand_on_one_table_and_none_was_ever_given_out()
    {
        Gen.Select(Gen.ULong, Gen.Int[1, 9], Gen.Int[0, 6], Gen.Int[0, 200]).Sample((seed, count, inUse, retired) =>
        {
            var chance = new Seed(seed).Generator();
            var standing = BlindCodes.Draw(Math.Max(inUse, 1), [], [], chance).Value.Take(inUse).ToList();
            var before = Enumerable.Range(100, 900).Where(BlindCode.Allowed).Select(BlindCode.Of).Except(standing).ToArray();
            chance.Shuffle<BlindCode>(before);
            var gone = before.Take(retired).ToHashSet();
            var drawn = BlindCodes.Draw(count, standing, gone, chance).Value;
            Assert.Equal(count, drawn.Length);
            Assert.DoesNotContain(drawn, gone.Contains);
            var table = standing.Concat(drawn).ToList();
            for (var i = 0; i < table.Count; i++)
            {
                for (var j = i + 1; j < table.Count; j++)
                {
                    var (one, other) = ($"{table[i]}", $"{table[j]}");
                    Assert.True(one.Zip(other).Count(pair => pair.First != pair.Second) >= 2, $"{one} and {other}");
                    Assert.NotEqual(one, Turned(other));
                }
            }

            // A turned cup must not read as any other number, on this table or not.
            Assert.All(drawn, code => Assert.True(Turned($"{code}") is null || Turned($"{code}") == $"{code}", $"{code}"));
        });
    }

    [Fact]
    public void Every_code_that_can_be_drawn_is_drawn_about_equally_often()
    {
        const int draws = 40_000;
        var chance = new Seed(7).Generator();
        var counts = Enumerable.Range(0, draws).GroupBy(_ => BlindCodes.Draw(1, [], [], chance).Value[0]).ToDictionary(group => group.Key, group => group.Count());
        var possible = Enumerable.Range(100, 900).Where(BlindCode.Allowed).Count(number => Turned($"{number}") is not { } turned || turned == $"{number}");
        Assert.Equal(possible, counts.Count);
        var expected = (double)draws / possible;
        // Five standard deviations of a binomial count: about one code in two million would stray this far by chance.
        Assert.All(counts.Values, count => Assert.InRange(count, expected - (5 * Math.Sqrt(expected)), expected + (5 * Math.Sqrt(expected))));
    }

    [Fact]
    public void When_no_fresh_code_is_left_a_sentence_says_so()
    {
        var all = Enumerable.Range(100, 900).Where(BlindCode.Allowed).Select(BlindCode.Of);
        var outcome = BlindCodes.Draw(1, [], all, new Seed(1).Generator());
        Assert.Contains("No three-digit codes are left", Assert.Single(outcome.Problems).Sentence, StringComparison.Ordinal);
    }

    private static string? Turned(string code)
    {
        var turned = code.Reverse().Select(digit => "0123456789".IndexOf(digit, StringComparison.Ordinal) switch { 0 => '0', 1 => '1', 6 => '9', 8 => '8', 9 => '6', _ => '?' });
        var text = string.Concat(turned);
        return text.Contains('?', StringComparison.Ordinal) ? null : text;
    }
}
