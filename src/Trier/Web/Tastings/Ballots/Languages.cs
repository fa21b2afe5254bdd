using System.Globalization;
using Microsoft.Net.Http.Headers;
using Trier.Resources;

namespace Trier.Web.Tastings.Ballots;

/// <summary>Answers in the language the taster's browser asks for, where there is a resource file for it; else in English.</summary>
internal sealed class Languages : IEndpointFilter
{
    public async ValueTask<object?> InvokeAsync(EndpointFilterInvocationContext context, EndpointFilterDelegate next)
    {
        var before = (CultureInfo.CurrentCulture, CultureInfo.CurrentUICulture);
        CultureInfo.CurrentUICulture = Wanted(context.HttpContext.Request.GetTypedHeaders().AcceptLanguage);
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

    private static CultureInfo Wanted(IList<StringWithQualityHeaderValue> asked)
    {
        foreach (var language in asked.OrderByDescending(value => value.Quality ?? 1).Take(10))
        {
            var wanted = language.Value.Value ?? "";
            var found = BallotWords.Languages.FirstOrDefault(culture => wanted.Equals(culture.Name, StringComparison.OrdinalIgnoreCase))
                ?? BallotWords.Languages.FirstOrDefault(culture => wanted.StartsWith(culture.TwoLetterISOLanguageName + "-", StringComparison.OrdinalIgnoreCase));
            if (found is not null) return found;
        }

        return BallotWords.Languages[0];
    }
}
