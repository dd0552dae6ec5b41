using Archwright.Dentition.Positions;
using Archwright.Dentition.Teeth;
using Archwright.Exchange.Json;
using Archwright.Exchange.Problems;
using Archwright.Mechanics.Slots;

namespace Archwright.Exchange.CaseFiles;

/// <summary>Reads one slot.</summary>
internal static class SlotReading
{
    /// <summary>Longest label of a bench slot [characters].</summary>
    public const int LongestLabel = 40;

    /// <summary>Width of a clamp or a point where none is given [mm]; it changes nothing there.</summary>
    public const double WidthWhereItDoesNotMatter = 0.5;

    private static readonly string[] OfBrackets =
        ["width_mm", "height_mm", "depth_mm", "tie", "friction", "contact", "hold"];

    private static readonly string[] Clearances = ["height_mm", "depth_mm", "contact"];

    /// <summary>Reads a slot.</summary>
    /// <param name="node">The object.</param>
    /// <param name="jaw">Word of the arch; null when it could not be read: labels are then taken as they are.</param>
    /// <param name="problems">Where problems go.</param>
    public static SlotGiven Slot(Node node, string? jaw, ProblemList problems)
    {
        var slot = new SlotGiven { Node = node, Called = node.Path };
        if (Fields.Of(node, CaseKeys.Slot, "of " + slot.Called, problems) is not { } fields)
            return slot;

        slot = Label(fields, slot, jaw, problems);
        fields.Whose = "of " + slot.Called;
        slot = IsBonded(fields, problems) ? Channel(fields, slot, problems) : Bare(fields, slot, jaw, problems);
        return Place(fields, slot, problems);
    }

    /// <summary>The label of a slot, and the tooth where there is one.</summary>
    public static (string? Label, ToothNumber? Tooth) Tooth(Node node, string? jaw, string whose, ProblemList problems)
    {
        if (NodeReading.Text(node, "tooth", whose, problems, LongestLabel) is not { } label)
            return (null, null);

        if (jaw is null or CaseFile.Bench)
            return (label, null);

        if (!ToothNumber.TryParse(label, out ToothNumber tooth))
        {
            problems.Add(
                ProblemCodes.ToothUnknown, node.Path,
                $"{Say.Quote(label)} is no number of a permanent tooth.",
                "Write an ISO 3950 number in quotation marks: \"11\" to \"18\", \"21\" to \"28\", \"31\" to \"38\" or "
                + "\"41\" to \"48\". For a set-up without teeth write \"arch\": \"bench\".");
            return (label, null);
        }

        if (tooth.IsUpper != jaw is CaseFile.Upper)
        {
            problems.Add(
                ProblemCodes.ToothOfOtherJaw, node.Path,
                $"Tooth {tooth} ({tooth.Name}) does not stand in the {jaw} arch.",
                jaw is CaseFile.Upper
                    ? "Upper teeth are 11 to 18 and 21 to 28; or write \"arch\": \"lower\"."
                    : "Lower teeth are 31 to 38 and 41 to 48; or write \"arch\": \"upper\".");
        }

        return (label, tooth);
    }

    private static SlotGiven Label(Fields fields, SlotGiven slot, string? jaw, ProblemList problems)
    {
        if (fields.Need("tooth") is not { } node)
            return slot;

        (string? label, ToothNumber? tooth) = Tooth(node, jaw, fields.Whose, problems);
        string called = tooth is not null ? $"the slot at tooth {label}"
            : label is not null ? $"the slot {Say.Quote(label)}"
            : slot.Called;
        return slot with { Label = label, Tooth = tooth, Called = called };
    }

    private static bool IsBonded(Fields fields, ProblemList problems)
    {
        if (fields.Find("bonded") is not { } node)
            return true;
        if (node.Kind == NodeKind.Boolean)
            return node.Text == "true";

        problems.Add(
            ProblemCodes.ValueKind, node.Path, $"Here stands {node.Describe()} where true or false is wanted.",
            "Write true or false without quotation marks: false for a crown without a bracket.");
        return true;
    }

