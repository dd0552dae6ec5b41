using System.Collections.Immutable;
using Archwright.Cli.Units;
using Archwright.Dentition.Outlines;
using Archwright.Mechanics.Numerics;
using Archwright.Mechanics.Slots;

namespace Archwright.Cli.Pictures;

/// <summary>How the views of a case are turned.</summary>
internal enum PictureSide
{
    /// <summary>Upper arch: seen from below, incisors at the top.</summary>
    Upper,

    /// <summary>Lower arch: seen from above, incisors at the bottom.</summary>
    Lower,

    /// <summary>No arch: along the line of the slots.</summary>
    Bench,
}

/// <summary>One tooth, or one bench slot, of a picture.</summary>
internal sealed record PictureTooth
{
    /// <summary>Number as the practice writes it, or the label of a bench slot.</summary>
    public required string Label { get; init; }

    /// <summary>Where the wire would be passive.</summary>
    public required SlotFrame Rest { get; init; }

    /// <summary>Where the slot is.</summary>
    public required SlotFrame Actual { get; init; }

    /// <summary>Mesiodistal [mm].</summary>
    public required double SlotWidth { get; init; }

    /// <summary>Occlusogingival [mm].</summary>
    public double SlotHeight { get; init; }

    /// <summary>Labiolingual [mm].</summary>
    public double SlotDepth { get; init; }

    /// <summary>Whether the wire is held here at all.</summary>
    public bool IsTied { get; init; } = true;

    /// <summary>Whether there is a bracket.</summary>
    public bool IsBonded { get; init; } = true;

    /// <summary>Null on the bench.</summary>
    public Crown? Crown { get; init; }

    /// <summary>Force on the tooth, in the frame of the case [N].</summary>
    public Vector3 Force { get; init; }

    /// <summary>Labial part [N].</summary>
    public double Labial { get; init; }

    /// <summary>Occlusal part [N].</summary>
    public double Occlusal { get; init; }

    /// <summary>Mesial part [N].</summary>
    public double Mesial { get; init; }

    /// <summary>Whether something at this tooth is above the practice's ceiling.</summary>
    public bool IsAboveCeiling { get; init; }

    /// <summary>Whether the slot is visibly away from its rest place.</summary>
    public bool IsDisplaced =>
        (Actual.Centre - Rest.Centre).Length > 0.15
        || Vector3.Dot(Actual.Along, Rest.Along) < 0.9986      // cos 3°
        || Vector3.Dot(Actual.Outward, Rest.Outward) < 0.9986;
}

/// <summary>Everything a picture of an engaged wire shows.</summary>
internal sealed record ArchPicture
{
    /// <summary>Title of the case.</summary>
    public required string Title { get; init; }

    /// <summary>One line below it: wire, slots.</summary>
    public required string Subtitle { get; init; }

    /// <summary>How it is turned.</summary>
    public required PictureSide Side { get; init; }

    /// <summary>In order from the patient's right to the left.</summary>
    public required ImmutableArray<PictureTooth> Teeth { get; init; }

    /// <summary>Points of the engaged wire [mm]; empty when it could not be engaged.</summary>
    public required ImmutableArray<Vector3> CentreLine { get; init; }

    /// <summary>Labiolingual side of the wire [mm].</summary>
    public required double WireWidth { get; init; }

    /// <summary>Occlusogingival side of the wire [mm].</summary>
    public required double WireThickness { get; init; }

    /// <summary>Unit of the forces.</summary>
    public required ForceUnit Unit { get; init; }

    /// <summary>Lines of the box beside the views: what a reader should know first.</summary>
    public ImmutableArray<string> Findings { get; init; } = [];

    /// <summary>Small print.</summary>
    public ImmutableArray<string> Notes { get; init; } = [];
}
