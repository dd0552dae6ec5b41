using System.IO.Compression;
using System.Text.Json;
using Archwright.Practice.Audit;
using Archwright.Practice.Tests;
using Archwright.Practice.Visits;
using Archwright.Storage.Desks;
using Archwright.Storage.Tests.Opening;

namespace Archwright.Storage.Tests.Desks;

/// <summary>One patient's whole record as a file. Rests on both databases.</summary>
[Trait("basis", "independent")]
public sealed class RecordExportTests(PostgresServer server)
{
    public static TheoryData<string> Kinds => [.. TestDatabase.Kinds];

    [Theory, MemberData(nameof(Kinds))]
    public async Task It_holds_all_of_one_patient_nothing_of_another_and_leaves_a_line(string kind)
    {
        using TestDatabase made = await TestDatabase.MakeAsync(kind, server);
        (Guid patient, Visit visit, _) = await made.ReadyToSignAsync();
        (Guid other, _, _) = await made.ReadyToSignAsync();
        await made.Desk.SignAsync(visit.Id, visit.Revision, Samples.Orthodontist);
        await made.Desk.AmendAsync(visit.Id, "Elastics given.", "Forgotten.", Samples.Assistant);
        var export = new RecordExport(made.Database, new PhotoShelf("none"), made.Clock);
        using var file = new MemoryStream();

        bool found = await export.WriteAsync(patient, file, _ => null, Samples.Orthodontist);

        Assert.True(found);
        file.Position = 0;
        using var zip = new ZipArchive(file, ZipArchiveMode.Read);
        using var reader = new StreamReader(zip.GetEntry("record.json")!.Open());
        string text = await reader.ReadToEndAsync();
        using JsonDocument record = JsonDocument.Parse(text);
        JsonElement root = record.RootElement;
        Assert.Equal(RecordExport.Format, root.GetProperty("format").GetString());
        Assert.Equal("Østby-Kahn", root.GetProperty("patient").GetProperty("family_name").GetString());
        Assert.Equal(2, root.GetProperty("visits").GetArrayLength());
        JsonElement signed = root.GetProperty("visits")[0];
        Assert.Equal("signed", signed.GetProperty("state").GetString());
        Assert.Equal("Dr Iva Lund", signed.GetProperty("signed").GetProperty("name").GetString());
        Assert.Equal("Elastics given.", signed.GetProperty("amendments")[0].GetProperty("text").GetString());
        Assert.NotEqual(0, root.GetProperty("trail").GetArrayLength());
        Assert.DoesNotContain(other.ToString(), text, StringComparison.Ordinal);
        Assert.Contains(await made.Files.TrailAsync(patient), line => line.Act == AuditAct.Exported);
        Assert.False(await export.WriteAsync(Guid.NewGuid(), file, _ => null, Samples.Orthodontist));
    }
}
