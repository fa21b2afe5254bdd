using System.CommandLine;
using Microsoft.EntityFrameworkCore;
using Trier.Storage;
using Trier.Storage.Access;
using Trier.Storage.Sqlite;
using Trier.Web.Hosting;

namespace Trier.Commands.Tastings;

/// <summary><c>trier link</c>: another one-time sign-in link for the site that is running.</summary>
internal static class LinkCommand
{
    public static Command Create()
    {
        var data = ServeCommand.DataOption();
        var command = new Command("link", "Print another one-time sign-in link.") { data };
        command.SetAction(async (parsed, cancellation) =>
        {
            var settings = new HostSettings(parsed.GetValue(data)?.FullName ?? HostSettings.UsualDataFolder, 0, null);
            if (!File.Exists(settings.Database) || !File.Exists(settings.AddressFile))
            {
                await Console.Error.WriteLineAsync($"There is no Trier in {settings.DataFolder}: start it with “trier serve”, or name its folder with --data.");
                return CommandLine.WrongInput;
            }

            using var writer = new WriterGate();
            var links = new SignInLinks(new SqliteDatabases(settings.Database), writer, TimeProvider.System);
            var address = (await File.ReadAllTextAsync(settings.AddressFile, cancellation)).Trim();
            Console.WriteLine($"{address}/sign-in/{await links.MakeAsync(cancellation)}");
            return CommandLine.Done;
        });
        return command;
    }
}
