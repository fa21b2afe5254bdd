using System.CommandLine;
using Trier.Storage.Sqlite;
using Trier.Web.Hosting;

namespace Trier.Commands.Tastings;

/// <summary><c>trier backup FILE</c>: a checked copy of the database, also while the site runs.</summary>
internal static class BackupCommand
{
    public static Command Create()
    {
        var file = new Argument<FileInfo>("file") { Description = "Where the copy goes." };
        var data = ServeCommand.DataOption();
        var command = new Command("backup", "Copy the database, also while the site runs.") { file, data };
        command.SetAction(async (parsed, cancellation) =>
        {
            var settings = new HostSettings(parsed.GetValue(data)?.FullName ?? HostSettings.UsualDataFolder, 0, null);
            var copy = parsed.GetValue(file)!;
            if (!File.Exists(settings.Database))
            {
                await Console.Error.WriteLineAsync($"There is no Trier in {settings.DataFolder}: name its folder with --data.");
                return CommandLine.WrongInput;
            }

            if (copy.FullName == Path.GetFullPath(settings.Database))
            {
                await Console.Error.WriteLineAsync("That is the database itself: name another file for the copy.");
                return CommandLine.WrongInput;
            }

            if (copy.Directory is not { Exists: true })
            {
                await Console.Error.WriteLineAsync($"The folder of {copy.FullName} does not exist: make it first.");
                return CommandLine.WrongInput;
            }

            await SqliteBackup.CopyAsync(settings.Database, copy.FullName, cancellation);
            Console.WriteLine($"Copied and checked: {copy.FullName}");
            return CommandLine.Done;
        });
        return command;
    }
}
