using System.ComponentModel;
using System.Text.Json;
using Archwright.Dentition.Teeth;
using Archwright.Practice.Clients;
using Archwright.Practice.Courses;
using Archwright.Practice.People;
using Archwright.Practice.Visits;
using Archwright.Storage.Desks;
using Archwright.Storage.Documents;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;

namespace Archwright.Web.Api;

/// <summary>Reading the records. Each reading leaves a line in the trail with the client's name.</summary>
internal static class RecordRoutes
{
    public static void Map(RouteGroupBuilder routes)
    {
        routes.MapGet("/patients", FindAsync).Opens(ApiScope.Patients)
            .WithSummary("Find patients by parts of their names")
            .WithDescription($"Up to {PatientFiles.MostFound}; who wants others gives more letters.")
            .Produces<IReadOnlyList<FoundBody>>().ProducesProblem(StatusCodes.Status400BadRequest);
        routes.MapGet("/patients/{id:guid}", PatientAsync).Opens(ApiScope.Patients)
            .WithSummary("One patient: who, alerts, appliances")
            .Produces<PatientBody>().ProducesProblem(StatusCodes.Status404NotFound);
        routes.MapGet("/patients/{id:guid}/visits", VisitsAsync).Opens(ApiScope.Visits)
            .WithSummary("All visits of a patient, the oldest first")
            .Produces<IReadOnlyList<VisitBody>>().ProducesProblem(StatusCodes.Status404NotFound);
        routes.MapGet("/visits/{id:guid}", VisitAsync).Opens(ApiScope.Visits)
            .WithSummary("One visit").Produces<VisitBody>().ProducesProblem(StatusCodes.Status404NotFound);
    }

    private static async Task<IResult> FindAsync(
        [Description("Parts of given and family names; accents and capitals do not matter.")] string? name,
        HttpContext context, PatientFiles files)
    {
        if (string.IsNullOrWhiteSpace(name) || name.Length > 200)
        {
            return ApiRefusals.Wrong(
            [
                new ApiProblem(
                    "", "name", "No name is given, or it is too long.", "Write parts of the name: ?name=amara."),
            ]);
        }

        return Results.Json(
            (await files.SearchAsync(name, context.RequestAborted))
                .Select(one => new FoundBody(one.Id, one.FullName, one.BornOn)));
    }

    private static async Task<IResult> PatientAsync(Guid id, HttpContext context, PatientFiles files) =>
        await files.OpenAsync(id, By(context), context.RequestAborted) is { } file
            ? Results.Json(PatientBody.Of(file)) : ApiRefusals.Missing("patient");

    private static async Task<IResult> VisitsAsync(Guid id, HttpContext context, PatientFiles files) =>
        await files.OpenAsync(id, By(context), context.RequestAborted) is { } file
            ? Results.Json(file.Visits.Select(VisitBody.Of)) : ApiRefusals.Missing("patient");

    private static async Task<IResult> VisitAsync(Guid id, HttpContext context, PatientFiles files) =>
        await files.OfVisitAsync(id, By(context), context.RequestAborted) is { } file
            ? Results.Json(VisitBody.Of(file.Visits.Single(one => one.Id == id)))
            : ApiRefusals.Missing("visit");

    private static Actor By(HttpContext context) => TokenScheme.Client(context).ToActor();
}

/// <summary>Somebody found by name.</summary>
/// <param name="Id">Identity.</param>
/// <param name="FullName">Given and family names.</param>
/// <param name="BornOn">Birth date.</param>
public sealed record FoundBody(Guid Id, string FullName, DateOnly BornOn);

/// <summary>An alert.</summary>
/// <param name="Kind">nickel, resorption, medication, hygiene and so on.</param>
/// <param name="Text">In words.</param>
/// <param name="Since">First day.</param>
/// <param name="EndedOn">First day on which it no longer holds; null while it does.</param>
public sealed record AlertBody(string Kind, string Text, DateOnly Since, DateOnly? EndedOn);

/// <summary>An arch with an appliance.</summary>
/// <param name="Jaw">upper or lower.</param>
/// <param name="Slot">Nominal slot: 018 or 022.</param>
/// <param name="Prescription">Id of the prescription.</param>
/// <param name="BondedTeeth">ISO 3950 numbers.</param>
/// <param name="BegunOn">When it went on.</param>
/// <param name="EndedOn">When it came off; null while it is on.</param>
public sealed record ApplianceBody(
    string Jaw, string Slot, string Prescription, IReadOnlyList<string> BondedTeeth, DateOnly BegunOn,
    DateOnly? EndedOn);

/// <summary>A patient.</summary>
/// <param name="Id">Identity.</param>
/// <param name="GivenNames">Given names.</param>
/// <param name="FamilyName">Family name.</param>
/// <param name="BornOn">Birth date.</param>
/// <param name="Invented">True in a demo practice: nobody real.</param>
/// <param name="Plan">The plan of treatment in a sentence.</param>
/// <param name="Alerts">All, also those that have ended.</param>
/// <param name="Appliances">The newest first.</param>
public sealed record PatientBody(
    Guid Id, string GivenNames, string FamilyName, DateOnly BornOn, bool Invented, string Plan,
    IReadOnlyList<AlertBody> Alerts, IReadOnlyList<ApplianceBody> Appliances)
{
    internal static PatientBody Of(PatientFile file) => new(
        file.Patient.Id, file.Patient.GivenNames, file.Patient.FamilyName, file.Patient.BornOn,
        file.Patient.IsInvented, file.Patient.Plan,
        [.. file.Patient.Alerts.Select(one => new AlertBody(
            JsonNamingPolicy.KebabCaseLower.ConvertName(one.Kind.ToString()), one.Text, one.Since, one.EndedOn))],
        [.. file.Treatments.Select(Appliance)]);

    private static ApplianceBody Appliance(ArchTreatment one) => new(
        one.Jaw.Word(), one.Appliance.SlotCode, one.Appliance.Prescription,
        [.. one.Appliance.Bonded.Select(tooth => tooth.ToIso())], one.BegunOn, one.EndedOn);
}

/// <summary>A visit.</summary>
/// <param name="Id">Identity.</param>
/// <param name="PatientId">Whose.</param>
/// <param name="Day">The day.</param>
/// <param name="Starts">The time, local.</param>
/// <param name="Minutes">How long it is planned.</param>
/// <param name="Kind">bonding, adjustment, emergency, review or debonding.</param>
/// <param name="State">booked, begun or signed.</param>
/// <param name="SignedBy">Who signed; null before.</param>
/// <param name="SignedAt">When; null before.</param>
/// <param name="Content">What is noted, as the records keep it.</param>
/// <param name="Amendments">Later entries, as the records keep them.</param>
public sealed record VisitBody(
    Guid Id, Guid PatientId, DateOnly Day, TimeOnly Starts, int Minutes, string Kind, string State, string? SignedBy,
    DateTimeOffset? SignedAt, JsonElement Content, JsonElement Amendments)
{
    internal static VisitBody Of(Visit visit) => new(
        visit.Id, visit.PatientId, visit.Day, visit.Starts, visit.Minutes,
        JsonNamingPolicy.KebabCaseLower.ConvertName(visit.Kind.ToString()),
        JsonNamingPolicy.KebabCaseLower.ConvertName(visit.State.ToString()), visit.Signed?.Name, visit.Signed?.At,
        RecordJson.Of(visit.Content), RecordJson.Of(visit.Amendments));
}
