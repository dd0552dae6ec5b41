using System.Globalization;
using Archwright.Practice.Audit;
using Archwright.Practice.Leaflets;
using Archwright.Practice.People;
using Archwright.Storage.Backups;
using Archwright.Storage.Desks;
using Archwright.Storage.Model;
using Archwright.Web.Hosting;
using Archwright.Web.Printing;
using Archwright.Web.Sessions;
using Microsoft.AspNetCore.Antiforgery;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;
using Microsoft.EntityFrameworkCore;

namespace Archwright.Web.Keeping;

/// <summary>What leaves the program as a file: all records, one patient's whole record, the list of lots. The first two
/// leave an audit line, and are asked for by forms whose token against forgery is checked here.</summary>
internal static class KeepingRoutes
{
    private const string Zip = "application/zip";

    public static void Map(IEndpointRouteBuilder routes)
    {
        routes.MapPost("/keeping/backup", BackupAsync).RequireAuthorization(SignIn.OwnsThePractice)
            .DisableAntiforgery().ExcludeFromDescription();
        routes.MapPost("/patient/{id:guid}/export", ExportAsync).RequireAuthorization(SignIn.OwnsThePractice)
            .DisableAntiforgery().ExcludeFromDescription();
        routes.MapGet("/stock/list.csv", StockAsync).RequireAuthorization(SignIn.AtTheChair)
            .ExcludeFromDescription();
    }

    private static async Task<IResult> BackupAsync(
        IAntiforgery forgery, HttpContext context, BackupWriter writer, PracticeContext db, TimeProvider clock)
    {
        if (!await forgery.IsRequestValidAsync(context))
            return Forged();

        string file = Path.Combine(Path.GetTempPath(), $"archwright-{Guid.NewGuid():N}.zip");
        try
        {
            await writer.WriteAsync(file, context.RequestAborted);
        }
        catch (BackupException refused)
        {
            string why = Uri.EscapeDataString($"{refused.Message} {refused.Mend}");
            return Results.LocalRedirect($"/keeping?refused={why}");
        }

        Actor? by = CurrentStaff.Of(context.User);
        db.Trail.Add(AuditLine.Of(by, clock.GetUtcNow(), AuditAct.Exported, null, "backup of all records"));
        await db.SaveChangesAsync();
        var stream = new FileStream(
            file, FileMode.Open, FileAccess.Read, FileShare.Delete, 65536, FileOptions.DeleteOnClose);
        string day = clock.GetLocalNow().ToString("yyyy-MM-dd-HHmm", CultureInfo.InvariantCulture);
        return Results.File(stream, Zip, $"archwright-backup-{day}.zip");
    }

    private static async Task<IResult> ExportAsync(
        Guid id, IAntiforgery forgery, HttpContext context, RecordExport export)
    {
        if (!await forgery.IsRequestValidAsync(context))
            return Forged();
        if (CurrentStaff.Of(context.User) is not { } by)
            return Results.Unauthorized();

        var zip = new MemoryStream();
        if (!await export.WriteAsync(id, zip, Print, by, context.RequestAborted))
            return Results.NotFound();

        zip.Position = 0;
        return Results.File(zip, Zip, $"record-{id:N}.zip"); // no name of a patient in a folder of downloads
    }

    private static async Task<IResult> StockAsync(Shelf shelf) => Results.Text(
        StockList.Write(await shelf.AllAsync()), "text/csv", System.Text.Encoding.UTF8);

    private static IResult Forged() => Results.Text(
        "The form is too old, or comes from elsewhere. Load its page again.",
        statusCode: StatusCodes.Status400BadRequest);

    private static byte[]? Print(ReleasedLeaflet leaflet)
    {
        try
        {
            return LeafletPdf.Make(leaflet.Leaflet, Paper.A4);
        }
        catch (InvalidOperationException)
        {
            return null; // no face of its script on this computer: its words stand in the record
        }
    }
}
