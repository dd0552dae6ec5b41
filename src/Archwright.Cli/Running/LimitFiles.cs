using System.CommandLine;
using Archwright.Dentition.Comparison;
using Archwright.Exchange.Csv;

namespace Archwright.Cli.Running;

/// <summary>The practice's own ceilings.</summary>
internal static class LimitFiles
{
    /// <summary>The option.</summary>
    public static Option<string?> Option() => new("--limits")
    {
        Description = "The practice's own ceilings of force and moment, as CSV with the columns tooth or group, "
            + "movement, force_N or moment_N_mm, source.",
        HelpName = "FILE.csv",
    };

    /// <summary>The ceilings of a file, or the usual ones.</summary>
    /// <exception cref="Refusal">The file cannot be read; exit 2.</exception>
    public static ForceCeilings Load(string? file) =>
        file is null ? ForceCeilings.Default : Cases.Value(CeilingsReader.Read(file), file);
}
