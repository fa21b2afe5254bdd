using System.Diagnostics;
using System.Globalization;
using System.Net;
using System.Text;
using System.Text.RegularExpressions;
using Trier.Publishing.Recipes;
using Trier.Trials.Makes.Recipes;

namespace Trier.Load;

/// <summary>The Make station over HTTP: from the request until its whole answer is here.</summary>
internal static partial class Making
{
    private const int Steps = 20;
    private const int Rows = 525_600;

    public static async Task<bool> RunAsync()
    {
        var folder = Directory.CreateTempSubdirectory("trier-load-");
        try
        {
            await using var site = await Site.StartAsync(folder.FullName);
            using var maker = new HttpClient { BaseAddress = site.Address };
            await SendAsync(maker, site.SignIn.PathAndQuery, "/sign-in", []);
            var recipe = await SendAsync(maker, "/recipes/import", "/recipes/import", [("text", RecipeJson.Write(TwentySteps()))]);
            var met = await TimeAsync(site, "sheet of 20 steps", 50, 60, async () => await ReadAsync(maker, $"{recipe}/sheet?milk=20&fat=3,6&treatment=Raw&lever=4"));
            var make = await SendAsync(maker, $"{recipe}/sheet?milk=20&fat=3,6&treatment=Raw&lever=4", $"{recipe}/makes", [("name", "A year"), ("begins", "2026-01-01 0:00")]);
            var file = Year();
            var worked = site.Worked;
            var watch = Stopwatch.StartNew();
            await UploadAsync(maker, $"{make}/meter", file);
            met &= Told("a year of readings, minute by minute (525,600), brought in", watch.Elapsed.TotalMilliseconds, (site.Worked - worked).TotalMilliseconds, 2000);
            return met & await TimeAsync(site, "the same drawn: the whole record", 1000, 20, async () => await ReadAsync(maker, $"{make}/record"));
        }
        finally
        {
            Microsoft.Data.Sqlite.SqliteConnection.ClearAllPools();
            folder.Delete(recursive: true);
        }
    }

    private static Recipe TwentySteps()
    {
        var draft = ShippedRecipes.Named("alpine")!.ToDraft();
        while (draft.Steps.Length < Steps) draft = draft with { Steps = draft.Steps.Add(draft.Steps[^1] with { Title = $"Dry off {draft.Steps.Length}" }) };
        return Recipe.Read(draft).Value.Recipe;
    }

    private static byte[] Year()
    {
        var text = new StringBuilder("time,pH\n", Rows * 24);
        var from = new DateTime(2026, 1, 1, 0, 0, 0, DateTimeKind.Unspecified);
        for (var i = 0; i < Rows; i++) text.Append(CultureInfo.InvariantCulture, $"{from.AddMinutes(i):yyyy-MM-dd HH:mm},{5.5 + (i % 97 * 0.01):0.00}\n");
        return Encoding.UTF8.GetBytes(text.ToString());
    }

    private static async Task<bool> TimeAsync(Site site, string what, double bar, int runs, Func<Task> work)
    {
        for (var warm = 0; warm < 10; warm++) await work();
        var (times, worked) = (new List<double>(), site.Worked);
        for (var run = 0; run < runs; run++)
        {
            var watch = Stopwatch.StartNew();
            await work();
            times.Add(watch.Elapsed.TotalMilliseconds);
        }

        times.Sort();
        return Told(what, times[runs / 2], (site.Worked - worked).TotalMilliseconds / runs, bar);
    }

    private static bool Told(string what, double milliseconds, double processor, double bar)
    {
        Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"| {what} | {milliseconds:0} ms | {processor:0} ms | {bar:0} ms | {(milliseconds < bar ? "met" : "NOT met")} |"));
        return milliseconds < bar;
    }

    private static async Task<string> ReadAsync(HttpClient maker, string path)
    {
        using var answer = await maker.GetAsync(new Uri(path, UriKind.Relative));
        answer.EnsureSuccessStatusCode();
        return await answer.Content.ReadAsStringAsync();
    }

    /// <summary>Posts the form of a page whose action begins so; the path of the page it leads to.</summary>
    private static async Task<string> SendAsync(HttpClient maker, string page, string action, (string Name, string Value)[] typed)
    {
        var (to, fields) = Form(await ReadAsync(maker, page), action);
        using var body = new FormUrlEncodedContent(fields.Where(field => typed.All(own => own.Name != field.Key)).Concat(typed.Select(own => KeyValuePair.Create(own.Name, own.Value))));
        using var answer = await maker.PostAsync(new Uri(to, UriKind.Relative), body);
        answer.EnsureSuccessStatusCode();
        return answer.RequestMessage!.RequestUri!.AbsolutePath;
    }

    private static async Task UploadAsync(HttpClient maker, string page, byte[] file)
    {
        var (to, fields) = Form(await ReadAsync(maker, page), page);
        using var body = new MultipartFormDataContent();
        foreach (var (name, value) in fields) body.Add(new StringContent(value), name);
        body.Add(new StringContent("pH"), "kind");
        body.Add(new ByteArrayContent(file), "file", "year.csv");
        using var answer = await maker.PostAsync(new Uri(to, UriKind.Relative), body);
        answer.EnsureSuccessStatusCode();
        if (!answer.RequestMessage!.RequestUri!.AbsolutePath.EndsWith("/record", StringComparison.Ordinal)) throw new InvalidOperationException("The file was not taken in.");
    }

    private static (string To, List<KeyValuePair<string, string>> Fields) Form(string html, string action)
    {
        var form = Forms().Matches(html).First(match => match.Groups["to"].Value.StartsWith(action, StringComparison.Ordinal));
        return (form.Groups["to"].Value, [.. Hidden().Matches(form.Value).Select(match => KeyValuePair.Create(match.Groups["name"].Value, WebUtility.HtmlDecode(match.Groups["value"].Value)))]);
    }

    [GeneratedRegex("<form [^>]*action=\"(?<to>[^\"]+)\".*?</form>", RegexOptions.Singleline | RegexOptions.ExplicitCapture, 2000)]
    private static partial Regex Forms();

    [GeneratedRegex("<input type=\"hidden\" name=\"(?<name>[^\"]+)\" value=\"(?<value>[^\"]*)\"", RegexOptions.ExplicitCapture, 2000)]
    private static partial Regex Hidden();
}
