using System.Reflection;
using Archwright.Practice.Clients;
using Microsoft.AspNetCore.OpenApi;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.OpenApi;

namespace Archwright.Web.Api;

/// <summary>The OpenAPI document of version 1.</summary>
internal static class ApiDocument
{
    private const string Scheme = "token";

    public static void AddTo(IServiceCollection services) => services.AddOpenApi(ApiRoutes.Document, options =>
    {
        options.ShouldInclude = endpoint => $"/{endpoint.RelativePath}".StartsWith(
            ApiRoutes.Version1 + "/", StringComparison.Ordinal);
        options.AddDocumentTransformer((document, _, _) =>
        {
            Describe(document);
            return Task.CompletedTask;
        });
        options.AddOperationTransformer((operation, context, _) =>
        {
            if (context.Description.ActionDescriptor.EndpointMetadata.OfType<NeedsScope>().LastOrDefault() is { } needs)
                Secure(operation, context.Document, needs.Scope);
            return Task.CompletedTask;
        });
    });

    private static void Describe(OpenApiDocument document)
    {
        document.Info = new OpenApiInfo
        {
            Title = "Archwright",
            Version = typeof(ApiDocument).Assembly
                .GetCustomAttribute<AssemblyInformationalVersionAttribute>()?.InformationalVersion ?? "unknown",
            Description =
                "What a wire does to the teeth, for other programs of the practice. It calculates and recommends; the "
                + "treating clinician decides. Bodies of compute requests are case files, archwright-case/1 "
                + "(docs/case-files.md). Errors are problem details (RFC 9457) with a list “problems”: code, path, "
                + "message and mend of each.",
            License = new OpenApiLicense { Name = "Apache-2.0" },
        };
        document.Servers = []; // the address that the document came from
        document.Components ??= new OpenApiComponents();
        document.Components.SecuritySchemes ??= new Dictionary<string, IOpenApiSecurityScheme>(StringComparer.Ordinal);
        document.Components.SecuritySchemes[Scheme] = new OpenApiSecurityScheme
        {
            Type = SecuritySchemeType.Http,
            Scheme = "bearer",
            Description = "A token that an orthodontist made under Settings, Programs.",
        };
    }

    private static void Secure(OpenApiOperation operation, OpenApiDocument? document, ApiScope scope)
    {
        operation.Security =
        [
            new OpenApiSecurityRequirement { [new OpenApiSecuritySchemeReference(Scheme, document)] = [] },
        ];
        operation.Description = $"{operation.Description} Needs the scope {scope.Word()}.".Trim();
    }
}
