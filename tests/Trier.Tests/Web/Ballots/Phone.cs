using System.Net;
using System.Text.RegularExpressions;

namespace Trier.Tests.Web.Ballots;

/// <summary>A browser without script: keeps cookies, follows redirects, fills in the first form that is no choice of language, or a named one, of the page it is on.</summary>
internal sealed partial class Phone : IDisposable
{
    private readonly HttpClient _client;

    public Phone(Uri address) => _client = new HttpClient(new SocketsHttpHandler { CookieContainer = new CookieContainer() }) { BaseAddress = address };

    public string Path { get; private set; } = "/";

    public string Html { get; private set; } = "";

    public HttpResponseMessage Answer { get; private set; } = new();

    /// <summary>Every page this phone ever showed.</summary>
    public List<string> Seen { get; } = [];

    /// <summary>What a reader sees, without tags.</summary>
    public string Text => WebUtility.HtmlDecode(Spaces().Replace(Tags().Replace(Html, " "), " "));

    /// <summary>Style sheets and modules the page asks for.</summary>
    public IEnumerable<string> Files => Sheets().Matches(Html).Select(match => "/" + match.Groups["at"].Value.TrimStart('/'));

    /// <summary>The key of the page's first draft.</summary>
    public string DraftKey => Drafts().Match(Html) is { Success: true } found ? found.Groups["is"].Value : throw new InvalidOperationException("No draft on this page.");

    public async Task<Phone> GetAsync(string path)
    {
        await ShowAsync(await _client.GetAsync(new Uri(path, UriKind.Relative)));
        return this;
    }

    /// <summary>The raw bytes of a file and its headers.</summary>
    public Task<HttpResponseMessage> FetchAsync(string path, params (string Name, string Value)[] headers)
    {
        var request = new HttpRequestMessage(HttpMethod.Get, new Uri(path, UriKind.Relative));
        foreach (var (name, value) in headers) request.Headers.TryAddWithoutValidation(name, value);
        return _client.SendAsync(request);
    }

    /// <summary>The bare answer to a post.</summary>
    public Task<HttpResponseMessage> SendAsync(string path, HttpContent content) => _client.PostAsync(new Uri(path, UriKind.Relative), content);

    /// <summary>What pressing a key of the page would post: hidden fields, chosen and typed ones as they stand, and what is given.</summary>
    public (string Action, List<KeyValuePair<string, string>> Fields) Form(string? action = null, params (string Name, string Value)[] given)
    {
        var form = Forms().Matches(Html).Select(match => match.Value).First(text => action is null ? !text.Contains("class=\"languages\"", StringComparison.Ordinal) : text.Contains($"action=\"{action}", StringComparison.Ordinal));
        var target = WebUtility.HtmlDecode(ActionOf().Match(form).Groups["to"].Value);
        var body = Templates().Replace(form, "");
        var fields = new List<KeyValuePair<string, string>>();
        foreach (Match input in Inputs().Matches(body))
        {
            var tag = input.Value;
            if (tag.Contains(" disabled", StringComparison.Ordinal)) continue;
            if ((tag.Contains("\"radio\"", StringComparison.Ordinal) || tag.Contains("\"checkbox\"", StringComparison.Ordinal)) && !tag.Contains(" checked", StringComparison.Ordinal)) continue;
            var name = NameOf().Match(tag).Groups["is"].Value;
            if (name.Length > 0 && given.All(field => field.Name != name)) fields.Add(new(name, WebUtility.HtmlDecode(ValueOf().Match(tag).Groups["is"].Value)));
        }

        fields.AddRange(given.Select(field => KeyValuePair.Create(field.Name, field.Value)));
        return (target, fields);
    }

    public Task<Phone> PressAsync(params (string Name, string Value)[] given) => PostAsync(Form(null, given));

    public async Task<Phone> PostAsync((string Action, List<KeyValuePair<string, string>> Fields) form)
    {
        using var content = new FormUrlEncodedContent(form.Fields);
        await ShowAsync(await _client.PostAsync(new Uri(form.Action, UriKind.Relative), content));
        return this;
    }

    /// <summary>Posts a form with a file in it, as a browser does.</summary>
    public async Task<Phone> UploadAsync((string Action, List<KeyValuePair<string, string>> Fields) form, string field, string name, string text)
    {
        using var content = new MultipartFormDataContent();
        foreach (var (key, value) in form.Fields.Where(one => one.Key != field)) content.Add(new StringContent(value), key);
        content.Add(new ByteArrayContent(System.Text.Encoding.UTF8.GetBytes(text)), field, name);
        await ShowAsync(await _client.PostAsync(new Uri(form.Action, UriKind.Relative), content));
        return this;
    }

    public void Dispose() => _client.Dispose();

    private async Task ShowAsync(HttpResponseMessage answer)
    {
        Answer = answer;
        Path = answer.RequestMessage!.RequestUri!.PathAndQuery;
        Html = await answer.Content.ReadAsStringAsync();
        Seen.Add(Html);
    }

    [GeneratedRegex("<form[^>]*>.*?</form>", RegexOptions.Singleline | RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex Forms();

    [GeneratedRegex("<template.*?</template>", RegexOptions.Singleline | RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex Templates();

    [GeneratedRegex("action=\"(?<to>[^\"]*)\"", RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex ActionOf();

    [GeneratedRegex("<input[^>]*>", RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex Inputs();

    [GeneratedRegex(" name=\"(?<is>[^\"]*)\"", RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex NameOf();

    [GeneratedRegex(" value=\"(?<is>[^\"]*)\"", RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex ValueOf();

    [GeneratedRegex("<[^>]*>", RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex Tags();

    [GeneratedRegex("\\s+", RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex Spaces();

    [GeneratedRegex("(href|src)=\"(?<at>[^\":]+\\.(css|js))\"", RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex Sheets();

    [GeneratedRegex("data-draft=\"(?<is>[^\"]*)\"", RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex Drafts();
}
