using System.Net;

namespace Trier.Web.Hosting;

/// <summary>Where the site lives.</summary>
/// <param name="DataFolder">Folder of the database, its copies and the sign-in keys; made where it is missing.</param>
/// <param name="Port">Port; 0 takes a free one.</param>
/// <param name="Lan">The one address of this machine that phones may come in by, or null for this machine alone.</param>
public sealed record HostSettings(string DataFolder, int Port, IPAddress? Lan)
{
    /// <summary>The port used unless told otherwise.</summary>
    public const int UsualPort = 8417;

    /// <summary>Where data lie unless told otherwise: the user's own application data.</summary>
    public static string UsualDataFolder =>
        Path.Combine(Environment.GetFolderPath(Environment.SpecialFolder.LocalApplicationData, Environment.SpecialFolderOption.DoNotVerify), "trier");

    /// <summary>The database file.</summary>
    public string Database => Path.Combine(DataFolder, "trier.db");

    /// <summary>Holds the address the site was last opened at, for <c>trier link</c>.</summary>
    public string AddressFile => Path.Combine(DataFolder, "address");

    /// <summary>Held by the site that runs on this folder.</summary>
    public string LockFile => Path.Combine(DataFolder, "in-use");

    /// <summary>The address that stands on each trial's cards.</summary>
    public string PrintedFolder => Path.Combine(DataFolder, "printed");

    /// <summary>Copies made at every close.</summary>
    public string CopiesFolder => Path.Combine(DataFolder, "copies");

    /// <summary>Keys that sign the maker's cookie, so that open pages survive a restart.</summary>
    public string KeysFolder => Path.Combine(DataFolder, "keys");
}
