using Archwright.Exchange.Problems;
using Archwright.Mechanics.Engagement;
using Archwright.Mechanics.Slots;

namespace Archwright.Exchange.CaseFiles;

/// <summary>Do wire and slots belong together? Checked on the whole arrangement, when every part of it is in
/// order.</summary>
internal static class RestChecks
{
    public static bool Check(Arrangement arrangement, IReadOnlyList<SlotGiven> slots, ProblemList problems)
    {
        if (!arrangement.Slots.Any(Holds))
        {
            problems.Add(
                ProblemCodes.NothingHolds, "slots", "No slot holds the wire: all ties are “none”.",
                "Tie the wire at one tooth at least.");
            return false;
        }

        if (CanBeLaidOut(arrangement))
            return true;

        SlotGiven slot = FirstOutOfLine(arrangement, slots);
        problems.Add(
            ProblemCodes.SlotsOffRest, slot.Node.PathOf("rest"),
            $"Along the rest shape of the wire, {slot.Called} does not come after the slot before it.",
            "Let the rest shape run from the patient's right to the left, past the rest places of the slots in their "
            + "order; a straight wire fits slots that lie roughly in a line.");
        return false;
    }

    private static bool Holds(Slot slot) =>
        slot.Hold is not (Hold.Walls or Hold.EdgesOnly) || slot.Tie.Kind != TieKind.None;

    // Only the solver knows where along its curve a slot lies; it refuses an arrangement when it prepares it.
    private static bool CanBeLaidOut(Arrangement arrangement)
    {
        try
        {
            _ = new Engager(arrangement);
            return true;
        }
        catch (Exception e) when (e is ArgumentException or InvalidOperationException)
        {
            return false;
        }
    }

    private static SlotGiven FirstOutOfLine(Arrangement arrangement, IReadOnlyList<SlotGiven> slots)
    {
        for (int count = 2; count < slots.Count; count++)
        {
            Arrangement first = arrangement with
            {
                Slots =
                [
                    .. arrangement.Slots.Take(count)
                        .Select(slot => slot with { Tie = Tie.Partial(1), Hold = Hold.Walls, IsBonded = true }),
                ],
            };
            if (!CanBeLaidOut(first))
                return slots[count - 1];
        }

        return slots[^1];
    }
}
