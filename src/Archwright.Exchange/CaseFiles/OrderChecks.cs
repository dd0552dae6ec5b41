using Archwright.Dentition.Teeth;
using Archwright.Dentition.Units;
using Archwright.Exchange.Problems;
using Archwright.Mechanics.Numerics;
using Archwright.Mechanics.Slots;

namespace Archwright.Exchange.CaseFiles;

/// <summary>Do the slots stand one after the other along the arch, the same way round?</summary>
/// <remarks>All checks compare slots with one another, so that they hold in any frame: a case that is turned as a whole
/// stays as good as it was.</remarks>
internal static class OrderChecks
{
    /// <summary>How far, on average, outward may point toward the middle of the arch before the slots are taken to be
    /// inside out [mm].</summary>
    private const double InwardLimit = 1;

    private const string OrderRemedy = "List the slots in order along the arch from the patient's right to the left.";

    public static void Check(IReadOnlyList<SlotGiven> slots, string? jaw, ProblemList problems)
    {
        CheckLabels(slots, problems);
        for (int i = 1; i < slots.Count; i++)
        {
            if (TeethInOrder(slots[i - 1], slots[i], problems))
                CheckPlaces(slots[i - 1], slots[i], problems);
        }

        if (jaw is CaseFile.Upper or CaseFile.Lower)
            CheckOutward(slots, problems);
    }

    private static void CheckLabels(IReadOnlyList<SlotGiven> slots, ProblemList problems)
    {
        var seen = new HashSet<string>(StringComparer.Ordinal);
        foreach (SlotGiven slot in slots)
        {
            if (slot.Label is { } label && !seen.Add(label))
            {
                problems.Add(
                    ProblemCodes.ToothTwice, slot.Node.PathOf("tooth"), $"There are two slots {Say.Quote(label)}.",
                    "Give each slot a tooth, or on a bench a label, of its own.");
            }
        }
    }

    private static bool TeethInOrder(SlotGiven before, SlotGiven slot, ProblemList problems)
    {
        if (before.Tooth is not { } right || slot.Tooth is not { } left || right.IsUpper != left.IsUpper
            || right == left || Rank(right) < Rank(left))
        {
            return true;
        }

        problems.Add(
            ProblemCodes.SlotsOutOfOrder, slot.Node.PathOf("tooth"),
            $"Tooth {left} is listed after tooth {right}, which stands to the left of it.", OrderRemedy);
        return false;
    }

    private static int Rank(ToothNumber tooth) => tooth.IsRight ? -tooth.Position : tooth.Position;

    private static void CheckPlaces(SlotGiven before, SlotGiven slot, ProblemList problems)
    {
        if (before.Rest is not { } right || slot.Rest is not { } left)
            return;

        Vector3 gap = left.Centre - right.Centre;
        double halfWidths = ((before.Width ?? 0) + (slot.Width ?? 0)) / 2;
        string path = slot.Node.PathOf("rest");
        if (gap.Length < halfWidths + Least)
        {
            problems.Add(
                ProblemCodes.SlotsOverlap, path + ".centre_mm",
                $"At rest {before.Called} and {slot.Called} stand {Say.Length(gap.Length)} mm apart, and half of their "
                + $"widths together is {Say.Length(halfWidths)} mm: they touch or overlap.",
                "Correct the rest places or the widths; crowding belongs into “offset”, not into “rest”.");
        }
        else if (Vector3.Dot(gap, right.Along) + Vector3.Dot(gap, left.Along) <= 0)
        {
            problems.Add(
                ProblemCodes.SlotsOutOfOrder, path,
                $"At rest {slot.Called} does not lie ahead of {before.Called} along the slots' axes.",
                OrderRemedy + " “along” points the same way.");
        }
        else if (Vector3.Dot(right.Third, left.Third) <= 0)
        {
            double degrees = Angle.ToDegrees(Math.Acos(Math.Clamp(Vector3.Dot(right.Third, left.Third), -1, 1)));
            problems.Add(
                ProblemCodes.OutwardFlips, path + ".outward",
                $"At rest {slot.Called} is turned by {degrees:0}° against {before.Called}: along × outward of both "
                + "must point the same way (down).",
                "Correct “outward” of one of the two: it points toward lip or cheek.");
        }

        CheckActual(before, slot, problems);
    }

    private static void CheckActual(SlotGiven before, SlotGiven slot, ProblemList problems)
    {
        if (before.Actual is not { } right || slot.Actual is not { } left)
            return;

        double apart = (left.Centre - right.Centre).Length;
        if (apart < Closest && before.Rest is { } r && slot.Rest is { } l && (l.Centre - r.Centre).Length >= Closest)
        {
            problems.Add(
                ProblemCodes.SlotsOverlap, slot.Node.Path,
                $"{Say.Capital(before.Called)} and {slot.Called} now stand {Say.Length(apart)} mm apart: two slots "
                + "cannot be in one place.",
                "Correct the offsets.");
        }
    }

    /// <summary>Least length of free wire between two slots at rest [mm].</summary>
    private const double Least = 0.05;

    /// <summary>Two slots nearer than this are in one place [mm].</summary>
    private const double Closest = 0.5;

    // Slots on a convex arch open away from its middle. Averaged over the arch, so that one odd frame does not decide.
    private static void CheckOutward(IReadOnlyList<SlotGiven> slots, ProblemList problems)
    {
        SlotFrame[] rests = [.. slots.Where(s => s.Rest is not null).Select(s => s.Rest!.Value)];
        if (rests.Length < slots.Count || rests.Length < 3)
            return;

        Vector3 middle = rests.Aggregate(default(Vector3), (sum, frame) => sum + frame.Centre) / rests.Length;
        double outward = rests.Average(frame => Vector3.Dot(frame.Outward, frame.Centre - middle));
        if (outward >= -InwardLimit)
            return;

        problems.Add(
            ProblemCodes.OutwardInward, slots[0].Node.PathOf("rest") + ".outward",
            "The outward directions of the slots point toward the middle of the arch.",
            "Let “outward” point toward lip or cheek, and “along” from the patient's right to the left.");
    }
}
