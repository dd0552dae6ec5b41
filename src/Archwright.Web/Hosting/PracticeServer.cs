using System.Net;
using System.Net.Sockets;
using Archwright.Practice.Advice;
using Archwright.Practice.Keeping;
using Archwright.Practice.Ladders;
using Archwright.Practice.Settings;
using Archwright.Storage.Backups;
using Archwright.Storage.Desks;
using Archwright.Storage.Model;
using Archwright.Storage.Opening;
using Archwright.Treatment.Policies;
using Archwright.Web.Api;
using Archwright.Web.Bench;
using Archwright.Web.Keeping;
using Archwright.Web.Layout;
using Archwright.Web.Leaflets;
using Archwright.Web.PatientPages;
using Archwright.Web.Sessions;
using Archwright.Web.Words;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Components.Authorization;
using Microsoft.AspNetCore.DataProtection;
using Microsoft.AspNetCore.Hosting;
using Microsoft.AspNetCore.Hosting.Server;
using Microsoft.AspNetCore.Hosting.Server.Features;
using Microsoft.AspNetCore.Http;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Logging;

namespace Archwright.Web.Hosting;

/// <summary>Makes and starts the practice app.</summary>
public static class PracticeServer
{
    /// <summary>Starts the app: brings the database up to date, makes the demo practice where it is asked for, and
    /// listens on this computer alone.</summary>
    /// <param name="options">Port, folder, demo.</param>
    /// <param name="cancellation">Gives up.</param>
    /// <returns>The running app; it ends by itself on an interrupt.</returns>
    public static async Task<WebApplication> StartAsync(ServeOptions options, CancellationToken cancellation = default)
    {
        Directory.CreateDirectory(options.DataFolder);
        PracticeDatabase database = Database(options);
        await database.MigrateAsync(cancellation);
        if (options.Demo)
            await DemoLoading.MakeAsync(database, TimeProvider.System, cancellation);

        WebApplication app = Build(options, database, await database.SettingsAsync(cancellation));
        await NotePolicyAsync(
            app.Services.GetRequiredService<PolicyHistory>(), app.Services.GetRequiredService<VisitPolicy>(),
            cancellation);
        await app.StartAsync(cancellation);
        return app;
    }

    /// <summary>The address on which a running app listens.</summary>
    public static string Address(WebApplication app) =>
        app.Services.GetRequiredService<IServer>().Features.Get<IServerAddressesFeature>()?.Addresses.First()
        ?? throw new InvalidOperationException("The app does not listen.");

    // What the advice of this program judges by, so that the record says since when.
    private static async Task NotePolicyAsync(
        PolicyHistory history, VisitPolicy policy, CancellationToken cancellation)
    {
        await history.NoteAsync("policy", policy.Version, PolicyLines.Of(policy), cancellation);
        await history.NoteAsync("ceilings", policy.Version, PolicyLines.Of(policy.Ceilings), cancellation);
    }

    private static PracticeDatabase Database(ServeOptions options)
    {
        if (options.Postgres is { } connection)
            return PracticeDatabase.Postgres(connection);

        DateOnly today = DateOnly.FromDateTime(TimeProvider.System.GetLocalNow().DateTime);
        // The demo is always opened on its own day: each day has a file of its own.
        string name = options.Demo ? $"demo-{today:yyyy-MM-dd}.db" : "practice.db";
        return PracticeDatabase.Sqlite(Path.Combine(options.DataFolder, name));
    }

    private static WebApplication Build(ServeOptions options, PracticeDatabase database, PracticeSettings settings)
    {
        WebApplicationBuilder builder = WebApplication.CreateBuilder(new WebApplicationOptions
        {
            ContentRootPath = AppContext.BaseDirectory,
            ApplicationName = System.Reflection.Assembly.GetEntryAssembly()?.GetName().Name,
        });
        builder.WebHost.UseStaticWebAssets();
        builder.WebHost.UseUrls($"http://127.0.0.1:{FreePort(options.Port)}");
        // Standard output is for the address; the demo's and the practice's keys lie in a folder of their own.
        builder.Logging.ClearProviders().SetMinimumLevel(LogLevel.Warning)
            .AddConsole(console => console.LogToStandardErrorThreshold = LogLevel.Trace)
            .AddFilter("Microsoft.AspNetCore.DataProtection", LogLevel.Error)
            // A form that is too old or comes from elsewhere is answered with 400; it is no fault of the program's.
            .AddFilter("Microsoft.AspNetCore.Antiforgery", LogLevel.Error)
            // It would write every address, and an address may hold the name that somebody searched for.
            .AddFilter("Microsoft.AspNetCore.Hosting.Diagnostics", LogLevel.Warning);
        builder.Services.AddDataProtection().SetApplicationName("archwright")
            .PersistKeysToFileSystem(new DirectoryInfo(Path.Combine(options.DataFolder, "keys")));
        AddPractice(builder.Services, options, database, settings);
        SignIn.AddTo(builder.Services);
        PatientRoutes.AddTo(builder.Services);
        if (options.Answers is { } answers)
            builder.Services.AddSingleton(answers);
        ApiRoutes.AddTo(builder.Services);
        builder.Services.AddRazorComponents().AddInteractiveServerComponents();

        WebApplication app = builder.Build();
        app.UseExceptionHandler("/fault");
        app.Use(Headers);
        app.UseStatusCodePagesWithReExecute("/not-found");
        ApiGuard.Use(app);
        app.UseAuthentication();
        app.UseAuthorization();
        app.UseRateLimiter();
        app.UseAntiforgery();
        app.MapStaticAssets();
        app.MapGet("/health", () => Results.Text("well")).AllowAnonymous();
        SignInRoutes.Map(app);
        PhotoRoutes.Map(app);
        LeafletRoutes.Map(app);
        PatientRoutes.Map(app);
        ApiRoutes.Map(app);
        KeepingRoutes.Map(app);
        app.MapRazorComponents<App>().AddInteractiveServerRenderMode();
        return app;
    }

