using System.Net;
using System.Text;
using System.Text.RegularExpressions;
using Trier.Tests.Web.Ballots;
using Trier.Trials.Tastings;

namespace Trier.Tests.Web.Roles;

/// <summary>Looks for the key in an answer: status, headers and body, as bytes came in.</summary>
internal sealed class KeySpy
{
    private readonly List<string> _wheels;
    private readonly List<string> _withdrawn;
    private readonly List<Regex> _codes;

    private KeySpy(List<string> wheels, List<string> withdrawn, List<Regex> codes) => (_wheels, _withdrawn, _codes) = (wheels, withdrawn, codes);

    /// <summary>A spy that knows the wheels' names, recipes and ids, and, once there are any, their codes; the code of a withdrawn wheel is void, and naming that wheel tells nothing of the others.</summary>
    public static KeySpy On(DayBook book) => new(
        Words(book.Entries),
        Words(book.Entries.Where(entry => book.IsWithdrawn(entry.Wheel))),
        [.. (book.Key?.Lines ?? []).Where(line => !book.IsWithdrawn(line.Wheel)).Select(line => Seen(line.Code))]);

    /// <summary>What finds a code in a page: as a number of its own, not as three characters of an id.</summary>
    public static Regex Seen(BlindCode code) => new($"(?<![0-9A-Za-z#.%-]){code}(?![0-9A-Za-z%])", RegexOptions.None, TimeSpan.FromSeconds(1));

    public async Task<Found> LookAsync(HttpResponseMessage answer)
    {
        var text = new StringBuilder();
        foreach (var header in answer.Headers.Concat(answer.Content.Headers)) text.Append(header.Key).Append(": ").AppendJoin(' ', header.Value).Append('\n');
        var body = await answer.Content.ReadAsStringAsync();
        var all = text.Append(body).Append('\n').Append(WebUtility.HtmlDecode(body)).ToString();
        var wheels = _wheels.Where(wheel => all.Contains(wheel, StringComparison.OrdinalIgnoreCase)).ToList();
        return new(wheels, wheels.Except(_withdrawn, StringComparer.Ordinal).Any(), _codes.Count(code => code.IsMatch(all)));
    }

    private static List<string> Words(IEnumerable<Entry> entries) =>
        [.. entries.SelectMany(entry => new[] { entry.Name, entry.Facts.Recipe ?? entry.Name, entry.Wheel.Value.ToString("D"), entry.Wheel.Value.ToString("N") }).Distinct(StringComparer.Ordinal)];

    /// <summary>What an answer tells.</summary>
    /// <param name="Wheels">Words that name a wheel.</param>
    /// <param name="Standing">Whether one of them names a wheel that is not withdrawn.</param>
    /// <param name="Codes">How many of the codes stand in it.</param>
    internal sealed record Found(List<string> Wheels, bool Standing, int Codes)
    {
        public bool AnyWheel => Wheels.Count > 0;

        public bool Both => Standing && Codes > 0;
    }
}
