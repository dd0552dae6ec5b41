using System.CommandLine;
using System.Globalization;
using System.Text.Json;
using Archwright.Cli.Running;
using Archwright.Storage.Backups;

namespace Archwright.Cli.Verbs;

/// <summary><c>archwright restore</c>: puts a backup back, never over anything.</summary>
internal static class RestoreVerb
{
    /// <summary>Makes the verb.</summary>
    public static Command Create(Terminal terminal)
    {
        Argument<string> file = Words.Needed("FILE", "a backup, as archwright backup makes them");
        Option<string?> data = RecordsFolder.Option();
        var aside = new Option<bool>("--set-aside")
        {
            Description = "Where records are there already, keep them beside under another name. End the app first.",
        };
        Option<bool> json = CommonOptions.Json();
        var verb = new Verb("restore", "Put a backup back. Records that are there are never written over.")
        {
            Examples =
            [
                ("archwright restore monday.zip --data /srv/tried", "into an empty folder, to look at it"),
                ("archwright restore monday.zip --set-aside", "into the usual folder; what was there stays beside"),
            ],
        };
        verb.Add(file);
        foreach (Option option in new Option[] { data, aside, json })
            verb.Add(option);
        verb.SetAction((parsed, cancellation) => RunAsync(
            terminal, parsed.GetRequiredValue(file), RecordsFolder.Of(parsed.GetValue(data)),
            parsed.GetValue(aside), parsed.GetValue(json), cancellation));
        return verb;
    }

    private static async Task<int> RunAsync(
        Terminal terminal, string file, string folder, bool aside, bool json, CancellationToken cancellation)
    {
        Restored restored = await RecordsFolder.TellAsync(() =>
            new BackupRestorer(file, TimeProvider.System)
                .RestoreAsync(folder, RecordsFolder.Postgres, aside, cancellation));
        if (json)
        {
            terminal.Output.WriteLine(JsonSerializer.Serialize(new
            {
                format = "archwright-restored/1",
                folder,
                made_at = restored.Manifest.MadeAt,
                patients = restored.Manifest.Counts.Patients,
                visits = restored.Manifest.Counts.Visits,
                set_aside = restored.SetAside,
            }));
            return ExitCode.Done;
        }

        terminal.Output.WriteLine(string.Create(
            CultureInfo.InvariantCulture,
            $"Restored into {folder}: {restored.Manifest.Counts.Patients} patients, "
            + $"{restored.Manifest.Counts.Visits} visits, as they stood on "
            + $"{restored.Manifest.MadeAt:yyyy-MM-dd HH:mm} UTC."));
        if (restored.SetAside is { } other)
            terminal.Output.WriteLine($"What was there before lies in {other}.");
        return ExitCode.Done;
    }
}
