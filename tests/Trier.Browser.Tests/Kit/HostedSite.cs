using System.Collections.Concurrent;
using Microsoft.AspNetCore.Builder;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Logging;
using Trier.Storage.Access;
using Trier.Web.Hosting;

namespace Trier.Browser.Tests.Kit;

/// <summary>The site within the tests' own process, where it is compiled once for all of them. It cannot be killed: see <see cref="ServedSite"/>.</summary>
internal sealed class HostedSite : Site
{
    private readonly DirectoryInfo _folder;
    private readonly Overheard _overheard = new();
    private WebApplication _app = null!;

    private HostedSite(DirectoryInfo folder) => _folder = folder;

    public override IReadOnlyList<string> Failures => [.. _overheard.Failures];

    public static Task<HostedSite> StartAsync() => StartAsync(NewFolder());

    /// <summary>Starts on a data folder that may hold something already; the folder is the site's from here on.</summary>
    public static async Task<HostedSite> StartAsync(DirectoryInfo folder)
    {
        var site = new HostedSite(folder);
        await site.RunAsync();
        return site;
    }

    public override async ValueTask DisposeAsync()
    {
        // Pages that are still open go on asking: first nothing is answered any more, then the services go.
        await _app.StopAsync();
        await _app.DisposeAsync();
        _folder.Delete(recursive: true);
    }

    private async Task RunAsync()
    {
        _app = await TrierHost.BuildAsync(new HostSettings(_folder.FullName, 0, null));
        _app.Services.GetRequiredService<ILoggerFactory>().AddProvider(_overheard);
        await _app.StartAsync();
        Address = _app.Urls.First().TrimEnd('/');
        SignInLink = $"{Address}/sign-in/{await _app.Services.GetRequiredService<SignInLinks>().MakeAsync()}?to=%2F";
    }

    private sealed class Overheard : ILoggerProvider, ILogger
    {
        public ConcurrentQueue<string> Failures { get; } = new();

        public ILogger CreateLogger(string categoryName) => this;

        public IDisposable? BeginScope<TState>(TState state)
            where TState : notnull => null;

        public bool IsEnabled(LogLevel logLevel) => logLevel >= LogLevel.Error;

        public void Log<TState>(LogLevel logLevel, EventId eventId, TState state, Exception? exception, Func<TState, Exception?, string> formatter)
        {
            if (IsEnabled(logLevel)) Failures.Enqueue($"{formatter(state, exception)} {exception}");
        }

        public void Dispose()
        {
        }
    }
}
