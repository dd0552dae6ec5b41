using System.Globalization;
using System.Text.Json;
using System.Threading.RateLimiting;
using Archwright.Practice.Clients;
using Microsoft.AspNetCore.Authentication;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.AspNetCore.Http.Metadata;
using Microsoft.AspNetCore.RateLimiting;
using Microsoft.AspNetCore.Routing;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.DependencyInjection.Extensions;

namespace Archwright.Web.Api;

/// <summary>The API, version 1: where it is, who may ask, how often and how much.</summary>
internal static class ApiRoutes
{
    /// <summary>Where the API begins, and its page for people.</summary>
    public const string Root = "/api";

    /// <summary>Where version 1 begins. What is in it stays; what has to change comes in another version.</summary>
    public const string Version1 = Root + "/v1";

    /// <summary>Name of the document that describes version 1.</summary>
    public const string Document = "v1";

    /// <summary>Requests of one client in a minute.</summary>
    public const int MostInAMinute = 240;

    /// <summary>Largest body [bytes]: a case of a full arch takes about 10 kB, one with a rest curve of 500 points
    /// 40 kB.</summary>
    public const int MostBodyBytes = 1_000_000;

    private const string Limit = "api";

    /// <summary>What the API needs.</summary>
    public static void AddTo(IServiceCollection services)
    {
        services.AddSingleton<TokenTries>();
        services.AddAuthentication()
            .AddScheme<AuthenticationSchemeOptions, TokenScheme>(TokenScheme.Name, _ => { });
        var policies = services.AddAuthorizationBuilder();
        foreach (ApiScope scope in ApiScopes.All)
        {
            policies.AddPolicy(PolicyOf(scope), policy => policy
                .AddAuthenticationSchemes(TokenScheme.Name).RequireClaim(TokenScheme.ScopeClaim, scope.Word()));
        }

        services.AddRateLimiter(limits =>
        {
            limits.OnRejected = (context, _) =>
            {
                context.HttpContext.Response.Headers.RetryAfter = "60";
                return ValueTask.CompletedTask;
            };
            limits.AddPolicy(Limit, context => RateLimitPartition.GetFixedWindowLimiter(
                TokenScheme.Client(context).Id,
                _ => new FixedWindowRateLimiterOptions
                {
                    PermitLimit = MostInAMinute, Window = TimeSpan.FromMinutes(1), QueueLimit = 0,
                }));
        });
        // As in case files: snake_case.
        services.ConfigureHttpJsonOptions(
            json => json.SerializerOptions.PropertyNamingPolicy = JsonNamingPolicy.SnakeCaseLower);
        CaseJobs.AddTo(services);
        ApiDocument.AddTo(services);
        services.TryAddSingleton<ICaseAnswers, NoAnswers>();
    }

    /// <summary>The routes.</summary>
    public static void Map(IEndpointRouteBuilder routes)
    {
        routes.MapGet(Root, () => new RazorComponentResult<ApiPage>()).AllowAnonymous().ExcludeFromDescription();
        routes.MapOpenApi(Root + "/{documentName}/openapi.json").AllowAnonymous();
        RouteGroupBuilder version = routes.MapGroup(Version1).RequireRateLimiting(Limit).DisableAntiforgery()
            .ProducesProblem(StatusCodes.Status401Unauthorized).ProducesProblem(StatusCodes.Status403Forbidden)
            .ProducesProblem(StatusCodes.Status429TooManyRequests);
        ComputeRoutes.Map(version.MapGroup("").WithTags("compute")
            .WithMetadata(new MostBody()).Opens(ApiScope.Compute));
        RecordRoutes.Map(version.MapGroup("").WithTags("records"));
    }

    /// <summary>Asks for a scope.</summary>
    public static T Opens<T>(this T endpoint, ApiScope scope)
        where T : IEndpointConventionBuilder => endpoint.RequireAuthorization(PolicyOf(scope))
            .WithMetadata(new NeedsScope(scope));

    private static string PolicyOf(ApiScope scope) => $"Api:{scope.Word()}";

    private sealed class MostBody : IRequestSizeLimitMetadata
    {
        public long? MaxRequestBodySize => MostBodyBytes;
    }

    // Where the app is served without a computing program, as in tests of pages.
    private sealed class NoAnswers : ICaseAnswers
    {
        public void Answer(
            CaseQuestion question, Exchange.CaseFiles.CaseFile file, Stream to, IProgress<double>? progress,
            CancellationToken cancellation) =>
            throw new InvalidOperationException("This server was started without the part that computes cases.");
    }
}

/// <summary>The scope that an endpoint asks for, for its description.</summary>
/// <param name="Scope">Which.</param>
internal sealed record NeedsScope(ApiScope Scope)
{
    /// <inheritdoc/>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"scope {Scope.Word()}");
}
