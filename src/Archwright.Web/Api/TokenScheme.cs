using System.Security.Claims;
using System.Text.Encodings.Web;
using System.Threading.RateLimiting;
using Archwright.Practice.Clients;
using Archwright.Storage.Desks;
using Microsoft.AspNetCore.Authentication;
using Microsoft.AspNetCore.Http;
using Microsoft.Extensions.Logging;
using Microsoft.Extensions.Options;

namespace Archwright.Web.Api;

/// <summary>Who asks the API: the holder of a token, by the header “Authorization: Bearer …” (RFC 6750). Cookies of the
/// staff do not count here, so that no page elsewhere can ask in their name.</summary>
internal sealed class TokenScheme(
    IOptionsMonitor<AuthenticationSchemeOptions> options, ILoggerFactory loggers, UrlEncoder encoder,
    ClientDesk clients, TokenTries tries)
    : AuthenticationHandler<AuthenticationSchemeOptions>(options, loggers, encoder)
{
    /// <summary>Name of the scheme.</summary>
    public const string Name = "Token";

    /// <summary>The claim that holds a scope.</summary>
    public const string ScopeClaim = "scope";

    private const string Before = "Bearer ";

    // A token is 47 signs; nothing longer is looked at.
    private const int MostSigns = 80;

    private bool _rests;

    /// <summary>The client of a request.</summary>
    public static ApiClient Client(HttpContext context) => (ApiClient)context.Items[typeof(ApiClient)]!; // set below

    /// <inheritdoc/>
    protected override async Task<AuthenticateResult> HandleAuthenticateAsync()
    {
        string header = Request.Headers.Authorization.ToString();
        if (!header.StartsWith(Before, StringComparison.OrdinalIgnoreCase))
            return AuthenticateResult.NoResult();

        string from = Context.Connection.RemoteIpAddress?.ToString() ?? "";
        string token = header[Before.Length..].Trim();
        if (tries.Rests(from))
        {
            _rests = true;
            return AuthenticateResult.Fail("Too many wrong tokens.");
        }

        if (token.Length > MostSigns || await clients.OfTokenAsync(token, Context.RequestAborted) is not { } client)
        {
            tries.Failed(from);
            return AuthenticateResult.Fail("The token does not hold.");
        }

        Context.Items[typeof(ApiClient)] = client;
        var identity = new ClaimsIdentity(
            [
                new Claim(ClaimTypes.NameIdentifier, client.Id.ToString()),
                .. client.Scopes.Select(scope => new Claim(ScopeClaim, scope.Word())),
            ],
            Name);
        return AuthenticateResult.Success(new AuthenticationTicket(new ClaimsPrincipal(identity), Name));
    }

    /// <inheritdoc/>
    protected override Task HandleChallengeAsync(AuthenticationProperties properties)
    {
        Response.StatusCode = _rests ? StatusCodes.Status429TooManyRequests : StatusCodes.Status401Unauthorized;
        if (_rests)
            Response.Headers.RetryAfter = "60";
        Response.Headers.WWWAuthenticate = "Bearer";
        return Task.CompletedTask;
    }
}

/// <summary>Counts wrong tokens by address: whoever tries them by chance has to wait.</summary>
internal sealed class TokenTries : IDisposable
{
    /// <summary>Wrong tokens of one address in a minute.</summary>
    public const int MostInAMinute = 20;

    private readonly PartitionedRateLimiter<string> _wrong = PartitionedRateLimiter.Create<string, string>(
        from => RateLimitPartition.GetFixedWindowLimiter(from, _ => new FixedWindowRateLimiterOptions
        {
            PermitLimit = MostInAMinute, Window = TimeSpan.FromMinutes(1), QueueLimit = 0,
        }));

    /// <summary>True while an address has tried too often.</summary>
    public bool Rests(string from) => _wrong.GetStatistics(from)?.CurrentAvailablePermits == 0;

    /// <summary>Counts a wrong token.</summary>
    public void Failed(string from)
    {
        using RateLimitLease lease = _wrong.AttemptAcquire(from);
    }

    /// <inheritdoc/>
    public void Dispose() => _wrong.Dispose();
}
