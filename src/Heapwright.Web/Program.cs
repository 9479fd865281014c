using Heapwright.App.Backups;
using Heapwright.App.Changes;
using Heapwright.App.Coming;
using Heapwright.App.Diary;
using Heapwright.App.Links;
using Heapwright.App.Outlooks;
using Heapwright.App.Ports;
using Heapwright.App.Sites;
using Heapwright.App.Texts;
using Heapwright.Storage.Sqlite;
using Heapwright.Web.Api;
using Heapwright.Web.Components;
using Heapwright.Web.Hosting;
using Heapwright.Web.Links;
using Heapwright.Web.Mail;
using Heapwright.Web.Messages;
using Heapwright.Web.Offline;
using Heapwright.Web.Outlooks;
using Heapwright.Web.Pages;
using Heapwright.Web.Pages.Settings;
using Heapwright.Web.Photos;
using Heapwright.Web.Showing;
using Microsoft.AspNetCore.Components.Endpoints;
using Microsoft.AspNetCore.DataProtection;
using Microsoft.AspNetCore.Diagnostics;
using Microsoft.AspNetCore.HostFiltering;
using Microsoft.AspNetCore.HttpOverrides;

// What nobody reads in a language of their own is in English: the log, and work in the background.
Languages.StartInEnglish();
var builder = WebApplication.CreateBuilder(args);
if (WebSettings.WrongProxy(builder.Configuration["HEAPWRIGHT_PROXY"]) is { } wrongProxy)
{
    await Console.Error.WriteLineAsync(Say.Of("guard.proxy_address", wrongProxy));
    return 2;
}

var settings = WebSettings.Read(name => builder.Configuration[name]);
try
{
    Directory.CreateDirectory(settings.DataFolder);
}
catch (Exception problem) when (problem is IOException or UnauthorizedAccessException)
{
    await Console.Error.WriteLineAsync(
        Say.Of("guard.no_data_folder", settings.DataFolder, problem.Message)
    );
    return 2;
}

if (builder.Configuration["urls"] is null)
{
    builder.WebHost.UseUrls(settings.Url);
}

// Style and script lie beside the program, whether it was published or only built.
builder.WebHost.UseStaticWebAssets();
Limits.Add(builder);
builder.Logging.AddFilter("Microsoft.AspNetCore", LogLevel.Warning);
builder.Logging.AddFilter("Microsoft.EntityFrameworkCore", LogLevel.Warning);
builder.Services.AddSingleton(settings);
builder.Services.AddSingleton(TimeProvider.System);
builder.Services.AddSqliteStorage(settings.DataFolder);
builder.Services.AddSingleton<SiteRecorder>();
builder.Services.AddSingleton<IHeapGate, InProcessGate>();
builder.Services.AddSingleton(provider =>
    DiaryDesk.Over(
        provider.GetRequiredService<SiteRecorder>(),
        provider.GetRequiredService<IDiaryStore>(),
        provider.GetRequiredService<IPhotoStore>(),
        provider.GetRequiredService<IDeviceStore>(),
        provider.GetRequiredService<IHeapGate>()
    )
);
builder.Services.AddSingleton(provider => provider.GetRequiredService<DiaryDesk>().Reader);
builder.Services.AddSingleton<KeepForecasts>();
builder.Services.AddSingleton<PastForecasts>();
builder.Services.AddSingleton<FollowHeaps>();
builder.Services.AddHostedService<OutlookWorker>();
builder.Services.AddSingleton<KeepStock>();
builder.Services.AddSingleton<KeepSite>();
builder.Services.AddSingleton<KeepPlans>();
builder.Services.AddSingleton(provider => new SampleGarden(
    provider.GetRequiredService<SiteRecorder>(),
    provider.GetRequiredService<DiaryDesk>().Entries
));
builder.Services.AddSingleton<CarrySite>();
builder.Services.AddSingleton<ImportTray>();
builder.Services.AddSingleton<NightlyBackup>();
builder.Services.AddSingleton<KeepLinks>();
builder.Services.AddSingleton<ComingDays>();
builder.Services.AddHostedService<NightWatch>();
builder.Services.AddSingleton<SimulatedHeaps>();
builder.Services.AddSingleton<ForecastHeaps>();
builder.Services.AddSingleton<TaughtHeaps>();
builder.Services.AddSingleton<ComparedPairs>();
builder.Services.AddSingleton<FirstStyle>();
builder.Services.AddScoped<Here>();
builder.Services.AddHttpContextAccessor();
builder.Services.AddRazorComponents();
builder.Services.AddAntiforgery(options =>
{
    options.Cookie.Name = "form";
    options.Cookie.SameSite = SameSiteMode.Strict;
});
builder.Services.AddRequestLocalization(Cultures.Configure);
builder.Services.Configure<HostFilteringOptions>(options =>
{
    options.AllowedHosts = [.. settings.Hosts];
    options.AllowEmptyHosts = false;
    options.IncludeFailureMessage = true;
});

