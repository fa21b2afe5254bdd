using System.Text.RegularExpressions;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;
using Trier.Statistics.Randomness;
using Trier.Tests.Web.Ballots;
using Trier.Trials.Tastings;
using Trier.Trials.Tastings.Steps;
using Trier.Web.Access;

namespace Trier.Tests.Web.Roles;

/// <summary>
/// The key never appears before the reveal: every route the site has is asked for by everyone who may come, at every step. A taster, the server and a stranger
/// must never see a wheel named at all; a maker who keeps the key shut must never see a wheel and a code on one page.
/// </summary>
public sealed partial class EveryRouteTests
{
    [Theory]
    [InlineData("draft")]
    [InlineData("sealed")]
    [InlineData("open")]
    [InlineData("closed")]
    public async Task No_answer_tells_a_taster_a_server_or_a_blind_maker_the_key(string step)
    {
        await using var evening = await AtAsync(step);
        var book = (await evening.TastingAsync()).Book;
        var spy = KeySpy.On(book);
        var maker = await evening.MakerAsync();
        var taster = evening.NewPhone();
        var found = new List<string>();
        var asked = 0;
        foreach (var path in await PathsAsync(evening, HttpMethods.Get))
        {
            asked++;
            if ((await spy.LookAsync(await taster.FetchAsync(path))).AnyWheel && !path.StartsWith("/sign-in", StringComparison.Ordinal)) found.Add($"a taster or server at GET {path}");
            if ((await spy.LookAsync(await maker.FetchAsync(path))).Both) found.Add($"the maker at GET {path}");
        }

        foreach (var path in await PathsAsync(evening, HttpMethods.Post))
        {
            asked++;
            using var nothing = new FormUrlEncodedContent([]);
            if ((await spy.LookAsync(await taster.SendAsync(path, nothing))).AnyWheel) found.Add($"a taster or server at POST {path}");
        }

        Assert.True(asked > 40, $"Only {asked} routes were asked for.");
        Assert.Equal([], found);
        Assert.Empty((await evening.TastingAsync()).Book.KeyOpenings);
    }

    [Theory]
    [InlineData("draft")]
    [InlineData("sealed")]
    [InlineData("open")]
    [InlineData("closed")]
    public async Task Whatever_a_blind_maker_does_tells_them_no_key(string step)
    {
        await using var evening = await AtAsync(step);
        var book = (await evening.TastingAsync()).Book;
        var maker = await evening.MakerAsync();
        await maker.GetAsync("/trials/new");
        var token = maker.Form(null).Fields.Single(field => field.Key == "__RequestVerificationToken").Value;
        var (wheel, ada, bruno) = (book.Entries[0].Wheel.Value.ToString(), book.Tasters[0].Id.Value.ToString(), book.Tasters[1].Id.Value.ToString());
        var pages = await PathsAsync(evening, HttpMethods.Get);
        var found = new List<string>();
        var done = 0;
        // Opening the key is what a blind maker does not do; what ends a step comes last, or most acts would be too late.
        string[] ends = ["/open", "/break-seal", "/close"];
        var paths = (await PathsAsync(evening, HttpMethods.Post)).Where(path => !path.EndsWith("/reveal", StringComparison.Ordinal) && !path.EndsWith("/sign-out", StringComparison.Ordinal));
        foreach (var path in paths.OrderBy(path => Array.FindIndex(ends, end => path.EndsWith(end, StringComparison.Ordinal))))
        {
            var before = (await evening.TastingAsync()).Book.Log.Length;
            KeyValuePair<string, string>[] fields =
            [
                new("__RequestVerificationToken", token), new("wheel", wheel), new("off", wheel), new("repeat", book.Entries[2].Wheel.Value.ToString()), new("who", ada), new("here", ada), new("here", bruno),
                new("people", ada), new("people", bruno), new("reason", "smells of ammonia"), new("witness", "Cleo"), new("taster", "Somebody new"), new("name", path.Contains("/wheels", StringComparison.Ordinal) ? book.Entries[0].Name : "Ada"), new("group", "Table two"), new("kitchen", bruno),
            ];
            using var acts = new FormUrlEncodedContent(fields);
            var answer = await maker.SendAsync(path, acts);
            var now = (await evening.TastingAsync()).Book;
            if ((await KeySpy.On(now).LookAsync(answer)).Both) found.Add($"the maker at POST {path}");
            if (now.Log.Length > before) done++;
        }

        var spy = KeySpy.On((await evening.TastingAsync()).Book);
        foreach (var path in pages)
        {
            if ((await spy.LookAsync(await maker.FetchAsync(path))).Both) found.Add($"the maker at GET {path}, after all that");
        }

        Assert.True(found.Count == 0, string.Join('\n', found));
        Assert.True(done > 4, $"Only {done} acts were done.");
    }

