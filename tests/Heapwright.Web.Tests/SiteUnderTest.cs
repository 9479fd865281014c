using System.Net;
using Heapwright.App.Changes;
using Heapwright.App.Sites;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Hosting;
using Microsoft.AspNetCore.Mvc.Testing;
using Microsoft.Extensions.DependencyInjection;

namespace Heapwright.Web.Tests;

/// <summary>The site in memory, with an empty data folder of its own.</summary>
public sealed class SiteUnderTest : WebApplicationFactory<Program>
{
    private readonly string folder = Directory.CreateTempSubdirectory("heapwright-web-").FullName;

    /// <summary>Its data folder.</summary>
    public string Folder => folder;

    /// <summary>Where requests seem to come from; this machine unless told otherwise.</summary>
    public IPAddress From { get; set; } = IPAddress.Loopback;

    /// <summary>A caller that follows nothing by itself and keeps its cookies.</summary>
    public HttpClient Caller() =>
        CreateClient(
            new WebApplicationFactoryClientOptions
            {
                AllowAutoRedirect = false,
                BaseAddress = new Uri("http://localhost"),
            }
        );

    /// <summary>Puts a bay of a cubic metre there.</summary>
    /// <param name="name">Its name.</param>
    public async Task<Bay> NewBay(string name)
    {
        var bay = new Bay
        {
            Id = Guid.CreateVersion7(),
            Name = name,
            Shape = "box",
            LengthM = 1,
            WidthM = 1,
            HeightM = 1,
        };
        await Services
            .GetRequiredService<SiteRecorder>()
            .Put("acts.bay_added", [bay.Name], [bay], CancellationToken.None);
        return bay;
    }

    /// <inheritdoc/>
    protected override void ConfigureWebHost(IWebHostBuilder builder)
    {
        builder.UseSetting("HEAPWRIGHT_DATA", folder);
        builder.UseSetting("HEAPWRIGHT_URL", "http://127.0.0.1:0");
        builder.UseEnvironment("Production");
        builder.ConfigureServices(services =>
        {
            services.AddSingleton<IStartupFilter>(new Address(this));
            // What is forecast in the background is tested with its store; here it would only take time from the rest.
            services.Remove(services.Single(s => s.ImplementationType?.Name == "OutlookWorker"));
        });
    }

    /// <inheritdoc/>
    protected override void Dispose(bool disposing)
    {
        base.Dispose(disposing);
        if (disposing && Directory.Exists(folder))
        {
            Microsoft.Data.Sqlite.SqliteConnection.ClearAllPools();
            Directory.Delete(folder, recursive: true);
        }
    }

    // In memory there is no connection, so the address it would have is put in.
    private sealed class Address(SiteUnderTest site) : IStartupFilter
    {
        public Action<IApplicationBuilder> Configure(Action<IApplicationBuilder> next) =>
            app =>
            {
                app.Use(
                    (context, rest) =>
                    {
                        context.Connection.RemoteIpAddress = site.From;
                        return rest(context);
                    }
                );
                next(app);
            };
    }
}
