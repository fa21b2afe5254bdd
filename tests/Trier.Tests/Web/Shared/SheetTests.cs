using System.Globalization;
using System.IO.Compression;
using System.Text;

namespace Trier.Tests.Web.Shared;

/// <summary>Colours keep the contrast WCAG 2.2 asks for, and a phone ballot stays small.</summary>
public sealed class SheetTests
{
    private static readonly string Kit = SiteFiles.Read("kit.css");

    [Theory]
    [InlineData("ink", "paper", 7)]
    [InlineData("ink", "cloth", 7)]
    [InlineData("pencil", "paper", 4.5)]
    [InlineData("pencil", "cloth", 4.5)]
    [InlineData("stamp", "paper", 4.5)]
    [InlineData("stamp", "sheet", 4.5)]
    [InlineData("ink", "wash", 4.5)]
    [InlineData("ink", "brass", 4.5)]
    [InlineData("line", "paper", 3)]
    [InlineData("line", "sheet", 3)]
    [InlineData("dark", "tone-1", 4.5)]
    [InlineData("light", "tone-2", 4.5)]
    [InlineData("dark", "tone-3", 4.5)]
    [InlineData("dark", "tone-4", 4.5)]
    [InlineData("light", "tone-5", 4.5)]
    [InlineData("light", "tone-6", 4.5)]
    [InlineData("dark", "tone-7", 4.5)]
    [InlineData("light", "tone-8", 4.5)]
    public void By_day_a_tone_can_be_read_on_its_ground(string text, string ground, double least) =>
        Assert.InRange(Contrast(Tokens(":root")[text], Tokens(":root")[ground]), least, 21);

    [Theory]
    [InlineData("ink", "paper", 7)]
    [InlineData("pencil", "paper", 4.5)]
    [InlineData("stamp", "paper", 4.5)]
    [InlineData("line", "paper", 3)]
    public void At_night_a_tone_can_be_read_on_its_ground(string text, string ground, double least) =>
        Assert.InRange(Contrast(Tokens(".night")[text], Tokens(".night")[ground]), least, 21);

    [Fact]
    public void A_tone_in_a_rack_carries_the_letters_it_was_measured_with()
    {
        var sheet = SiteFiles.Read("trier.css");
        string[] letters = ["dark", "light", "dark", "dark", "light", "light", "dark", "light"];
        for (int tone = 1; tone <= letters.Length; tone++)
            Assert.Contains(string.Create(CultureInfo.InvariantCulture, $".tone-{tone} {{ background-color: var(--tone-{tone}); color: var(--{letters[tone - 1]}); }}"), sheet, StringComparison.Ordinal);
    }

    [Fact]
    public void What_a_ballot_page_loads_beside_itself_is_small_and_holds_no_font()
    {
        string[] files = ["ballot.css", "kit.css", "ballot.js"];
        Assert.InRange(files.Sum(file => new FileInfo(SiteFiles.Path(file)).Length), 1, 32_000);
        Assert.InRange(files.Sum(Zipped), 1, 14_000);
        Assert.InRange(new FileInfo(SiteFiles.Path("ballot.js")).Length, 1, 14_999);
        Assert.DoesNotContain(files, file => SiteFiles.Read(file).Contains("@font-face", StringComparison.Ordinal));
    }

    [Fact]
    public void The_ballots_script_uses_nothing_that_plain_http_lacks()
    {
        var script = string.Join('\n', SiteFiles.Read("ballot.js").Split('\n').Where(line => !line.TrimStart().StartsWith("//", StringComparison.Ordinal)));
        Assert.All(["randomUUID", "crypto.subtle", "serviceWorker", "clipboard", "import "], word => Assert.DoesNotContain(word, script, StringComparison.Ordinal));
        Assert.Contains("getRandomValues", script, StringComparison.Ordinal);
    }

    // The contrast ratio of WCAG 2.2, "contrast ratio" and "relative luminance" among its terms.
    private static double Contrast(string one, string other)
    {
        double[] both = [Luminance(one), Luminance(other)];
        return (both.Max() + 0.05) / (both.Min() + 0.05);
    }

    private static double Luminance(string hex)
    {
        double Channel(int at)
        {
            double value = int.Parse(hex.AsSpan(at, 2), NumberStyles.HexNumber, CultureInfo.InvariantCulture) / 255.0;
            return value <= 0.04045 ? value / 12.92 : Math.Pow((value + 0.055) / 1.055, 2.4);
        }

        return (0.2126 * Channel(1)) + (0.7152 * Channel(3)) + (0.0722 * Channel(5));
    }

    private static Dictionary<string, string> Tokens(string selector)
    {
        string block = Kit[Kit.IndexOf(selector + " {", StringComparison.Ordinal)..];
        return block[..block.IndexOf('}', StringComparison.Ordinal)].Split('\n')
            .Select(line => line.Trim().TrimEnd(';').Split(": "))
            .Where(pair => pair is [['-', '-', ..], ['#', ..]])
            .ToDictionary(pair => pair[0][2..], pair => pair[1], StringComparer.Ordinal);
    }

    private static int Zipped(string file)
    {
        using var into = new MemoryStream();
        using (var zip = new GZipStream(into, CompressionLevel.Optimal, leaveOpen: true))
            zip.Write(Encoding.UTF8.GetBytes(SiteFiles.Read(file)));

        return (int)into.Length;
    }
}
