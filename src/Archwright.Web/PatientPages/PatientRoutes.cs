using System.Globalization;
using System.Threading.RateLimiting;
using Archwright.Practice.Leaflets;
using Archwright.Practice.Rules;
using Archwright.Storage.Desks;
using Archwright.Web.Printing;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Hosting;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.AspNetCore.RateLimiting;
using Microsoft.AspNetCore.Routing;
using Microsoft.Extensions.DependencyInjection;

namespace Archwright.Web.PatientPages;

/// <summary>The patient's page, for whoever holds a link. No sign-in, no cookie, no script that is needed; every answer
/// to a link that does not hold is the same.</summary>
internal static class PatientRoutes
{
    /// <summary>Where links begin.</summary>
    public const string Path = "/p";

    private const string Limit = "patient";

    /// <summary>Requests of one address in a minute. A page with its saving takes a handful; whoever tries links by
    /// chance would need longer than the world has.</summary>
    public const int MostInAMinute = 60;

    // A secret is 43 signs; nothing longer is looked at.
    private const int MostSigns = 64;

    /// <summary>The limit of requests.</summary>
    public static void AddTo(IServiceCollection services) => services.AddRateLimiter(limits =>
    {
        limits.RejectionStatusCode = StatusCodes.Status429TooManyRequests;
        limits.AddPolicy(Limit, context => RateLimitPartition.GetFixedWindowLimiter(
            context.Connection.RemoteIpAddress?.ToString() ?? "",
            _ => new FixedWindowRateLimiterOptions
            {
                PermitLimit = MostInAMinute, Window = TimeSpan.FromMinutes(1), QueueLimit = 0,
            }));
    });

    /// <summary>The pages.</summary>
    public static void Map(IEndpointRouteBuilder routes)
    {
        RouteGroupBuilder door = routes.MapGroup(Path).AllowAnonymous().RequireRateLimiting(Limit)
            .ExcludeFromDescription();
        door.MapGet("/{secret}", LookAsync);
        door.MapPost("/{secret}", NoteAsync).DisableAntiforgery(); // the secret in the address is the key: no cookie
        door.MapGet("/{secret}/leaflet.pdf", PrintAsync);
        door.MapGet("/{secret}/{arch:regex(^(upper|lower)$)}.json", SpaceAsync);
    }

    private static async Task<IResult> LookAsync(
        string secret, string? saved, PatientDoor door, TextDesk texts, IWebHostEnvironment host)
    {
        if (await OpenAsync(secret, door) is not { } behind)
            return Closed();

        return new RazorComponentResult<PatientDocument>(new Dictionary<string, object?>(StringComparer.Ordinal)
        {
            [nameof(PatientDocument.Behind)] = behind,
            [nameof(PatientDocument.Here)] = $"{Path}/{secret}",
            [nameof(PatientDocument.Texts)] = LeafletTexts.In(behind.Leaflet.Language, await texts.OwnAsync()),
            [nameof(PatientDocument.IsSaved)] = saved is not null,
            [nameof(PatientDocument.HasSpace)] =
                host.WebRootFileProvider.GetFileInfo("_content/Archwright.Web/gen/space.js").Exists,
        });
    }

    private static async Task<IResult> NoteAsync(string secret, HttpRequest request, PatientDoor door)
    {
        IFormCollection form = await request.ReadFormAsync();
        if (secret.Length > MostSigns
            || !int.TryParse(form["score"], NumberStyles.None, CultureInfo.InvariantCulture, out int score)
            || !DateOnly.TryParseExact(form["day"], "yyyy-MM-dd", out DateOnly day))
        {
            return Closed();
        }

        try
        {
            return await door.NoteAsync(secret, day, score)
                ? Results.LocalRedirect($"{Path}/{secret}?saved=1")
                : Closed();
        }
        catch (RuleBrokenException)
        {
            return Results.LocalRedirect($"{Path}/{secret}"); // a day that is over: the page shows today's
        }
    }

    private static async Task<IResult> PrintAsync(string secret, string? paper, PatientDoor door)
    {
        if (await OpenAsync(secret, door) is not { } behind)
            return Closed();

        try
        {
            Paper sheet = paper == "letter" ? Paper.Letter : Paper.A4;
            return Results.File(LeafletPdf.Make(behind.Leaflet, sheet), "application/pdf", "leaflet.pdf");
        }
        catch (InvalidOperationException)
        {
            return Results.LocalRedirect($"{Path}/{secret}"); // it cannot be printed here: the browser prints the page
        }
    }

    private static async Task<IResult> SpaceAsync(string secret, string arch, PatientDoor door)
    {
        if (await OpenAsync(secret, door) is not { } behind)
            return Closed();

        return behind.Pictures.Arches.FirstOrDefault(one => one.IsUpper == (arch == "upper"))?.Space is { } space
            ? Results.Json(SpaceAnswer.Of(arch == "upper", space))
            : Closed();
    }

    private static async Task<BehindTheLink?> OpenAsync(string secret, PatientDoor door) =>
        secret.Length <= MostSigns ? await door.OpenAsync(secret) : null;

    private static RazorComponentResult<ClosedDoor> Closed() => new() { StatusCode = StatusCodes.Status410Gone };
}
