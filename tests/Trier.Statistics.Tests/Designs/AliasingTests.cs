using System.Collections.Immutable;
using Trier.Statistics.Designs;

namespace Trier.Statistics.Tests.Designs;

public sealed class AliasingTests
{
    /// <summary>
    /// The quarter replicate of five two-level factors with D = AB and E = AC: A = BD = CE, B = AD, C = AE, D = AB, E = AC, BC = DE, BE = CD among effects of up to two factors.
    /// Source: the course text "The Essentials of 2-Level Design of Experiments, Part II" prints I = ABD = ACE = BCDE and the chains of the five main effects; the chains BC and BE follow from I.
    /// </summary>
    [Fact]
    public void A_quarter_replicate_has_its_printed_alias_table()
    {
        string[][] printed = [["A", "BD", "CE"], ["B", "AD"], ["C", "AE"], ["D", "AB"], ["E", "AC"], ["BC", "DE"], ["BE", "CD"]];
        var runs = Enumerable.Range(0, 8).Select(run =>
        {
            bool a = (run & 1) == 1, b = (run & 2) == 2, c = (run & 4) == 4;
            return new Dictionary<char, bool> { ['A'] = a, ['B'] = b, ['C'] = c, ['D'] = !(a ^ b), ['E'] = !(a ^ c) };
        }).ToArray();
        Factor Effect(string word) => new(word, [.. runs.Select(run => word.Count(letter => !run[letter]) % 2 == 0 ? "+" : "-")]);
        var words = printed.SelectMany(chain => chain).ToArray();
        Assert.Equal(15, words.Length);
        foreach (var word in words)
        {
            foreach (var found in Aliasing.Of(Effect(word), words.Where(other => other != word).Select(Effect)))
            {
                var aliased = printed.Single(chain => chain.Contains(word)).Contains(found.Factor);
                Assert.Equal(aliased ? Telling.Together : Telling.Apart, found.Telling);
                Assert.Equal(aliased ? 1 : 0, found.Shared);
            }
        }
    }

    /// <summary>
    /// The half replicate of four two-level factors with D = ABC: I = ABCD, so that AB = CD, AC = BD, AD = BC and every main effect is clear of other main effects and of pairs. The defining relation and its chains are textbook matter
    /// (Box, Hunter and Hunter, Statistics for Experimenters, chapter on half fractions; from memory, unverified); here they also follow by multiplying signs.
    /// </summary>
    [Fact]
    public void A_half_replicate_of_four_has_its_alias_table()
    {
        string[][] chains = [["A"], ["B"], ["C"], ["D"], ["AB", "CD"], ["AC", "BD"], ["AD", "BC"]];
        var runs = Enumerable.Range(0, 8).Select(run =>
        {
            int a = (run & 1) == 1 ? 1 : -1, b = (run & 2) == 2 ? 1 : -1, c = (run & 4) == 4 ? 1 : -1;
            return new Dictionary<char, int> { ['A'] = a, ['B'] = b, ['C'] = c, ['D'] = a * b * c };
        }).ToArray();
        Factor Effect(string word) => new(word, [.. runs.Select(run => word.Aggregate(1, (sign, letter) => sign * run[letter]) > 0 ? "+" : "-")]);
        var words = chains.SelectMany(chain => chain).ToArray();
        foreach (var word in words)
        {
            foreach (var found in Aliasing.Of(Effect(word), words.Where(other => other != word).Select(Effect)))
                Assert.Equal(chains.Single(chain => chain.Contains(word)).Contains(found.Factor) ? Telling.Together : Telling.Apart, found.Telling);
        }

        // Seven columns, one a chain, use up all eight runs and share nothing.
        var (shared, leftOver) = Aliasing.AllAtOnce([.. chains.Select(chain => Effect(chain[0]))]);
        Assert.All(shared, each => Assert.Equal(0, each));
        Assert.Equal(0, leftOver);
    }

    /// <summary>In a Latin square rows, columns and letters are orthogonal (Fisher 1935): all told apart, with (k-1)(k-2) units left over.</summary>
    [Theory]
    [InlineData(3)]
    [InlineData(4)]
    [InlineData(5)]
    public void A_latin_square_tells_rows_columns_and_letters_apart(int k)
    {
        var cells = Enumerable.Range(0, k * k).ToArray();
        var rows = Levels("row", cells.Select(cell => cell / k));
        var columns = Levels("column", cells.Select(cell => cell % k));
        var letters = Levels("letter", cells.Select(cell => ((cell / k) + (cell % k)) % k));
        Assert.All(Aliasing.Of(rows, [columns, letters]), found => Assert.Equal(Telling.Apart, found.Telling));
        var (shared, leftOver) = Aliasing.AllAtOnce([rows, columns, letters]);
        Assert.Equal([0, 0, 0], shared);
        Assert.Equal((k - 1) * (k - 2), leftOver);
    }

