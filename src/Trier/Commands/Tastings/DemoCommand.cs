using System.CommandLine;
using Trier.Demo;
using Trier.Web.Hosting;

namespace Trier.Commands.Tastings;

/// <summary><c>trier demo</c>: two invented trials in a throw-away database, open at its verdict.</summary>
internal static class DemoCommand
{
    public static Command Create()
    {
        var port = new Option<int>("--port") { Description = "Port to listen on; 0 takes a free one.", DefaultValueFactory = _ => 0 };
        var quiet = new Option<bool>("--no-browser") { Description = "Print the link only." };
        var command = new Command("demo", "Look around in two invented trials, open at the verdict of the first. Nothing of them is kept.") { port, quiet };
        command.SetAction(async (parsed, cancellation) =>
        {
            var folder = Directory.CreateTempSubdirectory("trier-demo-");
            try
            {
                var settings = new HostSettings(folder.FullName, parsed.GetValue(port), Lan: null);
                var trial = await DemoTrial.SeedAsync(settings);
                Console.WriteLine("Two invented trials, one tasted and one still ageing: no real people, places or data. They are thrown away when you stop.");
                return await ServeCommand.RunAsync(settings, $"/trials/{trial.Value}/verdict", openBrowser: !parsed.GetValue(quiet), cancellation);
            }
            finally
            {
                Microsoft.Data.Sqlite.SqliteConnection.ClearAllPools();
                folder.Delete(recursive: true);
            }
        });
        return command;
    }
}
