using Archwright.Exchange.Problems;
using Archwright.Mechanics.Sections;

namespace Archwright.Exchange.CaseFiles;

/// <summary>Does the wire go into each slot?</summary>
internal static class FitChecks
{
    /// <summary>A wire that is thicker than a slot by no more than this just fills it [mm]: figures given in inches and
    /// turned into millimetres by different programs differ in their last digits.</summary>
    public const double Rounding = 1e-6;

    public static void Check(Section section, IEnumerable<SlotGiven> slots, ProblemList problems)
    {
        foreach (SlotGiven slot in slots)
        {
            if (slot.Height is { } height)
                CheckSlot(section, slot, slot.Node.PathOf("height_mm"), height, problems);
        }
    }

    /// <summary>Checks one channel.</summary>
    /// <returns>True when the wire goes in.</returns>
    public static bool CheckHeight(
        Section section, string called, string path, double height, ProblemList problems)
    {
        if (section.Thickness <= height + Rounding)
            return true;

        problems.Add(
            ProblemCodes.WireTooThick, path,
            $"{Say.Capital(called)} is {Say.Length(height)} mm high, the wire {Say.Length(section.Thickness)} mm "
            + "thick: it does not go in.",
            "Give the slot's real height (nominal are 0.457 and 0.559 mm), or choose a wire up to "
            + $"{Say.Length(height)} mm.");
        return false;
    }

    /// <summary>Checks that the wire lies inside the slot's depth.</summary>
    /// <remarks>A lid does not close over a wire that stands out. Other ties would hold it, but the solver keeps the
    /// wire between base and opening whatever the tie.</remarks>
    public static bool CheckDepth(Section section, string called, string path, double depth, ProblemList problems)
    {
        if (section.Width <= depth + Rounding)
            return true;

        problems.Add(
            ProblemCodes.WireTooDeep, path,
            $"{Say.Capital(called)} is {Say.Length(depth)} mm deep, the wire {Say.Length(section.Width)} mm from front "
            + "to back: it stands out of the slot.",
            $"Give the slot's real depth (some 0.7 mm), or choose a wire up to {Say.Length(depth)} mm.");
        return false;
    }

    private static void CheckSlot(Section section, SlotGiven slot, string path, double height, ProblemList problems)
    {
        if (!slot.Encloses)
            return;

        CheckHeight(section, slot.Called, path, height, problems);
        if (slot.Depth is { } depth)
            CheckDepth(section, slot.Called, slot.Node.PathOf("depth_mm"), depth, problems);
    }
}
