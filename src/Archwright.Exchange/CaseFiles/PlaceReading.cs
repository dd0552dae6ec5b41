using Archwright.Dentition.Positions;
using Archwright.Exchange.Json;
using Archwright.Exchange.Problems;
using Archwright.Mechanics.Slots;

namespace Archwright.Exchange.CaseFiles;

/// <summary>Where a slot is.</summary>
/// <param name="Actual">The frame; null when it could not be read.</param>
/// <param name="Offset">The offset; null when the file gives a frame.</param>
internal readonly record struct PlaceGiven(SlotFrame? Actual, ClinicalOffset? Offset);

/// <summary>Reads <c>offset</c> or <c>actual</c>: of a slot, or of a slot in a step.</summary>
internal static class PlaceReading
{
    /// <summary>Reads the place; without either key it is the rest place.</summary>
    /// <param name="fields">The object that may have the keys.</param>
    /// <param name="called">How messages call the slot.</param>
    /// <param name="rest">Rest frame; null when it could not be read.</param>
    /// <param name="axes">Clinical axes of the slot.</param>
    /// <param name="problems">Where problems go.</param>
    public static PlaceGiven Place(
        Fields fields, string called, SlotFrame? rest, ClinicalAxes axes, ProblemList problems)
    {
        Node? offsetNode = fields.Find("offset");
        Node? actualNode = fields.Find("actual");
        if (offsetNode is not null && actualNode is not null)
        {
            problems.Add(
                ProblemCodes.PlaceTwice, actualNode.Path,
                $"The place of {called} is given by “offset” and by “actual”.", "Keep one of the two.");
        }

        ClinicalOffset? offset = offsetNode is not null
            ? FrameReading.Offset(offsetNode, "of " + called, problems)
            : ClinicalOffset.Zero;
        if (actualNode is not null)
            return new PlaceGiven(FrameReading.Frame(actualNode, $"of the actual place of {called}", problems), null);

        return rest is { } r && offset is not null
            ? new PlaceGiven(axes.Displaced(r, offset), offset)
            : new PlaceGiven(null, offset);
    }
}
