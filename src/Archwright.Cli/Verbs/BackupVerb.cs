using System.CommandLine;
using System.Globalization;
using System.Text.Json;
using Archwright.Cli.Running;
using Archwright.Storage.Backups;
using Archwright.Storage.Opening;

namespace Archwright.Cli.Verbs;

/// <summary><c>archwright backup</c>: all records as one file, also while the app runs.</summary>
internal static class BackupVerb
{
    /// <summary>Makes the verb.</summary>
    public static Command Create(Terminal terminal)
    {
        Argument<string> file = Words.Needed("FILE", "the backup to write, a zip file; must not be there yet");
        Option<string?> data = RecordsFolder.Option();
        Option<bool> json = CommonOptions.Json();
        var verb = new Verb("backup", "All records and photographs as one file, also while the app runs.")
        {
            Examples =
            [
                ("archwright backup /media/safe/archwright-monday.zip", "of the usual folder; tried by restoring it"),
                ("archwright backup monday.zip --data /srv/practice", "of another folder"),
            ],
        };
        verb.Add(file);
        verb.Add(data);
        verb.Add(json);
        verb.SetAction((parsed, cancellation) => RunAsync(
            terminal, parsed.GetRequiredValue(file), RecordsFolder.Of(parsed.GetValue(data)), parsed.GetValue(json),
            cancellation));
        return verb;
    }

    private static async Task<int> RunAsync(
        Terminal terminal, string file, string folder, bool json, CancellationToken cancellation)
    {
        BackupManifest manifest = await RecordsFolder.TellAsync(async () =>
        {
            PracticeDatabase database = RecordsFolder.Database(folder) ?? throw new BackupException(
                $"There are no records in {folder}.", "Give the folder of the records with --data.");
            return await new BackupWriter(database, RecordsFolder.Photographs(folder), TimeProvider.System)
                .WriteAsync(file, cancellation);
        });
        if (json)
        {
            terminal.Output.WriteLine(JsonSerializer.Serialize(new
            {
                format = "archwright-backup-made/1",
                file,
                made_at = manifest.MadeAt,
                patients = manifest.Counts.Patients,
                visits = manifest.Counts.Visits,
                photographs = RecordsFolder.PhotographsIn(manifest),
                tried = true,
            }));
            return ExitCode.Done;
        }

        terminal.Output.WriteLine(string.Create(
            CultureInfo.InvariantCulture,
            $"{file}: {manifest.Counts.Patients} patients, {manifest.Counts.Visits} visits, "
            + $"{RecordsFolder.PhotographsIn(manifest)} photographs."));
        terminal.Output.WriteLine(manifest.Database == "sqlite"
            ? "Tried: it was restored into a scratch folder and holds."
            : "Tried: every digest holds and the dump was read through. Restore it once into an empty server to be "
                + "sure.");
        terminal.Output.WriteLine(
            "It holds everything about every patient: keep it locked away, and not in this house alone.");
        return ExitCode.Done;
    }
}