    /// <summary>Three factors told apart two by two may still not be told apart all at once: the half replicate of three factors, C = AB, with AB entered as well.</summary>
    [Fact]
    public void Factors_told_apart_two_by_two_may_move_together_all_at_once()
    {
        // The three two-level columns and the four-level one hold 1 + 1 + 1 + 3 comparisons; four units allow three.
        var a = new Factor("a", ["+", "+", "-", "-"]);
        var b = new Factor("b", ["+", "-", "+", "-"]);
        var c = new Factor("c", ["+", "-", "-", "+"]);
        Assert.All(Aliasing.Of(a, [b, c]), found => Assert.Equal(Telling.Apart, found.Telling));
        Assert.Equal(0, Aliasing.AllAtOnce([a, b, c]).LeftOver);
        Assert.Equal([0, 0, 0], Aliasing.AllAtOnce([a, b, c]).Shared);
        Assert.Equal([1, 1, 1, 3], Aliasing.AllAtOnce([a, b, c, new Factor("unit", ["1", "2", "3", "4"])]).Shared);
    }

    /// <summary>Two recipes, each from one milk lot of its own: a completely confounded pair. A third wheel that shares a lot with the other recipe unties it.</summary>
    [Fact]
    public void A_confounded_pair_names_what_ties_it_and_one_more_wheel_unties_it()
    {
        var recipe = new Factor("recipe", ["thistle", "thistle", "house", "house"]);
        var found = Aliasing.Of(recipe, [new Factor("lot", ["1", "1", "2", "2"])]).Single();
        Assert.Equal(Telling.Together, found.Telling);
        Assert.Equal(1, found.Shared);
        Assert.Equal([[0, 1], [2, 3]], found.Groups.Select(group => group.ToArray()));
        var untied = Aliasing.Of(recipe, [new Factor("lot", ["1", "2", "2", "2"])]).Single();
        Assert.Equal((Telling.Apart, 0, 1), (untied.Telling, untied.Shared, untied.LeftOver));
    }

    [Fact]
    public void With_no_unit_left_over_it_is_said_and_unknown_levels_are_left_out()
    {
        var recipe = new Factor("recipe", ["a", "a", "b", "b"]);
        Assert.Equal(Telling.Saturated, Aliasing.Of(recipe, [new Factor("rind", ["washed", "dry", "dry", null])]).Single().Telling);
        Assert.Equal(Telling.Same, Aliasing.Of(recipe, [new Factor("rind", ["dry", "dry", null, "dry"])]).Single().Telling);
        var partly = Aliasing.Of(new Factor("recipe", ["a", "a", "b", "b", "c", "c"]), [new Factor("cave", ["1", "1", "2", "2", "2", "1"])]).Single();
        Assert.Equal((Telling.Apart, 0), (partly.Telling, partly.Shared));
    }

    /// <summary>By the rank of the table of main effects, the way the rule is written: rank(X) = rank(recipe) + levels - 1.</summary>
    [Fact]
    public void Pieces_of_the_graph_give_the_same_rank_as_elimination()
    {
        var generator = new Statistics.Randomness.Seed(7).Generator();
        for (var round = 0; round < 300; round++)
        {
            var n = 2 + generator.NextInt(7);
            Factor Draw(string name) => Levels(name, Enumerable.Range(0, n).Select(_ => generator.NextInt(4)));
            Factor one = Draw("one"), two = Draw("two");
            var levels = one.Levels.Distinct().Count() + two.Levels.Distinct().Count();
            var found = Aliasing.Of(one, [two]).Single();
            Assert.Equal(levels - 1 - found.Shared, MainEffects.Rank([one, two]));
            Assert.Equal(n - MainEffects.Rank([one, two]), found.LeftOver);
            Assert.Equal([found.Shared, found.Shared], Aliasing.AllAtOnce([one, two]).Shared);
        }
    }

    /// <summary>Ages 60, 62 days of one recipe and 90, 92 of the other: R^2 = 900/901.</summary>
    [Fact]
    public void A_number_that_nearly_follows_the_recipe_is_inflated()
    {
        var recipe = new Factor("recipe", ["a", "a", "b", "b"]);
        Assert.Equal(226, Aliasing.VarianceInflation(recipe, [60, 62, 90, 92]), 9);
        Assert.Equal(1, Aliasing.VarianceInflation(recipe, [60, 90, 60, 90]), 12);
        Assert.Equal(1, Aliasing.VarianceInflation(recipe, [75, 75, 75, 75]));
        Assert.Equal(double.PositiveInfinity, Aliasing.VarianceInflation(recipe, [60, 60, 90, 90]));
        Assert.True(Aliasing.VarianceInflation(recipe, [60, 62, 90, 92]) > Aliasing.NearlyTogether);
    }

    private static Factor Levels(string name, IEnumerable<int> levels) =>
        new(name, [.. levels.Select(level => level.ToString(System.Globalization.CultureInfo.InvariantCulture))]);
}
