using System.Security.Claims;
using Microsoft.AspNetCore.Authentication;
using Microsoft.AspNetCore.Authentication.Cookies;
using Microsoft.AspNetCore.Mvc;
using Trier.Storage.Access;
using Trier.Web.Hosting;

namespace Trier.Web.Access;

/// <summary>The maker signs in by a one-time link. The link shows a button, so that a preview of the link cannot spend it.</summary>
internal static class SignInRoutes
{
    public static void MapSignIn(this IEndpointRouteBuilder routes)
    {
        routes.MapGet("/sign-in", () => Page.Of<SignInPage>());
        routes.MapGet("/sign-in/{secret}", (string secret, string? to) => Page.Of<SignInPage>(("Secret", secret), ("To", Local(to))));
        routes.MapPost("/sign-in", SignInAsync);
        routes.MapPost("/sign-out", SignOutAsync);
    }

    private static async Task<IResult> SignInAsync(HttpContext context, [FromForm] string secret, [FromForm] string? to, SignInLinks links)
    {
        if (!await links.SpendAsync(secret)) return Page.Again<SignInPage>(("Spent", true));
        var maker = new ClaimsPrincipal(new ClaimsIdentity([new Claim(ClaimTypes.Name, "maker")], CookieAuthenticationDefaults.AuthenticationScheme));
        await context.SignInAsync(maker, new AuthenticationProperties { IsPersistent = true });
        return Page.GoTo(Local(to));
    }

    private static async Task<IResult> SignOutAsync(HttpContext context, [FromForm] string? to)
    {
        await context.SignOutAsync();
        return Page.GoTo(Local(to ?? "/sign-in"));
    }

    private static string Local(string? to) => to is ['/', ..] && !to.StartsWith("//", StringComparison.Ordinal) && !to.Contains('\\', StringComparison.Ordinal) ? to : "/";
}
