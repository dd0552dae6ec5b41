using Archwright.Practice.Values;

namespace Archwright.Practice.Leaflets;

/// <summary>What a patient is shown beside the leaflet. Drawn when it is released, so that looking at it computes
/// nothing.</summary>
/// <param name="Arches">One an arch with a wire.</param>
public sealed record LeafletPictures(Listing<ArchPictures> Arches)
{
    /// <summary>Nothing is shown.</summary>
    public static LeafletPictures None { get; } = new(Listing<ArchPictures>.Empty);
}

/// <summary>The pictures of one arch.</summary>
public sealed record ArchPictures
{
    /// <summary>True for the upper arch.</summary>
    public required bool IsUpper { get; init; }

    /// <summary>Id of the wire before; empty when there was none.</summary>
    public required string Before { get; init; }

    /// <summary>Id of the wire from now on.</summary>
    public required string Now { get; init; }

    /// <summary>The window of the weeks' pictures: left, top, width and height [mm].</summary>
    public required Listing<double> Window { get; init; }

    /// <summary>The arch week by week, from today; empty when nothing can be forecast.</summary>
    public required Listing<WeekPicture> Weeks { get; init; }

    /// <summary>Slot heights of the appliance, "018" or "022", so that wires can be drawn in their slot.</summary>
    public required string SlotCode { get; init; }

    /// <summary>The same weeks in space; null where nothing can be forecast, and in leaflets of before.</summary>
    public SpacePictures? Space { get; init; }
}

/// <summary>The arch in space, week by week, as a forecast has it.</summary>
/// <param name="Teeth">ISO numbers of the teeth, from the patient's right to the left.</param>
/// <param name="Slots">Width, height and depth of the slot of each [mm]; three zeros where there is no bracket.</param>
/// <param name="WireRadius">Half the thickness of the wire [mm].</param>
/// <param name="Weeks">The weeks, from today.</param>
public sealed record SpacePictures(
    Listing<string> Teeth, Listing<double> Slots, double WireRadius, Listing<SpaceWeek> Weeks);

/// <summary>Where the slots and the wire are at the end of a week.</summary>
/// <param name="Week">0 for today.</param>
/// <param name="Frames">Centre, along, outward and third of each slot: twelve numbers a tooth, in the patient's frame
/// [mm, unit vectors].</param>
/// <param name="Line">Points of the wire, three numbers each [mm]; empty when it is not drawn.</param>
public sealed record SpaceWeek(int Week, Listing<double> Frames, Listing<double> Line);

/// <summary>The arch at the end of a week, as a forecast has it.</summary>
/// <param name="Week">0 for today.</param>
/// <param name="Teeth">Outline of each crown, as a path [mm].</param>
/// <param name="Wire">The wire, as a path [mm]; empty when it is not drawn.</param>
public sealed record WeekPicture(int Week, Listing<string> Teeth, string Wire);
