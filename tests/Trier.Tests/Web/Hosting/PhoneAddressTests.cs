using System.Net;
using Microsoft.AspNetCore.Http;
using Trier.Trials.Common;
using Trier.Web.Hosting;

namespace Trier.Tests.Web.Hosting;

public sealed class PhoneAddressTests : IDisposable
{
    private readonly DirectoryInfo _folder = Directory.CreateTempSubdirectory("trier-tests-");

    [Fact]
    public async Task Cards_printed_at_home_are_told_to_be_dead_on_the_club_s_network_and_alive_again_once_printed_there()
    {
        var trial = new TrialId(Guid.NewGuid());
        var (home, club) = (At("192.0.2.7"), At("198.51.100.9"));
        Assert.Null(await club.OutdatedAsync(trial, Asking()));
        await home.NoteAsync(trial, home.Now(Asking()));
        Assert.Equal("http://192.0.2.7:8417", await club.OutdatedAsync(trial, Asking()));
        Assert.Null(await home.OutdatedAsync(trial, Asking()));
        Assert.Null(await club.OutdatedAsync(new TrialId(Guid.NewGuid()), Asking()));
        await club.NoteAsync(trial, club.Now(Asking()));
        Assert.Null(await club.OutdatedAsync(trial, Asking()));
    }

    public void Dispose() => _folder.Delete(recursive: true);

    private static DefaultHttpContext Asking() => new() { Connection = { LocalPort = 8417 } };

    private PhoneAddress At(string address) => new(new HostSettings(_folder.FullName, 8417, IPAddress.Parse(address)));
}
