using System.Security.Cryptography;
using System.Text;
using Trier.Trials.Tastings.Commitments;

namespace Trier.Trials.Tests.Tastings.Commitments;

public sealed class WordListTests
{
    /// <summary>SHA-256 of the standard's own english.txt (BIP-39 reference, MIT): from memory, and that of two packages that publish the list.</summary>
    private const string Published = "2f5eed53a4727b4bf8880d8f3f199efc90e58503646d9ff8eff3a2ed3b24dbda";

    [Fact]
    public void The_list_is_the_published_one_to_the_last_letter() =>
        Assert.Equal(Published, Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(string.Concat(WordList.Words.Select(word => word + "\n"))))));

    [Fact]
    public void There_are_2048_short_words_told_apart_by_their_first_four_letters()
    {
        Assert.Equal(WordList.Size, WordList.Words.Length);
        Assert.All(WordList.Words, word => Assert.Matches("^[a-z]{3,8}$", word));
        Assert.Distinct(WordList.Words.Select(word => word[..Math.Min(4, word.Length)]));
    }

    [Theory]
    [InlineData("00000000000000", "abandon abandon abandon abandon abandon")]
    [InlineData("fffffffffffffe", "zoo zoo zoo zoo zoo")]
    // 00000000001 00000000010 00000000011 00000000100 00000000101 0
    [InlineData("0020080180400a", "ability able about above absent")]
    public void Bits_are_read_from_the_left_eleven_a_word(string bytes, string words) => Assert.Equal(words, WordList.Say(Convert.FromHexString(bytes), 5));

    [Fact]
    public void Too_few_bytes_are_a_defect() => Assert.Throws<ArgumentException>(() => WordList.Say(new byte[6], 5));
}
