using Archwright.Dentition.Catalogue;
using Archwright.Treatment.Decisions;
using Archwright.Treatment.Policies;

namespace Archwright.Treatment.Ladders;

/// <summary>What a clinician should heed beside a ladder.</summary>
internal static class LadderCautions
{
    public static IEnumerable<string> Of(
        VisitQuestion today, VisitPolicy policy, CatalogueWire working, bool isAssumed)
    {
        foreach (PolicyAlert alert in policy.Alerts.Where(alert => today.Has(alert.Alert)))
        {
            yield return alert.Act == AlertAct.NoStepUp
                ? $"{alert.Sentence} The ladder takes it that this is settled by the next visit." : alert.Sentence;
        }

        if (today.Alerts is null)
            yield return "Alerts were not asked: ask before anything is fitted.";
        if (!today.PresentIsKnown)
            yield return "Nobody said which wire is in place: the ladder begins as if there were none.";
        if (today.Discomfort >= policy.HighDiscomfort)
            yield return "Nothing heavier goes in today, since the last wire hurt; later visits are taken as calm.";
        if (isAssumed)
            yield return $"Nobody named the working wire: {working.Id} is the usual one for these slots.";
        if (today.ChoiceIsStock && today.Choice.All(wire => wire.Id != working.Id))
            yield return $"{working.Id} is not in stock.";

        yield return "A plan to talk about, made anew at every visit from what is seen then; it is no order.";
        yield return "Ceilings are teaching values to warn at, not limits of safety.";
        yield return Cautions.Model(today.Arch)
            + "; alloys that transform are followed by their first modulus; people differ several times over in how "
            + "fast teeth move.";
        yield return "Published trials found hardly any difference between sequences: what ties here is no winner.";
    }
}