    [Fact]
    public async Task A_maker_who_knows_what_is_left_off_a_plate_finds_no_code_missing_on_it()
    {
        await using var evening = await Evening.BeginAsync(open: false);
        var wheel = (await evening.TastingAsync()).Book.Entries[2].Wheel;
        var bruno = (await evening.TasterAsync("Bruno")).Id;
        await evening.ActAsync<DraftTasting>(draft => draft.LeaveOff(evening.Trials.Now, bruno, [wheel]));
        await evening.ActAsync<DraftTasting>(draft => draft.Seal(evening.Trials.Now, new Seed(7)));
        var (his, others) = (await evening.ServedAsync("Bruno"), (await evening.ServedAsync("Ada")).Union(await evening.ServedAsync("Cleo")).ToList());
        Assert.Equal((3, 4), (his.Length, others.Count));
        Assert.Empty(his.Intersect(others));
        var maker = await evening.MakerAsync();
        foreach (var page in new[] { "plates", "cards", "paper-ballots" })
        {
            var html = (await maker.GetAsync($"/trials/{evening.Trial.Value}/{page}")).Html;
            Assert.All(his.Concat(others), code => Assert.Contains(code.ToString(), html, StringComparison.Ordinal));
        }
    }

    [Fact]
    public async Task The_spy_sees_the_key_where_it_is_shown()
    {
        await using var evening = await AtAsync("sealed");
        var spy = KeySpy.On((await evening.TastingAsync()).Book);
        var plater = evening.NewPhone();
        await plater.GetAsync(await evening.Helpers.PathAsync(evening.Trial, Helper.Plater));
        await plater.PostAsync(plater.Form(null, ("by", "Gus")) is var form ? (plater.Path, form.Fields) : default);
        var found = await spy.LookAsync(plater.Answer);
        Assert.True(found.Both);
        Assert.Equal(5, found.Codes);
        Assert.All(Evening.Names, name => Assert.Contains(name, found.Wheels));
        var opening = Assert.Single((await evening.TastingAsync()).Book.KeyOpenings);
        Assert.Equal(("Gus", false), (opening.By, opening.Early));
    }

    [Fact]
    public async Task A_helper_s_link_opens_that_helper_s_page_and_no_other()
    {
        await using var evening = await AtAsync("sealed");
        var phone = evening.NewPhone();
        var (plater, server) = (await evening.Helpers.PathAsync(evening.Trial, Helper.Plater), await evening.Helpers.PathAsync(evening.Trial, Helper.Server));
        Assert.Contains("You plate.", (await phone.GetAsync(plater)).Text, StringComparison.Ordinal);
        Assert.Contains("3 plates to carry.", (await phone.GetAsync(server)).Text, StringComparison.Ordinal);
        foreach (var wrong in new[] { $"/p{server[2..]}", $"/s{plater[2..]}", "/p/aaaaaaaaaaaaaaaaaaaaaa", "/s/a" })
        {
            await phone.GetAsync(wrong);
            Assert.Equal(System.Net.HttpStatusCode.NotFound, phone.Answer.StatusCode);
        }
    }

