namespace Trier.Web.Hosting;

/// <summary>Holds a data folder for one running site: two would each keep trials in memory that the other changes.</summary>
internal sealed class DataFolderLock : IDisposable
{
    private readonly FileStream _held;

    private DataFolderLock(FileStream held) => _held = held;

    /// <summary>Takes the folder; null where another site holds it. The system lets go of it even when this program is killed.</summary>
    /// <param name="settings">Where the site lives.</param>
    public static DataFolderLock? Take(HostSettings settings)
    {
        Directory.CreateDirectory(settings.DataFolder);
        try
        {
            return new(new FileStream(settings.LockFile, FileMode.OpenOrCreate, FileAccess.ReadWrite, FileShare.None));
        }
        catch (IOException)
        {
            return null;
        }
    }

    /// <summary>Lets go of the folder.</summary>
    public void Dispose() => _held.Dispose();
}
