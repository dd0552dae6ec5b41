using Archwright.Treatment.Policies;

namespace Archwright.Cli.Running;

/// <summary>The practice's own policy.</summary>
internal static class PolicyFiles
{
    /// <summary>The policy of a file, or the program's.</summary>
    /// <exception cref="Refusal">The file cannot be read, or does not hold together; exit 2.</exception>
    public static VisitPolicy Load(string? file)
    {
        if (file is null)
            return VisitPolicy.Default;

        PolicyReading reading = PolicyReader.Read(file);
        return reading.Policy ?? throw new Refusal(
            ExitCode.BadInput,
            [
                .. reading.Problems.Select(problem => new Complaint(
                    problem.Message, $"{file}  {problem.Path}", problem.Remedy)),
            ]);
    }
}
