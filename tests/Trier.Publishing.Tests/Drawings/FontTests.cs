using System.Security.Cryptography;
using System.Text;
using Trier.Publishing.Drawings;
using Trier.TestKit;

namespace Trier.Publishing.Tests.Drawings;

/// <summary>The shipped fonts are the published ones, with their licence, and are measured rightly.</summary>
public sealed class FontTests
{
    private static readonly string Folder = Path.Combine(Checkout.Root, "src", "Trier.Publishing", "Fonts");

    public static TheoryData<string, string> Known { get; } = new()
    {
        { "SourceSans3-Regular.ttf", "4644c81b86ec9caaa76b634889968ed3c4f4f52f054855933acc7c2b21e53b0f" },
        { "SourceSans3-Semibold.ttf", "a3f4f8dcf343a8f24dc61951de93f3ba1558b15cd250ba24af8a40e957081b7d" },
        { "SourceSerif4-It.ttf", "9d2950a8f1da66e21502c35d646a1d2148e79f9ea43fd2158cf02f5232e7f430" },
        { "SourceSerif4-Regular.ttf", "e5a4ee6a3d87bb9024796be390c6771e2a0eb1883dae25effaf57ca01668e24b" },
        { "SourceSerif4-Semibold.ttf", "36db62940cb5728b12b1802476dc7fcf4c6c519a7bdd476ba23a4e555fc4655f" },
        { "SourceSerif4-SemiboldIt.ttf", "d6a0a4317102a255a55850640332ba3acc7c872606a555516b4ecdb66f3c9899" },
        { "SourceSerif4Display-Regular.ttf", "a1788d674713c99e61d4541c85e5cfbc3145c4e746b0185c674a0b15f7313295" },
    };

    [Theory]
    [MemberData(nameof(Known))]
    public void A_font_file_is_the_published_one(string file, string sha256) =>
        Assert.Equal(sha256, Convert.ToHexStringLower(SHA256.HashData(File.ReadAllBytes(Path.Combine(Folder, file)))));

    [Fact]
    public void No_font_is_shipped_without_a_known_hash() =>
        Assert.Equal(Known.Select(row => row.Data.Item1).Order(StringComparer.Ordinal), Directory.GetFiles(Folder, "*.ttf").Select(Path.GetFileName).Order(StringComparer.Ordinal));

    [Theory]
    [InlineData("LICENSE-sans.md")]
    [InlineData("LICENSE-serif.md")]
    public void The_licence_lies_beside_the_fonts(string file) =>
        Assert.Contains("SIL OPEN FONT LICENSE Version 1.1", File.ReadAllText(Path.Combine(Folder, file)), StringComparison.Ordinal);

    [Fact]
    public void Every_face_has_the_letters_of_its_guests_and_a_width_like_the_drawing_library_s()
    {
        const string Guests = "Amélia Conceição Inês Łukasz Őri Ğül ½ ⅓ ° µ ≥ α χ − – “” ‡ †";
        foreach (var face in Enum.GetValues<Face>())
        {
            using var typeface = SkiaSharp.SKTypeface.FromData(SkiaSharp.SKData.CreateCopy(FontFiles.Of(face)));
            using var font = new SkiaSharp.SKFont(typeface, 100) { Hinting = SkiaSharp.SKFontHinting.None, Subpixel = true, LinearMetrics = true };
            Assert.Equal(font.MeasureText(Guests), TextRuler.Width(Guests, 100, face), 0.5);
            if (face is Face.Sans or Face.SansStrong) Assert.All(Guests.EnumerateRunes(), rune => Assert.True(FontFiles.Metrics(face).Has(rune), rune.ToString()));
            Assert.False(FontFiles.Metrics(face).Has(new Rune(0x10FFFD)));
        }
    }

    [Fact]
    public void Text_is_wrapped_within_its_width_and_nothing_is_lost()
    {
        const string Text = "Thistle is our best bet: nobody put it last; Donaudampfschifffahrtsgesellschaftskapitän.";
        var lines = TextRuler.Wrap(Text, 120, 16).ToList();
        Assert.All(lines, line => Assert.True(TextRuler.Width(line, 16) <= 120, line));
        Assert.Equal(Text.Replace(" ", "", StringComparison.Ordinal), string.Concat(lines).Replace(" ", "", StringComparison.Ordinal));
        var cut = TextRuler.Fit("Conceição Salgueiro", 60, 16);
        Assert.Matches("^Conce.*…$", cut);
        Assert.InRange(TextRuler.Width(cut, 16), 45, 60);
        Assert.Equal("", TextRuler.Fit("", -1, 16));
    }
}
