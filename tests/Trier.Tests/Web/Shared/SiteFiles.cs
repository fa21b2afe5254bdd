using Trier.TestKit;

namespace Trier.Tests.Web.Shared;

/// <summary>The files the site serves, as they lie in the checkout.</summary>
internal static class SiteFiles
{
    public static string Path(params string[] parts) => System.IO.Path.Combine([Checkout.Root, "src", "Trier", "wwwroot", .. parts]);

    public static string Read(params string[] parts) => File.ReadAllText(Path(parts));
}
