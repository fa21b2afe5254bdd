using Microsoft.AspNetCore.Authentication.Cookies;
using Microsoft.AspNetCore.DataProtection;
using Microsoft.EntityFrameworkCore;
using Trier.Storage;
using Trier.Storage.Access;
using Trier.Storage.Makes;
using Trier.Storage.Sqlite;
using Trier.Storage.Tastings;
using Trier.Web.Access;
using Trier.Web.Tastings.Ballots;

namespace Trier.Web.Hosting;

/// <summary>Builds the site.</summary>
public static class TrierHost
{
    /// <summary>Builds the site, its database brought up to date; not yet listening.</summary>
    /// <param name="settings">Where it lives.</param>
    /// <param name="clock">The host's clock; the system's unless a test gives another.</param>
    /// <param name="seeds">Where the site's draws begin; nobody can guess them unless a test gives others.</param>
    public static async Task<WebApplication> BuildAsync(HostSettings settings, TimeProvider? clock = null, Func<ulong>? seeds = null)
    {
        Directory.CreateDirectory(settings.DataFolder);
        Directory.CreateDirectory(settings.KeysFolder);
        var builder = WebApplication.CreateBuilder(new WebApplicationOptions
        {
            ApplicationName = typeof(TrierHost).Assembly.GetName().Name,
            ContentRootPath = AppContext.BaseDirectory,
        });
        // Without this every file of wwwroot answers empty when run from a build folder.
        builder.WebHost.UseStaticWebAssets();
        // One warning line is worth reading; a line for every page is not, and would write taster links into a log.
        builder.Logging.ClearProviders().AddSimpleConsole(console => console.SingleLine = true).SetMinimumLevel(LogLevel.Warning)
            // The keys lie in the user's own folder and are read by this program alone; a warning at every first start would only worry people.
            .AddFilter("Microsoft.AspNetCore.DataProtection", LogLevel.Error);
        Listen(builder, settings);
        AddServices(builder.Services, settings, clock ?? TimeProvider.System, seeds is null ? Chance.Unguessable() : new Chance(seeds));

        var app = builder.Build();
        await MigrateAsync(app.Services);
        app.UseTrierHeaders();
        app.UseExceptionHandler("/error");
        app.UseStatusCodePagesWithReExecute("/error/{0}");
        app.UseAuthentication();
        app.UseAuthorization();
        app.UseAntiforgery();
        app.MapStaticAssets();
        app.MapTrier();
        return app;
    }

    private static void Listen(WebApplicationBuilder builder, HostSettings settings)
    {
        var hosts = new List<string> { "localhost", "127.0.0.1", "[::1]" };
        if (settings.Lan is { } lan) hosts.Add(lan.ToString());
        // A page on another site that gives its own name to this address is turned away by the host header.
        builder.Configuration["AllowedHosts"] = string.Join(';', hosts);
        builder.WebHost.ConfigureKestrel(kestrel =>
        {
            kestrel.AddServerHeader = false;
            kestrel.Limits.MaxRequestBodySize = 1_000_000;
            if (settings.Lan is null)
            {
                kestrel.Listen(System.Net.IPAddress.Loopback, settings.Port);
                return;
            }

            kestrel.Listen(System.Net.IPAddress.Loopback, settings.Port);
            kestrel.Listen(settings.Lan, settings.Port);
        });
    }

    private static void AddServices(IServiceCollection services, HostSettings settings, TimeProvider clock, Chance chance)
    {
        services.AddSingleton(settings);
        services.AddSingleton(clock);
        services.AddSingleton(chance);
        services.AddSingleton<WriterGate>();
        services.AddDbContextFactory<TrierDb>(options => options.UseTrierSqlite(settings.Database));
        services.AddSingleton<TrialStore>();
        services.AddSingleton<WheelStore>();
        services.AddSingleton<RecipeStore>();
        services.AddSingleton<MakeStore>();
        services.AddSingleton<ThingStore>();
        services.AddSingleton<Trier.Storage.Verdicts.FindingsStore>();
        services.AddSingleton<Trier.Storage.Verdicts.KeptStore>();
        services.AddSingleton<KeptWork>();
        services.AddSingleton<Plans.Planning.PlannedPanels>();
        services.AddSingleton<SignInLinks>();
        services.AddSingleton<WalkIns>();
        services.AddSingleton<TasterDoors>();
        services.AddSingleton<HelperDoors>();
        services.AddSingleton<Tastings.Practice.PracticeTable>();
        services.AddSingleton<WrongTries>();
        services.AddSingleton<Tastings.Keys.CheckedKeys>();
        services.AddSingleton<Copies>();
        services.AddSingleton<PhoneAddress>();
        services.AddSingleton<Verdicts.JudgedTastings>();
        services.AddSingleton<Verdicts.Publishing.PublishedTastings>();
        services.AddSingleton<Visits>();
        services.AddSingleton<Saving>();
        services.AddRazorComponents();
        services.AddAntiforgery(antiforgery => antiforgery.Cookie.Name = "trier-form");
        services.AddDataProtection().SetApplicationName("trier").PersistKeysToFileSystem(new DirectoryInfo(settings.KeysFolder));
        services.AddAuthentication(CookieAuthenticationDefaults.AuthenticationScheme).AddCookie(cookie =>
        {
            cookie.Cookie.Name = "trier-maker";
            cookie.Cookie.HttpOnly = true;
            cookie.Cookie.SameSite = SameSiteMode.Lax;
            cookie.ExpireTimeSpan = TimeSpan.FromDays(30);
            cookie.SlidingExpiration = true;
            cookie.LoginPath = "/sign-in";
        });
        services.AddAuthorizationBuilder().AddPolicy(MakerPolicy, policy => policy.RequireAuthenticatedUser());
    }

    /// <summary>Name of the policy that lets the maker in.</summary>
    public const string MakerPolicy = "maker";

    private static async Task MigrateAsync(IServiceProvider services)
    {
        await using var db = await services.GetRequiredService<IDbContextFactory<TrierDb>>().CreateDbContextAsync();
        await db.Database.MigrateAsync();
    }
}
