using System.Text;
using System.Text.Json;
using Archwright.Cli.Running;
using Archwright.Dentition.Positions;
using Archwright.Dentition.Prescriptions;
using Archwright.Dentition.Teeth;
using Archwright.Exchange.CaseFiles;
using Archwright.Storage.Backups;
using Archwright.Storage.Opening;

namespace Archwright.Cli.Tests.Running;

/// <summary>What a command line gave: exit code, standard output, standard error.</summary>
internal sealed record Run(int Code, string Output, string Error)
{
    /// <summary>Runs a command line in this process, as it runs into files: 120 columns, no colours.</summary>
    public static Task<Run> Of(params string[] args) => Of(Terminal.UsualWidth, args);

    /// <summary>The same at a given width.</summary>
    public static async Task<Run> Of(int width, params string[] args)
    {
        using var output = new MemoryStream();
        using var error = new MemoryStream();
        int code;
        using (var terminal = new Terminal(output, error, width))
            code = await CommandLine.RunAsync(args, terminal, TestContext.Current.CancellationToken);

        return new Run(code, Encoding.UTF8.GetString(output.ToArray()), Encoding.UTF8.GetString(error.ToArray()));
    }

    /// <summary>Standard output as the one JSON document that it must be.</summary>
    public JsonElement Json() => JsonDocument.Parse(Output).RootElement;
}

/// <summary>Files of a test, gone at its end.</summary>
internal sealed class Folder : IDisposable
{
    public Folder() => Directory.CreateDirectory(Path);

    public string Path { get; } =
        System.IO.Path.Combine(System.IO.Path.GetTempPath(), "archwright-" + System.IO.Path.GetRandomFileName());

    /// <summary>Full path of a file in the folder.</summary>
    public string File(string name) => System.IO.Path.Combine(Path, name);

    /// <summary>A folder with the records of a practice that has nobody yet.</summary>
    public string Records()
    {
        string records = File("records");
        Directory.CreateDirectory(records);
        PracticeDatabase.Sqlite(System.IO.Path.Combine(records, "practice.db")).MigrateAsync().GetAwaiter().GetResult();
        return records;
    }

    /// <summary>A backup of such records.</summary>
    public string Backup()
    {
        string file = File("backup.zip");
        PracticeDatabase database = PracticeDatabase.Sqlite(System.IO.Path.Combine(Records(), "practice.db"));
        new BackupWriter(database, File("none"), TimeProvider.System).WriteAsync(file).GetAwaiter().GetResult();
        return file;
    }

    /// <summary>A file with the text of one of our test cases.</summary>
    public string Case(string name)
    {
        string path = File(name);
        using Stream from = typeof(Folder).Assembly.GetManifestResourceStream("cases/" + name)
            ?? throw new InvalidOperationException($"There is no test case {name}.");
        using FileStream to = System.IO.File.Create(path);
        from.CopyTo(to);
        return path;
    }

    /// <summary>The case file of a small arch with teeth: the lower front six, crowded.</summary>
    public string Arch()
    {
        CaseFile arch = CaseFile.Of(ArchBuilder.Build(new ArchRequest
        {
            Jaw = Jaw.Lower,
            Slot = SlotSize.In022,
            WireId = "niti-014",
            Contacts = [0.6, 0.4, 0.5, 0.7, 0.4],
            Without = [.. Jaw.Lower.Teeth().Where(tooth => !tooth.IsAnterior && tooth.Position < 8)],
        }), "Lower front teeth");
        string path = File("arch.json");
        using FileStream to = System.IO.File.Create(path);
        CaseWriter.Write(arch, to);
        return path;
    }

    /// <summary>A file with a text.</summary>
    public string Text(string name, string text)
    {
        string path = File(name);
        System.IO.File.WriteAllText(path, text);
        return path;
    }

    public void Dispose() => Directory.Delete(Path, recursive: true);
}
