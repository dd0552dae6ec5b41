namespace Archwright.Storage.Model;

/// <summary>Pieces that came to or left a lot. Only ever added.</summary>
public sealed class StockMovement
{
    /// <summary>Identity.</summary>
    public Guid Id { get; init; } = Guid.CreateVersion7();

    /// <summary>Which lot.</summary>
    public Guid LotId { get; init; }

    /// <summary>When.</summary>
    public DateTimeOffset At { get; init; }

    /// <summary>By whom.</summary>
    public string StaffName { get; init; } = "";

    /// <summary>Pieces added; negative when taken.</summary>
    public int Change { get; init; }

    /// <summary>The visit that they went into; null otherwise.</summary>
    public Guid? VisitId { get; init; }
}
