using System.Text;
using Trier.Publishing.Keys;
using Trier.Trials.Common;
using Trier.Trials.Tastings.Commitments;

namespace Trier.Publishing.Tests.Keys;

public sealed class KeyFileTests
{
    private static readonly TrialId Tasting = new(new Guid("0198fb52-6c00-7000-8000-000000000417"));

    private static readonly Commitment One = new(1, 1, "000102030405060708090a0b0c0d0e0f", "zoo able about above absent", ["trier key 1", "a", "b", "c", "304 W4 counts “Crème” & <b>"]);

    [Fact]
    public void A_file_is_read_as_it_was_written()
    {
        var (tasting, commitments) = KeyFile.Read(Encoding.UTF8.GetBytes(KeyFile.Write(Tasting, [One, One with { Number = 2 }]))).Value;
        Assert.Equal(Tasting, tasting);
        Assert.Equal([1, 2], commitments.Select(one => one.Number));
        Assert.Equal(One.Lines, commitments[0].Lines);
        Assert.Equal(One with { Lines = [] }, commitments[0] with { Lines = [] });
    }

    [Theory]
    [InlineData("", "not as in a key file")]
    [InlineData("null", "not a key file")]
    [InlineData("{\n\"form\": 3}", "Line 2")]
    [InlineData("""{"form":"trier key 1","tasting":"0198fb52-6c00-7000-8000-000000000417","rounds":2000000}""", "not")]
    [InlineData("""{"form":"trier key 1","tasting":"0198fb52-6c00-7000-8000-000000000417","rounds":2000000,"commitments":[]}""", "holds 0")]
    [InlineData("""{"form":"trier key 1","tasting":"0198fb52-6c00-7000-8000-000000000417","rounds":1000000000,"commitments":[]}""", "1000000000 rounds")]
    [InlineData("""{"form":"trier key 1","tasting":"0198fb52-6c00-7000-8000-000000000417","rounds":2000000,"commitments":[null]}""", "missing or broken")]
    public void What_is_no_key_file_is_told_in_a_sentence(string text, string says) =>
        Assert.Contains(says, KeyFile.Read(Encoding.UTF8.GetBytes(text)).Problems.Single().Sentence, StringComparison.Ordinal);
}
