using Xunit.Sdk;

namespace Trier.Browser.Tests.Kit;

/// <summary>The walk's own eye is not blind.</summary>
public sealed class EyeTests(Chromium chromium)
{
    [Fact]
    public async Task What_is_wrong_with_a_page_is_told_with_page_rule_and_node()
    {
        await using var context = await chromium.PhoneAsync();
        var page = await context.NewPageAsync();
        await page.SetContentAsync("<html lang=en><title>A page</title><meta name=viewport content='width=device-width'><main><h1>A page</h1><details><summary>More</summary><img src='/cheese.png'></details><div style='width:350px'>wide</div></main>");
        var eye = new Eye();
        await eye.PhoneAsync(page, "a poor page");
        var told = Assert.Throws<TrueException>(eye.FoundNothing).Message;
        Assert.Contains("a poor page at 390 px: axe image-alt (", told, StringComparison.Ordinal);
        Assert.Contains("<img src=\"/cheese.png\">", told, StringComparison.Ordinal);
        Assert.Contains("a poor page at 320 px: the page is 35", told, StringComparison.Ordinal);
        Assert.DoesNotContain("at 390 px: the page is", told, StringComparison.Ordinal);
    }

    [Fact]
    public void An_eye_that_looked_at_nothing_has_not_found_nothing() => Assert.Throws<TrueException>(new Eye().FoundNothing);
}
