namespace Archwright.Cli.Running;

/// <summary>Says plainly that the program failed, and what would help to mend it.</summary>
internal static class Faults
{
    /// <summary>Set to 1 to see where in the program it happened.</summary>
    public const string DetailsVariable = "ARCHWRIGHT_DETAILS";

    /// <summary>The complaint about an exception that nobody expected.</summary>
    public static Complaint Describe(Exception fault, IReadOnlyList<string> args)
    {
        string details = Environment.GetEnvironmentVariable(DetailsVariable) == "1" ? "\n" + fault : "";
        return new Complaint(
            $"the program failed and gives no answer ({fault.GetType().Name}: {fault.Message}).",
            Mend: $"This is a fault of Archwright, not of your input. Please report it with the case file, the version "
                + $"({CommandLine.Version}) and the command: archwright {string.Join(' ', args)}\n"
                + $"{DetailsVariable}=1 shows where it happened.{details}");
    }
}
