using Archwright.Practice.Ladders;

namespace Archwright.Storage.Model;

/// <summary>The ladders of one arch as they were last computed. A newer computation takes the place of an older one:
/// they are a plan, not a record of what was done.</summary>
internal sealed class LadderRow
{
    /// <summary>Which arch: the treatment's identity.</summary>
    public Guid TreatmentId { get; init; }

    /// <summary>Whose.</summary>
    public Guid PatientId { get; init; }

    /// <summary>What was found.</summary>
    public required KeptLadder Ladder { get; set; }

    /// <summary>Changes with every save.</summary>
    public Guid Revision { get; private set; }
}
