using System.CommandLine;
using System.Net;
using System.Net.NetworkInformation;
using System.Net.Sockets;
using QRCoder;
using Trier.Storage.Access;
using Trier.Web.Hosting;

namespace Trier.Commands.Tastings;

/// <summary><c>trier serve</c>: the site, on this machine alone unless phones are let in.</summary>
internal static class ServeCommand
{
    public static Option<DirectoryInfo?> DataOption() => new("--data") { Description = $"Where the data lie. Usually {HostSettings.UsualDataFolder}." };

    public static Command Create()
    {
        var data = DataOption();
        var port = new Option<int>("--port") { Description = "Port to listen on.", DefaultValueFactory = _ => HostSettings.UsualPort };
        var lan = new Option<bool>("--lan") { Description = "Let phones on this network in, by the one address that is printed." };
        var command = new Command("serve", "Open the site: trials, tastings, verdicts.") { data, port, lan };
        command.SetAction(async (parsed, cancellation) =>
        {
            var address = parsed.GetValue(lan) ? LanAddress() : null;
            if (parsed.GetValue(lan) && address is null)
            {
                await Console.Error.WriteLineAsync("This machine has no address on a local network: join the Wi-Fi first, or leave --lan out.");
                return CommandLine.WrongInput;
            }

            var folder = parsed.GetValue(data)?.FullName ?? HostSettings.UsualDataFolder;
            return await RunAsync(new HostSettings(folder, parsed.GetValue(port), address), "/", openBrowser: false, cancellation);
        });
        return command;
    }

    /// <summary>Runs the site until it is stopped.</summary>
    public static async Task<int> RunAsync(HostSettings settings, string openAt, bool openBrowser, CancellationToken cancellation)
    {
        using var folder = DataFolderLock.Take(settings);
        if (folder is null)
        {
            await Console.Error.WriteLineAsync($"Another Trier is open on {settings.DataFolder}: stop that one first, or name another folder with --data.");
            return CommandLine.WrongInput;
        }

        await using var app = await TrierHost.BuildAsync(settings);
        try
        {
            await app.StartAsync(cancellation);
        }
        catch (IOException)
        {
            await Console.Error.WriteLineAsync($"Port {settings.Port} is taken, perhaps by another Trier: choose another with --port.");
            return CommandLine.WrongInput;
        }

        var local = app.Urls.First(url => url.Contains("127.0.0.1", StringComparison.Ordinal)).TrimEnd('/');
        await File.WriteAllTextAsync(settings.AddressFile, local, cancellation);
        var secret = await app.Services.GetRequiredService<SignInLinks>().MakeAsync(cancellation);
        var link = $"{local}/sign-in/{secret}?to={Uri.EscapeDataString(openAt)}";
        Console.WriteLine($"Trier is open at {local}");
        Console.WriteLine($"Data lie in {settings.DataFolder}");
        Console.WriteLine();
        Console.WriteLine("Sign in here, once, within ten minutes (“trier link” prints another):");
        Console.WriteLine($"  {link}");
        if (settings.Lan is { } lan) PrintLan($"http://{lan}:{new Uri(local).Port}");
        Console.WriteLine();
        Console.WriteLine("Stop with Ctrl+C.");
        if (openBrowser) Browser.Open(link);
        await app.WaitForShutdownAsync(cancellation);
        return CommandLine.Done;
    }

    private static void PrintLan(string address)
    {
        using var qr = QRCodeGenerator.GenerateQrCode($"{address}/c", QRCodeGenerator.ECCLevel.M);
        using var drawn = new AsciiQRCode(qr);
        Console.WriteLine();
        Console.WriteLine($"Phones on this Wi-Fi: {address}/c");
        Console.WriteLine("Others on the same Wi-Fi could read or change what is sent: use a network you trust.");
        Console.WriteLine(drawn.GetGraphicSmall());
    }

    private static IPAddress? LanAddress() =>
        NetworkInterface.GetAllNetworkInterfaces()
            .Where(network => network.OperationalStatus == OperationalStatus.Up && network.NetworkInterfaceType is not NetworkInterfaceType.Loopback)
            .OrderByDescending(network => network.GetIPProperties().GatewayAddresses.Count)
            .SelectMany(network => network.GetIPProperties().UnicastAddresses)
            .Select(unicast => unicast.Address)
            .FirstOrDefault(address => address.AddressFamily == AddressFamily.InterNetwork && !IPAddress.IsLoopback(address));
}