    [Fact]
    public async Task A_plater_who_tastes_is_shown_apart_from_then_on()
    {
        await using var evening = await AtAsync("open");
        var plater = evening.NewPhone();
        var bruno = await evening.TasterAsync("Bruno");
        await plater.GetAsync(await evening.Helpers.PathAsync(evening.Trial, Helper.Plater));
        await plater.PostAsync((plater.Path, [new("by", "Bruno"), new("taster", bruno.Id.Value.ToString())]));
        Assert.Contains(bruno.Id, (await evening.TastingAsync()).Book.Learned.Select(learned => learned.Taster));
        await plater.PostAsync((plater.Path, [new("by", " ")]));
        Assert.Contains("Write your name", plater.Text, StringComparison.Ordinal);
        Assert.Single((await evening.TastingAsync()).Book.KeyOpenings);
    }

    private static async Task<Evening> AtAsync(string step)
    {
        var evening = await Evening.BeginAsync(open: false);
        if (step == "draft") return evening;
        var wheel = (await evening.TastingAsync()).Book.Entries[1].Wheel;
        await evening.ActAsync<DraftTasting>(draft => draft.ServeTwice(evening.Trials.Now, wheel));
        await evening.ActAsync<DraftTasting>(draft => draft.Seal(evening.Trials.Now, new Seed(7)));
        if (step == "sealed") return evening;
        await evening.ActAsync<SealedTasting>(ready => ready.Open(evening.Trials.Now));
        if (step == "closed") await evening.ActAsync<OpenTasting>(open => open.Close(evening.Trials.Now));
        return evening;
    }

    /// <summary>Every path of the site for a method, its places filled with what there is; files of wwwroot apart.</summary>
    private static async Task<List<string>> PathsAsync(Evening evening, string method)
    {
        var book = (await evening.TastingAsync()).Book;
        var ada = book.Tasters[0];
        var tokens = new[] { (await evening.DoorAsync("Ada")).Token };
        var plater = (await evening.Helpers.PathAsync(evening.Trial, Helper.Plater))[3..];
        var server = (await evening.Helpers.PathAsync(evening.Trial, Helper.Server))[3..];
        var scribe = (await evening.Helpers.PathAsync(evening.Trial, Helper.Scribe))[3..];
        var paths = new List<string>();
        foreach (var route in evening.Endpoints.OfType<RouteEndpoint>().Where(route => !route.Metadata.Any(about => about.GetType().Name.Contains("StaticAsset", StringComparison.Ordinal))))
        {
            if (route.Metadata.GetMetadata<HttpMethodMetadata>() is { } methods && !methods.HttpMethods.Contains(method)) continue;
            var pattern = route.RoutePattern.RawText!;
            paths.Add("/" + Places().Replace(pattern, place => place.Groups["name"].Value switch
            {
                "id" => evening.Trial.Value.ToString(),
                "wheel" => book.Entries[0].Wheel.Value.ToString(),
                "taster" => ada.Id.Value.ToString(),
                "token" => pattern.TrimStart('/')[0] switch { 'p' => plater, 's' => server, 'w' when pattern.StartsWith("/w/", StringComparison.Ordinal) || pattern.StartsWith("w/", StringComparison.Ordinal) => scribe, _ => tokens[0] },
                "number" => "1",
                "page" => "gate",
                "status" => "404",
                "deed" => "late",
                "step" => "sample",
                "key" or "known" => "tomme",
                "asked" or "secret" => Guid.Empty.ToString(),
                var other => throw new InvalidOperationException($"Say what stands for {{{other}}} in {pattern}."),
            }).TrimStart('/'));
        }

        return [.. paths.Distinct(StringComparer.Ordinal)];
    }

    [GeneratedRegex("\\{(?<name>[a-z]+)[^}]*\\}", RegexOptions.None, 1000)]
    private static partial Regex Places();
}
