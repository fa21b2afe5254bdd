using System.IO.Compression;
using Trier.TestKit;

namespace Trier.Tests.Commands.Verdicts;

/// <summary>The program itself: ballots to a bundle, and a bundle back to its verdict.</summary>
public sealed class BundleCommandTests : IDisposable
{
    private static readonly string Demo = Path.Combine(Checkout.Root, "src", "Trier", "Demo", "demo-trial.ballots.csv");

    private readonly DirectoryInfo _folder = Directory.CreateTempSubdirectory("trier-tests-");

    [Fact]
    public async Task A_bundle_is_made_twice_alike_and_its_verdict_drawn_anew_is_equal()
    {
        var (zip, folder) = (Path.Combine(_folder.FullName, "bundle.zip"), Path.Combine(_folder.FullName, "bundle"));
        var made = await Started.RunAsync(null, "bundle", Demo, zip, "--repeat", "862=417");
        Assert.Equal((0, ""), (made.Code, made.Error));
        Assert.Equal(0, (await Started.RunAsync(null, "bundle", Demo, folder, "--repeat", "862=417")).Code);
        using (var archive = ZipFile.OpenRead(zip))
        {
            Assert.All(archive.Entries.Where(entry => !entry.Name.EndsWith(".pdf", StringComparison.Ordinal)), entry =>
            {
                using var packed = entry.Open();
                using var kept = new MemoryStream();
                packed.CopyTo(kept);
                Assert.True(kept.ToArray().AsSpan().SequenceEqual(File.ReadAllBytes(Path.Combine(folder, entry.FullName))), entry.FullName);
            });
        }

        foreach (var bundle in new[] { zip, folder })
        {
            var (code, output, error) = await Started.RunAsync(null, "verdict", bundle);
            Assert.Equal((0, ""), (code, error));
            Assert.Contains("593 is our best bet", output, StringComparison.Ordinal);
            Assert.EndsWith("Equal: drawn anew from the bundle's record, the verdict is the one the bundle holds.\n", output, StringComparison.Ordinal);
        }

        var json = await Started.RunAsync(null, "verdict", folder, "--json");
        Assert.Equal(await File.ReadAllTextAsync(Path.Combine(folder, "verdict.json"), TestContext.Current.CancellationToken), json.Output);
        await File.AppendAllTextAsync(Path.Combine(folder, "ballots.csv"), "T99,1,417,,,,,\n", TestContext.Current.CancellationToken);
        var changed = await Started.RunAsync(null, "verdict", folder);
        Assert.Equal(1, changed.Code);
        Assert.Contains("Not equal:\n- ballots.csv does not hold the ballots of record.json", changed.Output, StringComparison.Ordinal);
    }

    [Fact]
    public async Task What_is_no_bundle_and_what_is_there_already_is_told()
    {
        var folder = await Started.RunAsync(null, "verdict", _folder.FullName);
        Assert.Equal(1, folder.Code);
        Assert.Contains("without record.json", folder.Error, StringComparison.Ordinal);
        var taken = await Started.RunAsync(null, "bundle", Demo, _folder.FullName);
        Assert.Equal(1, taken.Code);
        Assert.Contains("is there already", taken.Error, StringComparison.Ordinal);
        var damaged = Path.Combine(_folder.FullName, "damaged.zip");
        await File.WriteAllBytesAsync(damaged, "PK\u0003\u0004nonsense"u8.ToArray(), TestContext.Current.CancellationToken);
        var broken = await Started.RunAsync(null, "verdict", damaged);
        Assert.Equal(1, broken.Code);
        Assert.Contains("The zip is damaged", broken.Error, StringComparison.Ordinal);
    }

    public void Dispose() => _folder.Delete(recursive: true);
}
