using Archwright.Dentition.Ties;
using Archwright.Exchange.Json;
using Archwright.Exchange.Problems;
using Archwright.Mechanics.Slots;

namespace Archwright.Exchange.CaseFiles;

/// <summary>Reads what keeps the wire in a slot. Figures that are left out come from <see
/// cref="TieDefaults"/>.</summary>
internal static class TieReading
{
    public static Tie? Tie(Node node, string whose, ProblemList problems)
    {
        string kind = node.Members.LastOrDefault(m => m.Key == "kind").Value?.Text ?? "";
        KeySet keys = kind switch
        {
            "steel" or "spring" => CaseKeys.SeatingTie,
            "elastic" => CaseKeys.ElasticTie,
            "partial" => CaseKeys.PartialTie,
            "none" => CaseKeys.NoTie,
            _ => CaseKeys.ClosedTie,
        };
        if (Fields.Of(node, keys, whose, problems, CaseKeys.ElasticTie, CaseKeys.PartialTie) is not { } fields)
            return null;

        return fields.Word("kind", "closed", "steel", "elastic", "spring", "partial", "none") switch
        {
            "closed" => Holds(fields, TieKind.Closed) is { } holds ? Mechanics.Slots.Tie.Closed(holds) : null,
            "steel" => Seating(fields, TieKind.Steel),
            "elastic" => Elastic(fields),
            "spring" => Seating(fields, TieKind.Spring),
            "partial" => Partial(fields),
            "none" => Mechanics.Slots.Tie.None,
            _ => null,
        };
    }

    private static Tie? Seating(Fields fields, TieKind kind)
    {
        TieDefault usual = TieDefaults.Of(kind);
        double? force = fields.Number("force_N", Quantities.SeatingForce, usual.SeatingForce);
        double? stiffness = fields.Number("stiffness_N_per_mm", Quantities.TieStiffness, usual.Stiffness);
        return force is { } f && stiffness is { } k && Holds(fields, kind) is { } holds
            ? Mechanics.Slots.Tie.Seating(kind, f, k, holds)
            : null;
    }

    private static Tie? Elastic(Fields fields)
    {
        double? loss = fields.Number("lost_in_3_weeks", Quantities.TieLoss, 0);
        return loss is { } share ? Seating(fields, TieKind.Elastic)?.Losing(share) : null;
    }

    private static Tie? Partial(Fields fields)
    {
        double? reach = fields.Number("reach_mm", Quantities.TieReach, TieDefaults.Of(TieKind.Partial).Reach);
        return reach is { } r && Holds(fields, TieKind.Partial) is { } holds
            ? Mechanics.Slots.Tie.Partial(r, holds)
            : null;
    }

    private static double? Holds(Fields fields, TieKind kind) =>
        fields.Number("holds_N", Quantities.TieHolds, TieDefaults.Of(kind).Holds);
}