    // A crown without a bracket: it has a place and nothing else.
    private static SlotGiven Bare(Fields fields, SlotGiven slot, string? jaw, ProblemList problems)
    {
        foreach (string key in OfBrackets)
        {
            if (fields.Find(key) is { } given)
            {
                problems.Add(
                    ProblemCodes.UnbondedWithSlot, given.Path,
                    $"{Say.Capital(slot.Called)} is not bonded, and has “{key}”.",
                    "A crown without a bracket has “tooth”, “rest” and its present place alone: take the key out.");
            }
        }

        if (jaw is CaseFile.Bench)
        {
            problems.Add(
                ProblemCodes.UnbondedWithSlot, fields.Node.PathOf("bonded"),
                $"{Say.Capital(slot.Called)} is not bonded, and a bench set-up has no crowns.",
                "Take the slot out, or write \"tie\": { \"kind\": \"none\" }.");
        }

        return slot with
        {
            IsBonded = false, Tie = Mechanics.Slots.Tie.None, Friction = 0, Hold = Mechanics.Slots.Hold.Walls,
        };
    }

    private static SlotGiven Channel(Fields fields, SlotGiven slot, ProblemList problems)
    {
        slot = slot with
        {
            Friction = fields.Number("friction", Quantities.Friction, 0),
            Tie = fields.Find("tie") is { } tie
                ? TieReading.Tie(tie, "of the tie of " + slot.Called, problems)
                : Mechanics.Slots.Tie.Closed(),
        };
        return fields.Has("hold") ? Held(fields, slot, problems) : Walled(fields, slot);
    }

    private static SlotGiven Walled(Fields fields, SlotGiven slot) => slot with
    {
        Width = fields.Number("width_mm", Quantities.SlotWidth),
        Height = fields.Number("height_mm", Quantities.SlotHeight),
        Depth = fields.Number("depth_mm", Quantities.SlotDepth),
        Hold = fields.WordOr("contact", "walls", "walls", "edges") switch
        {
            "walls" => Hold.Walls,
            "edges" => Hold.EdgesOnly,
            _ => null,
        },
    };

    private static SlotGiven Held(Fields fields, SlotGiven slot, ProblemList problems)
    {
        Hold? hold = fields.Word("hold", "clamped", "point", "edges") switch
        {
            "clamped" => Hold.Clamped,
            "point" => Hold.Point,
            "edges" => Hold.EdgePoints,
            _ => null,
        };

        foreach (string key in Clearances)
        {
            if (fields.Find(key) is { } clearance)
            {
                problems.Add(
                    ProblemCodes.HoldWithClearance, clearance.Path,
                    $"{Say.Capital(slot.Called)} has a hold, and “{key}” as well.",
                    "A hold stands in place of clearances: keep one of the two.");
            }
        }

        if (fields.Find("tie") is { } tie && slot.Tie is { Kind: not TieKind.Closed })
        {
            problems.Add(
                ProblemCodes.HoldWithClearance, tie.Path,
                $"{Say.Capital(slot.Called)} has a hold, and a tie that is not closed.",
                "A hold holds by itself: leave the tie out, or take the hold out.");
        }

        return slot with
        {
            Hold = hold,
            Height = 0,
            Depth = 0,
            Width = hold is Hold.EdgePoints
                ? fields.Number("width_mm", Quantities.SlotWidth)
                : fields.Number("width_mm", Quantities.SlotWidth, WidthWhereItDoesNotMatter),
        };
    }

    private static SlotGiven Place(Fields fields, SlotGiven slot, ProblemList problems)
    {
        SlotFrame? rest = fields.Need("rest") is { } node
            ? FrameReading.Frame(node, $"of the rest place of {slot.Called}", problems)
            : null;
        PlaceGiven place = PlaceReading.Place(fields, slot.Called, rest, slot.Axes, problems);
        return slot with { Rest = rest, Actual = place.Actual, Offset = place.Offset };
    }
}
