using System.Collections.Immutable;
using Archwright.Dentition.ArchForms;
using Archwright.Dentition.Catalogue;
using Archwright.Dentition.Teeth;
using Archwright.Mechanics.Engagement;
using Archwright.Mechanics.Slots;

namespace Archwright.Dentition.Positions;

/// <summary>An arch with its slots where they should be and where they are, ready to be engaged or written to a
/// file. Lists run from the patient's right to the left, one entry a slot.</summary>
public sealed record ArchSetup
{
    /// <summary>Which arch.</summary>
    public required Jaw Jaw { get; init; }

    /// <summary>The wire of the catalogue.</summary>
    public required CatalogueWire Wire { get; init; }

    /// <summary>Curve through the crown centres.</summary>
    public required ArchForm Form { get; init; }

    /// <summary>The tooth of each slot.</summary>
    public required ImmutableArray<ToothNumber> Teeth { get; init; }

    /// <summary>How each slot is off.</summary>
    public required ImmutableArray<ClinicalOffset> Offsets { get; init; }

    /// <summary>The wire and the slots; labels are ISO numbers.</summary>
    public required Arrangement Arrangement { get; init; }

    /// <summary>The slots of <see cref="Arrangement"/>.</summary>
    public ImmutableArray<Slot> Slots => Arrangement.Slots;

    /// <summary>Clinical axes of each slot.</summary>
    public ImmutableArray<ClinicalAxes> Axes => [.. Teeth.Select(ClinicalAxes.For)];

    /// <summary>Free wire between neighbouring slots in their planned places: distance of the slot centres less
    /// half of the two slot widths [mm]; one entry fewer than slots.</summary>
    public ImmutableArray<double> FreeSpans =>
    [
        .. Slots.Zip(Slots.Skip(1), (right, left) =>
            (left.Rest.Centre - right.Rest.Centre).Length - (left.Width + right.Width) / 2),
    ];

    /// <summary>Irregularity of the front teeth; null when one of the six has no slot.</summary>
    public IrregularityIndex? Irregularity =>
        IrregularityIndex.TryOf([.. Teeth.Select(tooth => (ToothNumber?)tooth)], Slots, out IrregularityIndex? index)
            ? index
            : null;

    /// <summary>Distance of the canines' cusp tips [mm]; null when one has no slot.</summary>
    public double? IntercanineWidth =>
        ArchWidths.Intercanine([.. Teeth.Select(tooth => (ToothNumber?)tooth)], Slots);
}
