using System.Reflection;

namespace Archwright.Practice.Advice;

/// <summary>Version of the program as it stands in the record.</summary>
public static class ProgramVersion
{
    /// <summary>In words.</summary>
    public static string Text { get; } = typeof(ProgramVersion).Assembly
        .GetCustomAttribute<AssemblyInformationalVersionAttribute>()?.InformationalVersion ?? "unknown";
}
