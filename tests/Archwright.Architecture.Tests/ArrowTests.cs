using System.Xml.Linq;

namespace Archwright.Architecture.Tests;

/// <summary>Which project may use which. Rests on the house's own rule: arrows point one way, and who opens the
/// mechanics need not know what a patient is.</summary>
[Trait("basis", "law")]
public sealed class ArrowTests
{
    // Project -> the projects it may use. A new project takes its place here, or the tests below fail.
    private static readonly Dictionary<string, string[]> Allowed = new(StringComparer.Ordinal)
    {
        ["Archwright.Mechanics"] = [],
        ["Archwright.Dentition"] = ["Archwright.Mechanics"],
        ["Archwright.Treatment"] = ["Archwright.Dentition", "Archwright.Mechanics"],
        ["Archwright.Validation"] = ["Archwright.Treatment", "Archwright.Dentition", "Archwright.Mechanics"],
        ["Archwright.Practice"] = ["Archwright.Treatment", "Archwright.Dentition", "Archwright.Mechanics"],
        ["Archwright.Storage"] =
            ["Archwright.Practice", "Archwright.Treatment", "Archwright.Dentition", "Archwright.Mechanics"],
        ["Archwright.Web"] =
        [
            "Archwright.Storage", "Archwright.Exchange", "Archwright.Practice", "Archwright.Treatment",
            "Archwright.Dentition", "Archwright.Mechanics",
        ],
        ["Archwright.Exchange"] = ["Archwright.Dentition", "Archwright.Mechanics"],
        ["Archwright.Cli"] =
        [
            "Archwright.Web", "Archwright.Storage", "Archwright.Exchange", "Archwright.Validation",
            "Archwright.Practice", "Archwright.Treatment", "Archwright.Dentition", "Archwright.Mechanics",
        ],
    };

    public static TheoryData<string> Projects => [.. Allowed.Keys];

    [Fact]
    public void Every_project_has_its_place_in_the_list_of_arrows() =>
        Assert.Equal(
            Allowed.Keys.Order(StringComparer.Ordinal),
            SourceTree.Under("src/", ".csproj").Select(file => Path.GetFileNameWithoutExtension(file)));

    [Theory, MemberData(nameof(Projects))]
    public void A_project_file_points_only_along_the_arrows(string project)
    {
        IEnumerable<string> wrong = References(project, "ProjectReference")
            .Select(path => Path.GetFileNameWithoutExtension(path.Replace('\\', '/')))
            .Except(Allowed[project], StringComparer.Ordinal);

        Findings.None(
            $"{project} may use only [{string.Join(", ", Allowed[project])}]. Move the code to the project that may.",
            wrong.Select(name => $"{ProjectFile(project)} refers to {name}"));
    }

    [Theory, MemberData(nameof(Projects))]
    public void Compiled_code_uses_only_along_the_arrows(string project)
    {
        using var assembly = new CompiledAssembly(AssemblyPath(project));
        IEnumerable<string> wrong = assembly.Uses
            .Where(use => use.Assembly.StartsWith("Archwright.", StringComparison.Ordinal)
                          && !Allowed[project].Contains(use.Assembly, StringComparer.Ordinal))
            .Select(use => $"{use.Type} of {use.Assembly} is used in {FilesNaming(project, use.Type)}");

        Findings.None($"{project} may use only [{string.Join(", ", Allowed[project])}].", wrong);
    }

    [Fact]
    public void The_mechanics_uses_the_base_library_alone()
    {
        const string reason = "The mechanics must stay readable and checkable by itself: no package at run time.";
        string baseLibrary = Path.GetDirectoryName(typeof(object).Assembly.Location)!;
        using var assembly = new CompiledAssembly(AssemblyPath("Archwright.Mechanics"));

        Findings.None(reason, References("Archwright.Mechanics", "PackageReference")
            .Select(name => $"{ProjectFile("Archwright.Mechanics")} refers to the package {name}"));
        Findings.None(reason, Findings.Some("uses of other assemblies", assembly.Uses)
            .Where(use => !File.Exists(Path.Combine(baseLibrary, use.Assembly + ".dll")))
            .Select(use => $"{use.Type} of {use.Assembly} is used in {FilesNaming("Archwright.Mechanics", use.Type)}"));
    }

    [Fact]
    public void Every_project_stands_in_the_solution_so_that_it_is_built_and_tested()
    {
        var listed = XDocument.Parse(SourceTree.Read("Archwright.slnx"))
            .Descendants("Project").Select(project => (string?)project.Attribute("Path"));

        Assert.Equal(
            SourceTree.Files.Where(file => file.EndsWith(".csproj", StringComparison.Ordinal)),
            listed.Order(StringComparer.Ordinal));
    }

    [Theory, MemberData(nameof(Projects))]
    public void Every_project_has_tests_of_its_own(string project) =>
        Assert.Contains($"tests/{project}.Tests/{project}.Tests.csproj", SourceTree.Files);

    private static string ProjectFile(string project) => $"src/{project}/{project}.csproj";

    private static IEnumerable<string> References(string project, string kind) =>
        XDocument.Parse(SourceTree.Read(ProjectFile(project)))
            .Descendants(kind).Select(reference => (string)reference.Attribute("Include")!);

    // The program of the command-line project bears the command's name.
    private static string AssemblyPath(string project) => Path.Combine(
        AppContext.BaseDirectory, project == "Archwright.Cli" ? "archwright.dll" : project + ".dll");

    private static string FilesNaming(string project, string type)
    {
        string name = type[(type.LastIndexOf('.') + 1)..];
        string[] files = [.. SourceTree.Under($"src/{project}/", ".cs")
            .Where(file => SourceTree.Read(file).Contains(name, StringComparison.Ordinal))];
        return files.Length > 0 ? string.Join(", ", files) : "code that does not spell its name";
    }
}
