using Archwright.Dentition.Teeth;
using Archwright.Practice.Advice;
using Archwright.Practice.Courses;
using Archwright.Practice.People;
using Archwright.Practice.Rules;
using Archwright.Practice.Values;

namespace Archwright.Practice.Visits;

/// <summary>What must be noted before a visit can be signed.</summary>
public static class SigningChecks
{
    /// <summary>Longest interval that can be noted [weeks].</summary>
    public const int LongestInterval = 26;

    /// <summary>What still hinders the signing, each in a sentence; empty when nothing does.</summary>
    public static IReadOnlyList<RuleBrokenException> Missing(
        DateOnly day, VisitContent content, Patient patient, IReadOnlyCollection<ArchTreatment> treatments)
    {
        List<RuleBrokenException> found = [];
        foreach (Action check in Checks(day, content, patient, treatments))
        {
            try
            {
                check();
            }
            catch (RuleBrokenException broken)
            {
                found.Add(broken);
            }
        }

        return found;
    }

    /// <summary>Stops at the first thing that hinders.</summary>
    internal static void All(
        DateOnly day, VisitContent content, Patient patient, IReadOnlyCollection<ArchTreatment> treatments)
    {
        foreach (Action check in Checks(day, content, patient, treatments))
            check();
    }

    private static IEnumerable<Action> Checks(
        DateOnly day, VisitContent content, Patient patient, IReadOnlyCollection<ArchTreatment> treatments)
    {
        yield return () => PracticeRules.AlertsStandBesideTheDecision.Keep(
            patient.AlertsOn(day).All(alert => content.AlertsRead.Contains(alert.Id)),
            "Read the alerts of this patient and tick them.");
        foreach (ArchTreatment treatment in treatments.Where(one => one.EndedOn is null).OrderBy(one => one.Jaw))
        {
            ArchVisit arch = content.Arch(treatment.Jaw) ?? ArchVisit.Blank;
            yield return () => Positions(day, treatment.Jaw, arch);
            yield return () => Advice(treatment.Jaw, arch);
            yield return () => Decided(treatment.Jaw, arch);
            yield return () => Ties(treatment, arch);
            yield return () => Ends(treatment.Jaw, arch);
        }

        yield return () => PracticeRules.AVisitSaysWhenTheNextOneIs.Keep(
            content.NextInWeeks is >= 1 and <= LongestInterval, "Set the weeks to the next visit: 1 to 26.");
    }

    private static void Positions(DateOnly day, Jaw jaw, ArchVisit arch) =>
        PracticeRules.ADecisionRestsOnPositionsOfItsDay.Keep(
            arch.Seen is { } seen && seen.On == day,
            arch.Seen is { } old
                ? $"The positions of the {jaw.Word()} arch are of {old.On:yyyy-MM-dd}, not of today. Look and confirm."
                : $"Note the positions of the {jaw.Word()} arch, or confirm that they are as last seen.");

    private static void Advice(Jaw jaw, ArchVisit arch) => PracticeRules.AdviceRestsOnWhatWasSeen.Keep(
        arch.Advised is null || arch.Bears(arch.Advised),
        $"The advice for the {jaw.Word()} arch rests on other positions or brackets than those noted. "
        + "Ask for it again.");

    private static void Decided(Jaw jaw, ArchVisit arch)
    {
        PracticeRules.AnotherWireThanAdvisedNeedsAReason.Keep(
            arch.Decided is not null, $"Decide on the {jaw.Word()} arch: keep, fit, or leave without a wire.");
        PracticeRules.AnotherWireThanAdvisedNeedsAReason.Keep(
            !Differs(arch.Decided!, arch.Advised) || arch.Decided!.Reason.Trim().Length > 0,
            $"The choice for the {jaw.Word()} arch differs from the advice: say why in a few words.");
    }

    /// <summary>True when a decision is another than the advice: another wire, or one that the advice speaks
    /// against.</summary>
    public static bool Differs(Decision decided, Recommendation? advised) => advised is not null
        && (advised.Kind == AdviceKind.LookFirst
            ? advised.Of(decided.WireId) is { Fitness: not WireFitness.Fits }
            : decided.WireId != advised.WireId);

    private static void Ties(ArchTreatment treatment, ArchVisit arch)
    {
        if (arch.Decided is null or { Act: WireAct.LeaveOut })
            return;

        Listing<ToothNumber> bonded = treatment.Appliance.BondedBut(arch.Bare);
        ArchTreatment.CheckEnough(bonded);
        ToothNumber[] open = [.. bonded.Where(tooth => !arch.Ties.Has(tooth))];
        PracticeRules.EveryBondedToothHasATie.Keep(
            open.Length == 0,
            $"Note how the wire is tied at "
            + string.Join(", ", open.Select(tooth => $"the {tooth.Name} (ISO {tooth})")) + ".");
    }

    private static void Ends(Jaw jaw, ArchVisit arch) => PracticeRules.EachEndOfAWireIsNoted.Keep(
        arch.Decided is null or { Act: WireAct.LeaveOut } || arch is { RightEnd: not null, LeftEnd: not null },
        $"Note both ends of the {jaw.Word()} wire, right and left: free, stopped or cinched.");
}
