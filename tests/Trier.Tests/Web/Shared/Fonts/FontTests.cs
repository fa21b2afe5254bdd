using System.Security.Cryptography;

namespace Trier.Tests.Web.Shared.Fonts;

/// <summary>The vendored fonts are the ones that were cut and looked at; a change of one byte is a decision, not an accident.</summary>
public sealed class FontTests
{
    public static TheoryData<string, string> Known { get; } = new()
    {
        { "trier-sans-regular.woff2", "87f847fad7b96c206024b04454ff9eca69419b981a8c484249752c6e4c75c572" },
        { "trier-sans-semibold.woff2", "4e4be7e60b8a1a1c875535d23e247e581da7cbb4c6e5d162d33321100158e23e" },
        { "trier-serif-display.woff2", "49f7658e44318f9a80733e95c610c9a0c4ac7f3eab15c2f5fc456c0996c79400" },
        { "trier-serif-italic.woff2", "a7db4c5f8454d1f068648c738086dff8c8c0c4d5b51f33da46b256d27444fa73" },
        { "trier-serif-regular.woff2", "2870c8c8a95b0b2d0a9c8bbec5d37c1d77364f3542a8a5275c28c2e8eeeaec2a" },
        { "trier-serif-semibold-italic.woff2", "cb89b78ac50e8eb639e6bf44cca3ab5cf46389fc8b45a4edf5b698e087fe45a5" },
        { "trier-serif-semibold.woff2", "324cbb67f291d357c2be41f64491f6c327bb4d927971dc34c0d60f729a4fe21b" },
    };

    [Theory]
    [MemberData(nameof(Known))]
    public void A_font_file_is_the_one_that_was_cut(string file, string sha256) =>
        Assert.Equal(sha256, Convert.ToHexStringLower(SHA256.HashData(File.ReadAllBytes(SiteFiles.Path("fonts", file)))));

    [Fact]
    public void No_font_is_served_without_a_known_hash() =>
        Assert.Equal(Known.Select(row => row.Data.Item1).Order(StringComparer.Ordinal), Directory.GetFiles(SiteFiles.Path("fonts"), "*.woff2").Select(Path.GetFileName).Order(StringComparer.Ordinal));

    [Theory]
    [InlineData("LICENSE-sans.md")]
    [InlineData("LICENSE-serif.md")]
    public void The_licence_lies_beside_the_fonts(string file) =>
        Assert.Contains("SIL OPEN FONT LICENSE Version 1.1", SiteFiles.Read("fonts", file), StringComparison.Ordinal);

    [Fact]
    public void Every_font_the_sheet_names_is_there()
    {
        var named = SiteFiles.Read("trier.css").Split("url(\"fonts/").Skip(1).Select(part => part[..part.IndexOf('"', StringComparison.Ordinal)]).ToList();
        Assert.Equal(Known.Count, named.Count);
        Assert.All(named, file => Assert.True(File.Exists(SiteFiles.Path("fonts", file)), file));
    }
}