    private static void AddPractice(
        IServiceCollection services, ServeOptions options, PracticeDatabase database, PracticeSettings settings)
    {
        services.AddSingleton(TimeProvider.System);
        services.AddSingleton(database);
        services.AddSingleton(new SettingsDesk(database, settings, TimeProvider.System));
        services.AddTransient(inner => inner.GetRequiredService<SettingsDesk>().Settled);
        services.AddSingleton(new PhotoShelf(Path.Combine(options.DataFolder, "photographs")));
        services.AddSingleton<StaffDesk>();
        services.AddSingleton<IDbContextFactory<PracticeContext>>(database);
        services.AddScoped(_ => database.CreateDbContext());
        services.AddSingleton<VisitDesk>().AddSingleton<PatientFiles>().AddSingleton<Diary>().AddSingleton<Shelf>();
        services.AddSingleton<TextDesk>();
        services.AddSingleton<LeafletDesk>().AddSingleton<PatientDoor>().AddSingleton<PictureMaker>();
        services.AddSingleton<ClientDesk>().AddSingleton<RetentionDesk>().AddSingleton<RecordExport>();
        services.AddSingleton<RecallDesk>().AddSingleton<StockPlanning>().AddSingleton<PolicyHistory>();
        services.AddSingleton(new BackupWriter(
            database, Path.Combine(options.DataFolder, "photographs"), TimeProvider.System));
        // One policy for all that judges, shows or records by it.
        VisitPolicy policy = options.Policy ?? VisitPolicy.Default;
        services.AddSingleton(policy).AddSingleton(policy.Ceilings);
        services.AddSingleton<LadderRound>().AddHostedService<NightlyLadders>();
        services.AddSingleton<IWireAdvisor>(inner => new VisitWireAdvisor(
            policy,
            TimeProvider.System,
            () => Figures.Style(inner.GetRequiredService<SettingsDesk>().Settled)));
        services.AddSingleton(inner => new LadderPlanner(
            policy,
            TimeProvider.System,
            () => Figures.Style(inner.GetRequiredService<SettingsDesk>().Settled)));
        services.AddSingleton<LadderDesk>().AddSingleton<LadderWork>();
        services.AddSingleton<CourseWatch>();
        services.AddSingleton<BenchLab>();
        services.AddScoped<CurrentStaff>();
        services.AddCascadingAuthenticationState();
        services.AddScoped<AuthenticationStateProvider, StaffStateProvider>();
        services.AddHttpContextAccessor();
    }

    // Nothing is fetched from elsewhere, and nobody frames a patient's record.
    private static Task Headers(HttpContext context, RequestDelegate next)
    {
        IHeaderDictionary headers = context.Response.Headers;
        headers.ContentSecurityPolicy =
            "default-src 'self'; style-src 'self' 'unsafe-inline'; img-src 'self' data:; connect-src 'self'; "
            + "object-src 'none'; base-uri 'self'; form-action 'self'; frame-ancestors 'none'";
        headers.XContentTypeOptions = "nosniff";
        headers["Referrer-Policy"] = "no-referrer";
        if (!context.Request.Path.StartsWithSegments("/_content", StringComparison.Ordinal)
            && !context.Request.Path.StartsWithSegments("/_framework", StringComparison.Ordinal))
        {
            // In the words of the antiforgery service, which would otherwise set them itself and warn at each request.
            headers.CacheControl = "no-cache, no-store";
            headers.Pragma = "no-cache";
        }

        return next(context);
    }

    // The port wanted where it is free, otherwise any.
    private static int FreePort(int wanted)
    {
        foreach (int port in new[] { wanted, 0 })
        {
            try
            {
                using var listener = new TcpListener(IPAddress.Loopback, port);
                listener.Start();
                return ((IPEndPoint)listener.LocalEndpoint).Port;
            }
            catch (SocketException)
            {
                // Taken by another program: the next one is asked.
            }
        }

        throw new InvalidOperationException("No port is free on this computer.");
    }
}
