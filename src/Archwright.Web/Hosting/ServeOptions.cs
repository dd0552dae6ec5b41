using Archwright.Treatment.Policies;
using Archwright.Web.Api;

namespace Archwright.Web.Hosting;

/// <summary>How the app is to be served.</summary>
public sealed record ServeOptions
{
    /// <summary>Port on this computer; 0 for any free one.</summary>
    public int Port { get; init; }

    /// <summary>Folder of the records, the keys and the photographs.</summary>
    public required string DataFolder { get; init; }

    /// <summary>Serves the demo practice, whose patients are invented.</summary>
    public bool Demo { get; init; }

    /// <summary>Connection string of a PostgreSQL server; null for a file in the folder.</summary>
    public string? Postgres { get; init; }

    /// <summary>The practice's own policy; null for the one that comes with the program.</summary>
    public VisitPolicy? Policy { get; init; }

    /// <summary>Computes what the API is asked; null where it is to compute nothing.</summary>
    public ICaseAnswers? Answers { get; init; }
}
