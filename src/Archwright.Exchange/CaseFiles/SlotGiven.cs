using Archwright.Dentition.Positions;
using Archwright.Dentition.Teeth;
using Archwright.Exchange.Json;
using Archwright.Mechanics.Slots;

namespace Archwright.Exchange.CaseFiles;

/// <summary>A slot as a file gives it; what could not be read is null.</summary>
internal sealed record SlotGiven
{
    /// <summary>Where it stands in the file.</summary>
    public required Node Node { get; init; }

    /// <summary>"the slot at tooth 13": how messages call it.</summary>
    public required string Called { get; init; }

    public string? Label { get; init; }

    /// <summary>Null on a bench and where the number could not be read.</summary>
    public ToothNumber? Tooth { get; init; }

    /// <summary>Whether there is a bracket.</summary>
    public bool IsBonded { get; init; } = true;

    public double? Width { get; init; }

    public double? Height { get; init; }

    public double? Depth { get; init; }

    public Tie? Tie { get; init; }

    public Hold? Hold { get; init; }

    public double? Friction { get; init; }

    public SlotFrame? Rest { get; init; }

    public SlotFrame? Actual { get; init; }

    /// <summary>Null where the file gives the actual frame.</summary>
    public ClinicalOffset? Offset { get; init; }

    /// <summary>How its axes turn into clinical directions.</summary>
    public ClinicalAxes Axes => Tooth is { } tooth ? ClinicalAxes.For(tooth) : ClinicalAxes.Bench;

    /// <summary>True when walls hold the wire inside the channel, so that it has to fit.</summary>
    public bool Encloses =>
        Hold is Mechanics.Slots.Hold.Walls or Mechanics.Slots.Hold.EdgesOnly
        && Tie is { Kind: not (TieKind.None or TieKind.Partial) };
}
