using Trier.Web.Hosting;

namespace Trier.Tests.Web.Hosting;

public sealed class DataFolderLockTests : IDisposable
{
    private readonly DirectoryInfo _folder = Directory.CreateTempSubdirectory("trier-lock-");

    [Fact]
    public void One_site_at_a_time_runs_on_a_data_folder()
    {
        var settings = new HostSettings(_folder.FullName, 0, null);
        using (var first = DataFolderLock.Take(settings))
        {
            Assert.NotNull(first);
            Assert.Null(DataFolderLock.Take(settings));
        }

        using var after = DataFolderLock.Take(settings);
        Assert.NotNull(after);
    }

    public void Dispose() => _folder.Delete(recursive: true);
}
