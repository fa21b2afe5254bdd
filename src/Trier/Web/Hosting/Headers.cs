namespace Trier.Web.Hosting;

/// <summary>Headers every answer carries.</summary>
internal static class Headers
{
    public static void UseTrierHeaders(this WebApplication app) => app.Use(async (context, next) =>
    {
        var headers = context.Response.Headers;
        headers.ContentSecurityPolicy = "default-src 'self'; img-src 'self' data:; style-src 'self' 'unsafe-inline'; frame-ancestors 'none'; form-action 'self'; base-uri 'self'";
        headers.XContentTypeOptions = "nosniff";
        // A taster's link is their key: no other site learns it.
        headers["Referrer-Policy"] = "no-referrer";
        context.Response.OnStarting(static state =>
        {
            // Pages of a tasting change under one's hands and hold links: neither stored nor shared by a cache. Files of wwwroot set their own.
            var response = (HttpResponse)state;
            if (Microsoft.Extensions.Primitives.StringValues.IsNullOrEmpty(response.Headers.CacheControl)) response.Headers.CacheControl = "no-store";
            return Task.CompletedTask;
        }, context.Response);
        await next(context);
    });
}
