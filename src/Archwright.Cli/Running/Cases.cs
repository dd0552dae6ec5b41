using System.Collections.Immutable;
using Archwright.Exchange.CaseFiles;
using Archwright.Exchange.Problems;

namespace Archwright.Cli.Running;

/// <summary>Reads the files a user names, or refuses with everything that is wrong in them.</summary>
internal static class Cases
{
    /// <summary>Reads a case file.</summary>
    /// <exception cref="Refusal">It cannot be read; exit 2.</exception>
    public static CaseFile Load(string file) => Value(CaseReader.Read(file), file);

    /// <summary>The value of a reading.</summary>
    /// <exception cref="Refusal">There are problems; exit 2.</exception>
    public static T Value<T>(Read<T> read, string file)
        where T : class => read.Value ?? throw new Refusal(ExitCode.BadInput, Of(read.Problems, file));

    /// <summary>Problems of a file as complaints: code, file and path in front.</summary>
    public static IReadOnlyList<Complaint> Of(ImmutableArray<Problem> problems, string file) =>
    [
        .. problems.Select(problem => new Complaint(
            problem.Message, $"{problem.Code}  {file}  {problem.Path}", problem.Remedy)),
    ];
}
