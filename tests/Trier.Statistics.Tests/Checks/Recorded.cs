using Trier.TestKit;

namespace Trier.Statistics.Tests.Checks;

/// <summary>Values printed by reference software, one "name = value" a line; the script that printed them lies beside the print-out.</summary>
internal static class Recorded
{
    public static Dictionary<string, double> Of(string name) =>
        File.ReadLines(Path.Combine(Checkout.Root, "tests", "Trier.Statistics.Tests", "Checks", name))
            .Where(line => line.Contains('=', StringComparison.Ordinal))
            .ToDictionary(line => line[..line.LastIndexOf('=')].Trim(), line => CheckData.Number(line[(line.LastIndexOf('=') + 1)..].Trim()), StringComparer.Ordinal);
}
