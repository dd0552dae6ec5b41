using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Diagnostics;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Mvc;
using Microsoft.Extensions.Logging;

namespace Archwright.Web.Api;

/// <summary>Whatever goes wrong below the API's path is answered as problem details, never as a page.</summary>
internal static class ApiGuard
{
    private static readonly Action<ILogger, string, Exception?> Faulted = LoggerMessage.Define<string>(
        LogLevel.Error, new EventId(1, "ApiFault"), "A fault of ours answering {Route}.");

    /// <summary>Puts the guard into the way of requests.</summary>
    public static void Use(WebApplication app) => app.Use(async (context, next) =>
    {
        if (!context.Request.Path.StartsWithSegments(ApiRoutes.Root, StringComparison.Ordinal))
        {
            await next(context);
            return;
        }

        context.Features.Get<IStatusCodePagesFeature>()?.Enabled = false;
        try
        {
            await next(context);
        }
        catch (BadHttpRequestException bad)
        {
            await WriteAsync(context, bad.StatusCode, bad.Message);
        }
        catch (Exception fault) when (fault is not OperationCanceledException)
        {
            // The route and not the address: an address may hold what somebody searched for.
            Faulted(app.Logger, context.GetEndpoint()?.DisplayName ?? "a request", fault);
            await WriteAsync(context, StatusCodes.Status500InternalServerError, "");
        }

        if (!context.Response.HasStarted && context.Response.StatusCode >= 400
            && context.Response.ContentType is null && context.Response.ContentLength is null)
        {
            await WriteAsync(context, context.Response.StatusCode, "");
        }
    });

    private static async Task WriteAsync(HttpContext context, int status, string said)
    {
        if (context.Response.HasStarted)
            return;

        (string title, string detail) = Words(status, said);
        context.Response.StatusCode = status;
        ProblemDetails details = ApiRefusals.Details(status, title, detail);
        await context.Response.WriteAsJsonAsync(details, options: null, contentType: "application/problem+json");
    }

    private static (string Title, string Detail) Words(int status, string said) => status switch
    {
        StatusCodes.Status401Unauthorized => (
            "No token, or one that does not hold",
            "Send the header “Authorization: Bearer TOKEN”. An orthodontist makes tokens under Settings, Programs; a "
            + "token that has expired or was taken back is refused like one that never was."),
        StatusCodes.Status403Forbidden => (
            "The token does not open this",
            "The token holds, and was not given the scope that this needs. Ask the practice for another."),
        StatusCodes.Status404NotFound => (
            "Not found", "There is nothing at this address, or not by this method. /api lists what there is."),
        StatusCodes.Status413PayloadTooLarge => (
            "The body is too large",
            $"Up to {ApiRoutes.MostBodyBytes / 1000} kB are taken: a case of a full arch takes a few."),
        StatusCodes.Status415UnsupportedMediaType => (
            "JSON is needed", "Send the case with the header “Content-Type: application/json”."),
        StatusCodes.Status429TooManyRequests => (
            "Too many requests", "Wait as long as the header Retry-After says, and ask again."),
        >= 500 => ("A fault of ours", "Nothing was kept. Whoever runs the server finds the fault in its log."),
        _ => ("The request cannot be read", said.Length > 0 ? said : "Something in it is not as /api says."),
    };
}
