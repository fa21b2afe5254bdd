using System.Collections.Immutable;
using System.Text;
using Trier.Statistics.Randomness;
using Trier.Trials.Tastings.Commitments;
using Trier.Trials.Tastings.Events;
using Trier.Trials.Tastings.Steps;

namespace Trier.Trials.Tests.Tastings.Commitments;

public sealed class CommitmentTests
{
    private static readonly byte[] Salt = Convert.FromHexString("000102030405060708090a0b0c0d0e0f");

    /// <summary>RFC 7914, section 11: test vectors for PBKDF2 with HMAC-SHA-256.</summary>
    [Theory]
    [InlineData("passwd", "salt", 1, "55ac046e56e3089fec1691c22544b605f94185216dde0465e68b9d57c20dacbc49ca9cccf179b645991664b39d77ef317c71b845b1e30bd509112041d3a19783")]
    [InlineData("Password", "NaCl", 80000, "4ddcd8f60b98be21830cee5ef22701f9641a4418d04c0414aeff08876b34ab56a1d425a1225833549adb841b51c9b3176a272bdebba1d078478f62b397f33c8d")]
    public void The_key_derivation_gives_the_published_values(string text, string salt, int rounds, string expected) =>
        Assert.Equal(expected, Convert.ToHexStringLower(Commitment.Derive(Encoding.ASCII.GetBytes(text), Encoding.ASCII.GetBytes(salt), rounds, 64)));

    /// <summary>Worked out with Python 3's hashlib.pbkdf2_hmac, by the lines that stand in docs/handbook/key-file.md.</summary>
    [Fact]
    public void The_words_are_those_another_implementation_works_out() =>
        Assert.Equal(
            "buddy write alter smooth naive",
            Commitment.WordsOf(["trier key 1", "tasting 0198fb52-6c00-7000-8000-000000000417", "key 1", "previous none", "238 W3 counts Hot", "417 W1 counts House", "593 W2 counts Crème d’été"], Salt));

    [Fact]
    public void A_statement_says_version_tasting_key_the_one_before_and_each_code()
    {
        var day = Day.Sealed(3, 2, repeat: true);
        var lines = Statement.Of(day.Book, null);
        Assert.Equal(["trier key 1", $"tasting {day.Trial.Value:D}", "key 1", "previous none"], lines.Take(4));
        Assert.Equal(day.Key.Lines.Select(line => $"{line.Code} {day.Book.Entry(line.Wheel)!.Label} {(line.Counts ? "counts" : "check")} {day.Book.Entry(line.Wheel)!.Name}"), lines.Skip(4));
        Assert.Equal(4, Statement.Codes(lines).Length);
    }

    [Fact]
    public void Each_new_key_makes_a_numbered_commitment_chained_to_the_last_and_all_can_be_checked()
    {
        var day = new Day().Wheels(3).Guests(2);
        Sealed(day, 1);
        day.Do<SealedTasting>((step, at) => step.BreakSeal(at));
        Sealed(day, 2);
        var salt = Salt;
        day.Do<SealedTasting>((step, at) => step.Withdraw(at, day.Wheel("B"), "Cracked", null, day.Wheel("A"), new Seed(3)).Then(events => Trials.Common.Outcome.Of(Committing.With(day.Book, events, salt))));

        var all = day.Book.Commitments;
        Assert.Equal([1, 2, 3], all.Select(one => one.Number));
        Assert.Equal([1, 2, 3], all.Select(one => one.KeyVersion));
        Assert.Equal($"previous {all[1].Words}", all[2].Lines[3]);
        Assert.Contains(all[2].Lines, line => line.EndsWith(" W2 withdrawn B", StringComparison.Ordinal));
        Assert.Same(all[2], day.Book.Commitment);
        Assert.True(CommitmentCheck.Of(day.Trial, all).Holds);

        var changed = all[2] with { Lines = [.. all[2].Lines.Select(line => line.Replace(" W3 ", " W1 ", StringComparison.Ordinal))] };
        Assert.False(CommitmentCheck.Of(day.Trial, [all[0], all[1], changed]).Holds);
        var check = CommitmentCheck.Of(day.Trial, [all[0], all[2]]);
        Assert.True(check.Commitments[1].WordsHold);
        Assert.False(check.Commitments[1].ChainHolds);
    }

    [Fact]
    public void An_act_that_draws_no_key_gets_no_commitment()
    {
        var day = Day.Sealed(2, 2);
        var events = ImmutableArray.Create<DayEvent>(new TastingOpened(day.Now));
        Assert.Equal(events, Committing.With(day.Book, events, Salt));
        Assert.Null(day.Book.Commitment);
    }

    [Fact]
    public void A_salt_that_is_none_does_not_hold() =>
        Assert.False(new Commitment(1, 1, "not hexadecimal, surely, is it ok", "zoo zoo zoo zoo zoo", ["a"]).Holds());

    private static void Sealed(Day day, ulong seed) =>
        day.Do<DraftTasting>((draft, at) => draft.Seal(at, new Seed(seed)).Then(events => Trials.Common.Outcome.Of(Committing.With(day.Book, events, Salt))));
}