// Forms that were open before a restart are still accepted after it, since the keys lie with the data.
builder
    .Services.AddDataProtection()
    .SetApplicationName("heapwright")
    .PersistKeysToFileSystem(
        new DirectoryInfo(Path.Combine(settings.DataFolder, SqliteStorage.KeysFolder))
    );
builder.Services.AddResponseCompression(options => options.EnableForHttps = true);
builder.Services.AddHealthChecks().AddCheck<StorageHealth>("storage");
ApiDocument.Add(builder.Services);
if (!MqttSettings.Add(builder.Services, name => builder.Configuration[name], out var wrong))
{
    await Console.Error.WriteLineAsync(wrong);
    return 2;
}

var (smtp, wrongMail) = MailSettings.Read(name => builder.Configuration[name]);
if (wrongMail.Length > 0)
{
    await Console.Error.WriteLineAsync(wrongMail);
    return 2;
}

builder.Services.AddSingleton(new MailServer(smtp));
builder.Services.AddSingleton<DailyMail>();
var app = builder.Build();
try
{
    var file = app.Services.GetRequiredService<SqliteFile>();
    if (await file.BringUpToDate(CancellationToken.None) is { } copy)
    {
        app.Logger.LogInformation("Storage was brought up to date; a copy is in {Copy}", copy);
    }
}
catch (NewerSchemaException problem)
{
    await Console.Error.WriteLineAsync(problem.Message);
    return 2;
}

if (settings.Proxies.Count > 0)
{
    // Only a proxy that was named is believed about who asks and by which scheme.
    var forwarded = new ForwardedHeadersOptions
    {
        ForwardedHeaders = ForwardedHeaders.XForwardedFor | ForwardedHeaders.XForwardedProto,
    };
    forwarded.KnownIPNetworks.Clear();
    forwarded.KnownProxies.Clear();
    foreach (var proxy in settings.Proxies)
    {
        forwarded.KnownProxies.Add(proxy);
    }

    app.UseForwardedHeaders(forwarded);
}

app.UseHostFiltering();
app.UseSecurityHeaders();
app.UseExceptionHandler("/fault", createScopeForErrors: true);

app.UseStatusCodePagesWithReExecute("/not-found", createScopeForStatusCodePages: true);
app.Use(
    (context, next) =>
    {
        // A page is shown to people who look; a program, and a form that was refused, get the answer as it is.
        if (
            !HttpMethods.IsGet(context.Request.Method)
            || context.Request.Path.StartsWithSegments("/api", StringComparison.OrdinalIgnoreCase)
            || LinkEndpoints.IsSecret(context.Request.Path)
        )
        {
            context.Features.Get<IStatusCodePagesFeature>()?.Enabled = false;
        }

        if (LinkEndpoints.IsSecret(context.Request.Path))
        {
            LinkEndpoints.Hide(context);
        }

        return next(context);
    }
);
app.UseRequestLocalization();
app.UseRateLimiter();
app.UseWriteGuard();
app.UseResponseCompression();
app.Use(
    async (context, next) =>
    {
        // Pages show the site in the reader's language; what is no page need not read it.
        if (context.GetEndpoint()?.Metadata.GetMetadata<ComponentTypeMetadata>() is not null)
        {
            Cultures.TellLanguage(context.Response);
            await context.RequestServices.GetRequiredService<Here>().Read(context.RequestAborted);
        }

        await next(context);
    }
);
app.UseAntiforgery();
app.UseStaleForms();
app.MapStaticAssets();
app.MapHealthChecks("/health");
app.MapQuestions();
app.MapApiRefusals();
app.MapEntries();
app.MapSite();
app.MapPhotos();
app.MapOutbox();
app.MapOffline();
app.MapBackups();
app.MapLinks();
app.MapOpenApi();
app.MapRazorComponents<App>();
await app.RunAsync();
return 0;

/// <summary>The program; named so that tests can start it.</summary>
public partial class Program
{
    /// <summary>Started by the runtime.</summary>
    protected Program() { }
}
