namespace Archwright.Storage.Model;

/// <summary>That the program judged by a policy, or by ceilings, from a moment on. Only ever added.</summary>
public sealed class PolicyInForce
{
    /// <summary>Identity.</summary>
    public Guid Id { get; init; } = Guid.CreateVersion7();

    /// <summary>"policy" or "ceilings".</summary>
    public string Kind { get; init; } = "";

    /// <summary>Its name and version.</summary>
    public string Version { get; init; } = "";

    /// <summary>SHA-256 of the whole of it, in hexadecimal.</summary>
    public string Digest { get; init; } = "";

    /// <summary>The whole of it, a figure a line with its source; empty where an older program noted it.</summary>
    public string Text { get; init; } = "";

    /// <summary>From when on.</summary>
    public DateTimeOffset Since { get; init; }
}
