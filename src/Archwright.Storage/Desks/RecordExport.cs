using System.IO.Compression;
using System.Text.Json;
using System.Text.Json.Nodes;
using Archwright.Practice.Audit;
using Archwright.Practice.Courses;
using Archwright.Practice.Leaflets;
using Archwright.Practice.Links;
using Archwright.Practice.People;
using Archwright.Practice.Visits;
using Archwright.Storage.Documents;
using Archwright.Storage.Model;
using Microsoft.EntityFrameworkCore;

namespace Archwright.Storage.Desks;

/// <summary>Everything about one patient as one file for somebody else: JSON in words that can be read without this
/// program, photographs as they were added, leaflets as they were released. It leaves an audit line.</summary>
/// <param name="contexts">Makes a context.</param>
/// <param name="photographs">Where photographs lie.</param>
/// <param name="clock">The time.</param>
public sealed class RecordExport(
    IDbContextFactory<PracticeContext> contexts, PhotoShelf photographs, TimeProvider clock)
{
    /// <summary>The word of <c>format</c>.</summary>
    public const string Format = "archwright-record/1";

    private static readonly JsonSerializerOptions Readable = new() { WriteIndented = true };

    /// <summary>Writes the file, a zip.</summary>
    /// <param name="patientId">Whose.</param>
    /// <param name="to">Where it goes; left open.</param>
    /// <param name="print">A leaflet as PDF; null where it cannot be printed.</param>
    /// <param name="by">Who asks.</param>
    /// <param name="cancellation">Gives up.</param>
    /// <returns>False when there is no such patient.</returns>
    public async Task<bool> WriteAsync(
        Guid patientId, Stream to, Func<ReleasedLeaflet, byte[]?> print, Actor by,
        CancellationToken cancellation = default)
    {
        await using PracticeContext db = await contexts.CreateDbContextAsync(cancellation);
        if (await db.Patients.AsNoTracking().FirstOrDefaultAsync(one => one.Id == patientId, cancellation)
            is not { } patient)
        {
            return false;
        }

        List<Visit> visits = await db.Visits.AsNoTracking().Where(one => one.PatientId == patientId)
            .OrderBy(one => one.Day).ToListAsync(cancellation);
        List<ReleasedLeaflet> leaflets = await db.Leaflets.AsNoTracking()
            .Where(one => one.PatientId == patientId).ToListAsync(cancellation);
        JsonObject record = await RecordAsync(db, patient, visits, leaflets, cancellation);
        db.Trail.Add(AuditLine.Of(by, clock.GetUtcNow(), AuditAct.Exported, patientId, "whole record"));
        await db.SaveChangesAsync(cancellation);

        await using var zip = new ZipArchive(to, ZipArchiveMode.Create, leaveOpen: true);
        record["photographs_missing"] = await PhotographsAsync(zip, visits, cancellation);
        foreach (ReleasedLeaflet leaflet in leaflets)
        {
            if (print(leaflet) is { } page)
            {
                await AddAsync(
                    zip, $"leaflets/{leaflet.Leaflet.Day:yyyy-MM-dd}-{leaflet.Id:N}.pdf", page, cancellation);
            }
        }

        await AddAsync(zip, "record.json", JsonSerializer.SerializeToUtf8Bytes(record, Readable), cancellation);
        return true;
    }

    private async Task<JsonObject> RecordAsync(
        PracticeContext db, Patient patient, List<Visit> visits, List<ReleasedLeaflet> leaflets,
        CancellationToken cancellation)
    {
        List<ArchTreatment> treatments = await db.Treatments.AsNoTracking()
            .Where(one => one.PatientId == patient.Id).OrderBy(one => one.BegunOn).ToListAsync(cancellation);
        List<LadderRow> ladders = await db.Ladders.AsNoTracking().Where(one => one.PatientId == patient.Id)
            .OrderBy(one => one.TreatmentId).ToListAsync(cancellation);
        List<DiscomfortDay> diary = await db.Discomfort.AsNoTracking()
            .Where(one => one.PatientId == patient.Id).OrderBy(one => one.Day).ToListAsync(cancellation);
        List<AuditLine> trail = await db.Trail.AsNoTracking().Where(one => one.PatientId == patient.Id)
            .ToListAsync(cancellation);
        return new JsonObject
        {
            ["format"] = Format,
            ["made_at"] = clock.GetUtcNow(),
            ["patient"] = Of(patient),
            ["treatments"] = Each(treatments, one => new JsonObject
            {
                ["id"] = one.Id,
                ["jaw"] = one.Jaw.ToString().ToLowerInvariant(),
                ["begun_on"] = Text(one.BegunOn),
                ["ended_on"] = one.EndedOn is { } ended ? Text(ended) : null,
                ["appliance"] = Part(one.Appliance),
                ["started_from"] = Part(one.StartedFrom),
            }),
            ["ladders"] = Each(ladders, one => new JsonObject
            {
                ["treatment_id"] = one.TreatmentId, ["ladder"] = Part(one.Ladder),
            }),
            ["visits"] = Each(visits, Of),
            ["leaflets"] = Each(leaflets, one => new JsonObject
            {
                ["id"] = one.Id,
                ["visit_id"] = one.VisitId,
                ["released_by"] = one.ReleasedBy,
                ["released_at"] = one.ReleasedAt,
                ["leaflet"] = Part(one.Leaflet),
            }),
            ["discomfort"] = Each(diary, one => new JsonObject
            {
                ["day"] = Text(one.Day), ["score_0_10"] = one.Score,
            }),
            ["trail"] = Each(trail.OrderBy(one => one.At), one => new JsonObject
            {
                ["at"] = one.At,
                ["by"] = one.StaffName,
                ["act"] = one.Act.ToString().ToLowerInvariant(),
                ["subject"] = one.Subject,
            }),
        };
    }

    private static JsonObject Of(Patient patient) => new()
    {
        ["id"] = patient.Id,
        ["given_names"] = patient.GivenNames,
        ["family_name"] = patient.FamilyName,
        ["born_on"] = Text(patient.BornOn),
        ["language"] = patient.Language,
        ["guardian"] = patient.Guardian,
        ["plan"] = patient.Plan,
        ["invented"] = patient.IsInvented,
        ["alerts"] = Part(patient.Alerts),
    };

    private static JsonObject Of(Visit visit) => new()
    {
        ["id"] = visit.Id,
        ["day"] = Text(visit.Day),
        ["starts"] = visit.Starts.ToString("HH:mm", System.Globalization.CultureInfo.InvariantCulture),
        ["kind"] = visit.Kind.ToString().ToLowerInvariant(),
        ["state"] = visit.State.ToString().ToLowerInvariant(),
        ["question"] = visit.Question,
        ["content"] = Part(visit.Content),
        ["signed"] = visit.Signed is { } signed ? Part(signed) : null,
        ["amendments"] = Part(visit.Amendments),
    };

    // A photograph that is gone or was changed on disk is named, not passed over.
    private async Task<JsonArray> PhotographsAsync(
        ZipArchive zip, IEnumerable<Visit> visits, CancellationToken cancellation)
    {
        JsonArray missing = [];
        foreach (Photo photo in visits.SelectMany(one => one.Content.Photos).DistinctBy(one => one.File))
        {
            if (await photographs.ReadAsync(photo, cancellation) is { } read)
                await AddAsync(zip, BackupsFolder + Path.GetFileName(photo.File), read.Bytes, cancellation);
            else
                missing.Add(photo.File);
        }

        return missing;
    }

    private const string BackupsFolder = Backups.BackupManifest.Photographs;

    private static async Task AddAsync(
        ZipArchive zip, string name, byte[] bytes, CancellationToken cancellation)
    {
        await using Stream stream = await zip.CreateEntry(name).OpenAsync(cancellation);
        await stream.WriteAsync(bytes, cancellation);
    }

    private static JsonArray Each<T>(IEnumerable<T> all, Func<T, JsonNode> one) => [.. all.Select(one)];

    private static JsonNode? Part<T>(T part) => JsonNode.Parse(DocumentJson.Write(part));

    private static string Text(DateOnly day) =>
        day.ToString("yyyy-MM-dd", System.Globalization.CultureInfo.InvariantCulture);
}
