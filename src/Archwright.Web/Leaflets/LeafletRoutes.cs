using Archwright.Practice.Audit;
using Archwright.Practice.Leaflets;
using Archwright.Storage.Model;
using Archwright.Web.Hosting;
using Archwright.Web.Printing;
using Archwright.Web.Sessions;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;
using Microsoft.EntityFrameworkCore;

namespace Archwright.Web.Leaflets;

/// <summary>The printed page of a released leaflet, with the name on it. What is not released is not printed.</summary>
internal static class LeafletRoutes
{
    public static void Map(IEndpointRouteBuilder routes) =>
        routes.MapGet("/leaflet/{id:guid}.pdf", PrintAsync).RequireAuthorization(SignIn.AtTheChair)
            .ExcludeFromDescription();

    private static async Task<IResult> PrintAsync(
        Guid id, string? paper, HttpContext context, PracticeContext db, TimeProvider clock)
    {
        if (await db.Leaflets.AsNoTracking().FirstOrDefaultAsync(one => one.Id == id) is not { } released)
            return Results.NotFound();

        string name = await db.Patients.AsNoTracking().Where(one => one.Id == released.PatientId)
            .Select(one => one.GivenNames + " " + one.FamilyName).SingleAsync();
        byte[] page;
        try
        {
            page = LeafletPdf.Make(released.Leaflet, paper == "letter" ? Paper.Letter : Paper.A4, name);
        }
        catch (InvalidOperationException cannot)
        {
            return Results.Text(cannot.Message, statusCode: StatusCodes.Status409Conflict);
        }

        db.Trail.Add(AuditLine.Of(
            CurrentStaff.Of(context.User), clock.GetUtcNow(), AuditAct.Exported, released.PatientId,
            $"leaflet of {released.Leaflet.Day:yyyy-MM-dd}, printed"));
        await db.SaveChangesAsync();
        return Results.File(page, "application/pdf");
    }
}
