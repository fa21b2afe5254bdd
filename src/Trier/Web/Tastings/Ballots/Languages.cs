using System.Globalization;
using Trier.Resources;
using Trier.Storage.Tastings;
using Trier.Web.Access;
using StringWithQualityHeaderValue = Microsoft.Net.Http.Headers.StringWithQualityHeaderValue;

namespace Trier.Web.Tastings.Ballots;

/// <summary>
/// Answers in the language the taster chose; where they chose none, in the one this phone chose before or its browser asks for, where there is a
/// resource file for it; else in English.
/// </summary>
/// <param name="doors">The links.</param>
/// <param name="trials">The trials.</param>
internal sealed class Languages(TasterDoors doors, TrialStore trials) : IEndpointFilter
{
    private const string Cookie = "trier-language";

    /// <summary>Remembers the choice on this phone.</summary>
    /// <param name="context">The request.</param>
    /// <param name="language">The language.</param>
    public static void Remember(HttpContext context, CultureInfo language) =>
        context.Response.Cookies.Append(Cookie, language.Name, new CookieOptions { HttpOnly = true, SameSite = SameSiteMode.Strict, MaxAge = TimeSpan.FromDays(365), IsEssential = true });

    public async ValueTask<object?> InvokeAsync(EndpointFilterInvocationContext context, EndpointFilterDelegate next)
    {
        var before = (CultureInfo.CurrentCulture, CultureInfo.CurrentUICulture);
        CultureInfo.CurrentUICulture = await WantedAsync(context.HttpContext);
        CultureInfo.CurrentCulture = CultureInfo.CurrentUICulture;
        try
        {
            // The page is written here, while the language still holds.
            if (await next(context) is IResult result) await result.ExecuteAsync(context.HttpContext);
            return Results.Empty;
        }
        finally
        {
            (CultureInfo.CurrentCulture, CultureInfo.CurrentUICulture) = before;
        }
    }

    private async Task<CultureInfo> WantedAsync(HttpContext context)
    {
        var own = await OwnAsync(context.GetRouteValue("token") as string);
        return BallotWords.Find(own) ?? BallotWords.Find(context.Request.Cookies[Cookie]) ?? Asked(context.Request.GetTypedHeaders().AcceptLanguage);
    }

    private async Task<string?> OwnAsync(string? token) =>
        token is not null && await doors.FindAsync(token) is { } door && await trials.FindAsync(door.Trial) is { } tasting ? tasting.Book.Taster(door.Taster)?.Language : null;

    private static CultureInfo Asked(IList<StringWithQualityHeaderValue> asked)
    {
        foreach (var language in asked.OrderByDescending(value => value.Quality ?? 1).Take(10))
        {
            var wanted = language.Value.Value ?? "";
            var found = BallotWords.Find(wanted) ?? BallotWords.Find(wanted.Split('-')[0]);
            if (found is not null) return found;
        }

        return BallotWords.Languages[0];
    }
}
