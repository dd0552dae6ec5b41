using Archwright.Cli.Running;
using Archwright.Cli.Tests.Running;
using Archwright.Practice.Settings;
using Archwright.Storage.Opening;
using Microsoft.Data.Sqlite;
using Run = Archwright.Cli.Tests.Running.Run;

namespace Archwright.Cli.Tests.Verbs;

/// <summary>Backup and restore by command. Rests on the records that come back.</summary>
[Trait("basis", "law")]
public sealed class BackupVerbTests
{
    [Fact]
    public async Task What_is_backed_up_is_restored_and_nothing_is_written_over()
    {
        using var folder = new Folder();
        string records = await RecordsAsync(folder, "records", "Ours");
        string file = folder.File("monday.zip");

        Run made = await Run.Of("backup", file, "--data", records);
        Run again = await Run.Of("backup", file, "--data", records);
        Run back = await Run.Of("restore", file, "--data", folder.File("tried"));
        Run over = await Run.Of("restore", file, "--data", folder.File("tried"));
        Run aside = await Run.Of("restore", file, "--data", folder.File("tried"), "--set-aside");

        Assert.Equal((ExitCode.Done, ""), (made.Code, made.Error));
        Assert.Contains("it was restored into a scratch folder and holds", made.Output, StringComparison.Ordinal);
        Assert.Equal(ExitCode.BadInput, again.Code);
        Assert.Contains("never written over another", Flat(again.Error), StringComparison.Ordinal);
        Assert.Equal((ExitCode.Done, ""), (back.Code, back.Error));
        Assert.Equal(ExitCode.BadInput, over.Code);
        Assert.Contains("--set-aside", over.Error, StringComparison.Ordinal);
        Assert.Equal((ExitCode.Done, ""), (aside.Code, aside.Error));
        Assert.Contains("practice-before-", aside.Output, StringComparison.Ordinal);
        Assert.Equal("Ours", await NameAsync(folder.File("tried")));
        SqliteConnection.ClearAllPools();
    }

    [Fact]
    public async Task What_is_not_there_is_told_with_a_mend()
    {
        using var folder = new Folder();

        Run nothing = await Run.Of("backup", folder.File("a.zip"), "--data", folder.File("none"));
        Run missing = await Run.Of("restore", folder.File("a.zip"), "--data", folder.File("none"));
        Run other = await Run.Of("restore", folder.Text("b.zip", "no zip"), "--data", folder.File("none"));

        Assert.All([nothing, missing, other], run => Assert.Equal(ExitCode.BadInput, run.Code));
        Assert.Contains("--data", nothing.Error, StringComparison.Ordinal);
        Assert.Contains("There is no file", missing.Error, StringComparison.Ordinal);
        Assert.Contains("no whole zip file", Flat(other.Error), StringComparison.Ordinal);
    }

    private static string Flat(string text) =>
        string.Join(' ', text.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries));

    private static async Task<string> RecordsAsync(Folder folder, string name, string practice)
    {
        string records = folder.File(name);
        Directory.CreateDirectory(records);
        PracticeDatabase database = PracticeDatabase.Sqlite(Path.Combine(records, "practice.db"));
        await database.MigrateAsync();
        await database.SettleAsync(new PracticeSettings { Name = practice });
        return records;
    }

    private static async Task<string> NameAsync(string records) =>
        (await PracticeDatabase.Sqlite(Path.Combine(records, "practice.db")).SettingsAsync()).Name;
}
