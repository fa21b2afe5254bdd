using System.Diagnostics;
using System.Globalization;
using System.Net;

namespace Trier.Load;

/// <summary>What became of one send.</summary>
internal sealed record Answer(Guid Send, bool Acknowledged, double Milliseconds);

/// <summary>The tasters' phones.</summary>
internal static class Sending
{
    /// <summary>Every taster puts their samples in places; nothing is measured.</summary>
    public static async Task PlaceAsync(Uri site, IReadOnlyList<Guest> guests)
    {
        using var phone = Phone(site);
        foreach (var guest in guests)
        {
            using var form = new FormUrlEncodedContent(guest.Served.Select(code => KeyValuePair.Create("order", $"{code}")).Append(new("sendId", $"{guest.Placed}")));
            using var answer = await phone.PostAsync(new Uri($"{guest.Path}/places", UriKind.Relative), form);
            if (!GoesTo(answer, "/review")) throw new InvalidOperationException($"Placing was answered with {answer.StatusCode} {answer.Headers.Location}.");
        }
    }

    /// <summary>Every taster sends, at even steps over some time.</summary>
    public static async Task<IReadOnlyList<Answer>> SendAsync(Uri site, IReadOnlyList<Guest> guests, TimeSpan within)
    {
        var watch = Stopwatch.StartNew();
        return await Task.WhenAll(guests.Select((guest, at) => SendOneAsync(site, guest, watch, within * at / guests.Count)));
    }

    private static async Task<Answer> SendOneAsync(Uri site, Guest guest, Stopwatch watch, TimeSpan due)
    {
        // A phone of its own each: nobody shares a connection.
        using var phone = Phone(site);
        if (due - watch.Elapsed is var wait && wait > TimeSpan.Zero) await Task.Delay(wait);
        using var form = new FormUrlEncodedContent([new("sendId", $"{guest.Sent}"), new("base", $"{guest.Placed}")]);
        try
        {
            using var answer = await phone.PostAsync(new Uri($"{guest.Path}/review", UriKind.Relative), form);
            return new Answer(guest.Sent, GoesTo(answer, "/sent"), (watch.Elapsed - due).TotalMilliseconds);
        }
        catch (HttpRequestException broken)
        {
            await Console.Error.WriteLineAsync(string.Create(CultureInfo.InvariantCulture, $"{due.TotalMilliseconds:0} ms: {broken.Message}"));
            return new Answer(guest.Sent, false, (watch.Elapsed - due).TotalMilliseconds);
        }
    }

    private static HttpClient Phone(Uri site) => new(new SocketsHttpHandler { AllowAutoRedirect = false }) { BaseAddress = site };

    private static bool GoesTo(HttpResponseMessage answer, string page) =>
        answer.StatusCode is HttpStatusCode.SeeOther or HttpStatusCode.Found && answer.Headers.Location is { } to && to.OriginalString.EndsWith(page, StringComparison.Ordinal);
}
