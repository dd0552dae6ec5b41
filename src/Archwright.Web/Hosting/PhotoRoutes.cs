using Archwright.Practice.People;
using Archwright.Practice.Visits;
using Archwright.Storage.Desks;
using Archwright.Web.Sessions;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;

namespace Archwright.Web.Hosting;

/// <summary>Photographs, for those who may see the chair. A photograph is served only as part of a visit that names it,
/// and only while it is the file that was added.</summary>
internal static class PhotoRoutes
{
    public static void Map(IEndpointRouteBuilder routes) =>
        routes.MapGet("/visit/{visit:guid}/photograph/{file}", OneAsync).RequireAuthorization(SignIn.AtTheChair);

    private static async Task<IResult> OneAsync(
        Guid visit, string file, HttpContext context, PatientFiles files, PhotoShelf shelf)
    {
        Actor? by = CurrentStaff.Of(context.User);
        if (by is null || await files.PhotoAsync(visit, file, by) is not { } photo)
            return Results.NotFound();

        return await shelf.ReadAsync(photo) is { } read
            ? Results.Bytes(read.Bytes, read.MediaType)
            : Results.NotFound();
    }
}
