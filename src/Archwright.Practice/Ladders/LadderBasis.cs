using Archwright.Mechanics.Slots;
using Archwright.Practice.Advice;
using Archwright.Practice.Courses;
using Archwright.Practice.People;
using Archwright.Practice.Stock;
using Archwright.Practice.Values;
using Archwright.Practice.Visits;

namespace Archwright.Practice.Ladders;

/// <summary>What the ladder of an arch rests on: the arch as it was last seen, and the wire that visit left in
/// place.</summary>
/// <param name="On">Day on which the positions were seen; week 0 of the ladder.</param>
/// <param name="Inputs">The arch, the patient and the wires to choose from.</param>
/// <param name="WireStays">Whether the wire in place was decided on that day, so that the next one goes in at the next
/// visit at the earliest. Otherwise the ladder may begin with another wire on that day.</param>
public sealed record LadderBasis(DateOnly On, AdviceInputs Inputs, bool WireStays)
{
    /// <summary>What is on record of an arch.</summary>
    /// <param name="patient">Whose.</param>
    /// <param name="treatment">The arch.</param>
    /// <param name="visits">The patient's visits.</param>
    /// <param name="lots">The shelf. The ladder looks months ahead, so that a wire which has just run out counts as
    /// one that the practice keeps.</param>
    /// <param name="today">The day: every alert that holds on it counts, whenever it became known.</param>
    public static LadderBasis Of(
        Patient patient, ArchTreatment treatment, IEnumerable<Visit> visits, IEnumerable<StockLot> lots,
        DateOnly today)
    {
        Noted[] noted = [.. NotedOf(treatment, visits)];
        Noted? seen = noted.LastOrDefault(one => one.Arch.Seen is not null);
        Noted? fitted = noted.LastOrDefault(one => one.Arch.Decided is not null || one.Arch.Found is not null);
        ToothMap<BareTooth>? bare = noted.LastOrDefault(one => one.Arch.Bare is not null)?.Arch.Bare;
        ArchVisit? tied = noted.LastOrDefault(one => one.Arch.Ties.Count > 0)?.Arch;
        DateOnly on = seen?.Arch.Seen!.On ?? treatment.BegunOn; // seen: chosen so above
        WireFound? wire = fitted is null ? null : WireAfter(fitted);
        return new LadderBasis(
            on,
            new AdviceInputs
            {
                Jaw = treatment.Jaw,
                SlotCode = treatment.Appliance.SlotCode,
                Bonded = treatment.Appliance.BondedBut(bare),
                Bare = bare ?? ToothMap<BareTooth>.Empty,
                Positions = seen?.Arch.Seen!.Positions ?? treatment.StartedFrom,
                Ties = tied?.Ties ?? ToothMap<TieKind>.Same(treatment.Appliance.Bonded, treatment.Appliance.UsualTie),
                Ends = tied?.FreerEnd ?? default,
                PresentWire = wire?.WireId ?? "",
                PresentWeeks = Math.Max(0, wire?.WeeksOn(on) ?? 0),
                WorkingWire = treatment.Appliance.WorkingWire,
                Discomfort = seen?.Visit.Content.Discomfort?.Worst,
                AgeYears = patient.AgeOn(on),
                Stock = Kept(treatment, lots),
                Alerts = Listing<AlertKind>.Of(
                    patient.AlertsOn(today).Select(alert => alert.Kind).Distinct().Order()),
            },
            fitted?.Arch.Decided is not null && wire is not null);
    }

    /// <summary>What has changed since a ladder was computed; nothing means that it still holds.</summary>
    /// <param name="now">What it would rest on now.</param>
    public IEnumerable<LadderChange> ChangesTo(LadderBasis now)
    {
        ArgumentNullException.ThrowIfNull(now);
        AdviceInputs then = Inputs;
        (LadderChange Change, bool IsThere)[] all =
        [
            (LadderChange.Positions, On != now.On || !then.Positions.Equals(now.Inputs.Positions)),
            (LadderChange.Wire, then.PresentWire != now.Inputs.PresentWire || WireStays != now.WireStays),
            (LadderChange.Appliance, then.SlotCode != now.Inputs.SlotCode || !then.Bonded.Equals(now.Inputs.Bonded)
                || !then.Bare.Equals(now.Inputs.Bare)
                || then.WorkingWire != now.Inputs.WorkingWire),
            (LadderChange.Ties, !then.Ties.Equals(now.Inputs.Ties) || then.Ends != now.Inputs.Ends),
            (LadderChange.Patient, !then.Alerts.Equals(now.Inputs.Alerts) || then.AgeYears != now.Inputs.AgeYears
                || then.Discomfort != now.Inputs.Discomfort),
            (LadderChange.Stock, !then.Stock.Equals(now.Inputs.Stock)),
        ];
        return all.Where(one => one.IsThere).Select(one => one.Change);
    }

    private static IEnumerable<Noted> NotedOf(ArchTreatment treatment, IEnumerable<Visit> visits) =>
        from visit in visits
        where visit.PatientId == treatment.PatientId && visit.State != VisitState.Booked
            && visit.Day >= treatment.BegunOn
        orderby visit.Day, visit.Starts
        let arch = visit.Content.Arch(treatment.Jaw)
        where arch is not null
        select new Noted(visit, arch);

    private static WireFound? WireAfter(Noted noted) => noted.Arch.Decided switch
    {
        { Act: WireAct.Fit } fitted => new WireFound(fitted.WireId, noted.Visit.Day),
        { Act: WireAct.LeaveOut } => null,
        _ => noted.Arch.Found,
    };

    private static Listing<string> Kept(ArchTreatment treatment, IEnumerable<StockLot> lots) => Listing<string>.Of(
        lots.Where(lot => lot.RecalledOn is null && (lot.Jaw is null || lot.Jaw == treatment.Jaw))
            .Select(lot => lot.WireId).Distinct().Order(StringComparer.Ordinal));

    private sealed record Noted(Visit Visit, ArchVisit Arch);
}
