using Archwright.Exchange.Json;
using Archwright.Mechanics.Slots;

namespace Archwright.Exchange.CaseFiles;

/// <summary>Writes ties with all their figures, so that a case does not change when a default does.</summary>
internal static class TieWriting
{
    public static string Tie(Tie tie)
    {
        var members = new List<(string, string)> { ("kind", JsonOut.Quoted(Word(tie.Kind))) };
        if (tie.Kind is TieKind.Steel or TieKind.Elastic or TieKind.Spring)
        {
            members.Add(("force_N", JsonOut.Figure("force_N", tie.SeatingForce)));
            members.Add(("stiffness_N_per_mm", JsonOut.Figure("stiffness_N_per_mm", tie.Stiffness)));
        }

        if (tie.Loss > 0)
            members.Add(("lost_in_3_weeks", JsonOut.Figure("lost_in_3_weeks", tie.Loss)));
        if (tie.Kind == TieKind.Partial)
            members.Add(("reach_mm", JsonOut.Figure("reach_mm", tie.Reach)));
        if (tie.Kind != TieKind.None && double.IsFinite(tie.Holds))
            members.Add(("holds_N", JsonOut.Figure("holds_N", tie.Holds)));
        return JsonOut.OneLine([.. members]);
    }

    private static string Word(TieKind kind) => kind switch
    {
        TieKind.Closed => "closed",
        TieKind.Steel => "steel",
        TieKind.Elastic => "elastic",
        TieKind.Spring => "spring",
        TieKind.Partial => "partial",
        TieKind.None => "none",
        _ => throw new ArgumentException($"A case file has no word for a tie of the kind {kind}.", nameof(kind)),
    };
}
