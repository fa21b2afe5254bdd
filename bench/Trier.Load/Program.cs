// Lets 200 tasters send their ballots to a running site within one second, over HTTP on this machine, and says what became of them:
//
//     dotnet run -c Release --project bench/Trier.Load [rounds]
//
// Each round begins with a fresh database and a fresh site in a process of its own. Every taster places their samples first, unmeasured; then
// the sends leave at even steps over one second, whether or not earlier ones are answered, and a send's time runs from the moment it was due
// until its acknowledgement is here. Exit code 1 where a ballot was lost or refused, or the 99th percentile is 500 ms or more.
//
//     dotnet run -c Release --project bench/Trier.Load making
//
// Times the Make station the same way: a sheet of 20 steps, a year of a meter's readings brought in and drawn. Exit code 1 where a bar is missed.

using System.Globalization;
using Trier.Load;

const int Tasters = 200;
const double Bar = 500;
if (args is ["making"]) return await Making.RunAsync() ? 0 : 1;
var rounds = args.Length > 0 ? int.Parse(args[0], CultureInfo.InvariantCulture) : 3;
var met = true;
for (var round = 1; round <= rounds; round++)
{
    var folder = Directory.CreateTempSubdirectory("trier-load-");
    try
    {
        var (trial, guests) = await Seeding.OpenTastingAsync(folder.FullName, Tasters);
        await using var site = await Site.StartAsync(folder.FullName);
        await Sending.PlaceAsync(site.Address, guests);
        var worked = site.Worked;
        var answers = await Sending.SendAsync(site.Address, guests, TimeSpan.FromSeconds(1));
        var each = (site.Worked - worked).TotalMilliseconds / Tasters;
        var refused = answers.Count(answer => !answer.Acknowledged);
        var lost = await Seeding.MissingAsync(folder.FullName, trial, answers.Where(answer => answer.Acknowledged).Select(answer => answer.Send));
        var times = answers.Select(answer => answer.Milliseconds).Order().ToList();
        double Percentile(double share) => times[(int)Math.Ceiling(share * times.Count) - 1];
        Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"round {round}: {answers.Count} sent, {refused} refused, {lost} lost; median {Percentile(0.5):0} ms, p90 {Percentile(0.9):0} ms, p99 {Percentile(0.99):0} ms, longest {times[^1]:0} ms; {each:0.0} ms of processor a ballot"));
        met &= refused == 0 && lost == 0 && Percentile(0.99) < Bar;
    }
    finally
    {
        Microsoft.Data.Sqlite.SqliteConnection.ClearAllPools();
        folder.Delete(recursive: true);
    }
}

Console.WriteLine(met ? "The bar is met: none lost, none refused, p99 under 500 ms." : "The bar is NOT met.");
return met ? 0 : 1;
