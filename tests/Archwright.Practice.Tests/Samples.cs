using Archwright.Dentition.Comparison;
using Archwright.Dentition.Teeth;
using Archwright.Mechanics.Rods;
using Archwright.Mechanics.Slots;
using Archwright.Practice.Advice;
using Archwright.Practice.Courses;
using Archwright.Practice.People;
using Archwright.Practice.Stock;
using Archwright.Practice.Values;
using Archwright.Practice.Visits;
using Archwright.Treatment.Policies;

namespace Archwright.Practice.Tests;

/// <summary>An invented patient, her upper arch and a visit that can be signed; each test changes one thing.</summary>
internal static class Samples
{
    public static readonly DateOnly Today = new(2026, 3, 2);
    public static readonly DateTimeOffset Now = new(2026, 3, 2, 9, 40, 0, TimeSpan.Zero);
    public static readonly Actor Orthodontist = new(Guid.CreateVersion7(), "Dr Iva Lund", StaffRole.Orthodontist);
    public static readonly Actor Assistant = new(Guid.CreateVersion7(), "Jo Marsh", StaffRole.Assistant);

    public static PatientDetails Details { get; } = new()
    {
        GivenNames = "Mira", FamilyName = "Østby-Kahn", BornOn = new DateOnly(2012, 3, 3), IsInvented = true,
    };

    public static Listing<ToothNumber> UpperTeeth { get; } = Listing<ToothNumber>.Of(
        Jaw.Upper.Teeth().Where(tooth => tooth.Position <= 7));

    public static ToothMap<ToothOffset> HighCanine { get; } = ToothMap<ToothOffset>.Empty
        .With(ToothNumber.FromIso(13), new ToothOffset(OcclusalMm: -1, RotationDegrees: 5));

    public static Patient Patient() => Archwright.Practice.People.Patient.Create(Details, practiceIsDemo: true, Today);

    public static ArchTreatment Upper(Guid patient) => ArchTreatment.Begin(
        patient,
        Jaw.Upper,
        new Appliance { SlotCode = "022", Prescription = "roth", Bonded = UpperTeeth },
        Today.AddDays(-42),
        HighCanine);

    public static AdviceInputs Inputs(params AlertKind[] alerts) => new()
    {
        Jaw = Jaw.Upper,
        SlotCode = "022",
        Bonded = UpperTeeth,
        Positions = HighCanine,
        Ties = ToothMap<TieKind>.Same(UpperTeeth, TieKind.Closed),
        Stock = Listing<string>.Of(["niti-014", "bti-016", "ss-019x025"]),
        Alerts = Listing<AlertKind>.Of(alerts),
    };

    public static Recommendation Advice(string wire = "niti-014") => new()
    {
        Kind = AdviceKind.Ranking,
        WireId = wire,
        Options = Listing<AdvisedWire>.Of(
        [
            new AdvisedWire("niti-014", WireFitness.Fits, 0.9, "13", "Goes in everywhere."),
            new AdvisedWire("ss-019x025", WireFitness.TooStrong, 9, "13", "Goes in, but two teeth bear too much."),
        ]),
        Cautions = Listing<string>.Empty,
        Inputs = Inputs(),
        PolicyVersion = "test-1",
        ProgramVersion = "0",
        GivenAt = Now,
    };

    /// <summary>A policy with ceilings of a fortieth, which no wire keeps to where a tooth is off.</summary>
    public static VisitPolicy Narrow { get; } = VisitPolicy.Default.WithCeilings(new ForceCeilings(
        ForceCeilings.Default.All.Select(one => one with { Limit = one.Limit with { Value = one.Limit.Value / 40 } })));

    /// <summary>Everything that a signature needs for one upper arch without alerts.</summary>
    public static VisitContent Complete { get; } = new()
    {
        Upper = new ArchVisit
        {
            Found = new WireFound("niti-014", Today.AddDays(-42)),
            Seen = new ArchSeen(Today, PositionsFrom.Measured, HighCanine),
            Advised = Advice(),
            Decided = new Decision(WireAct.Keep, "niti-014", null, ""),
            Ties = ToothMap<TieKind>.Same(UpperTeeth, TieKind.Elastic),
            RightEnd = WireEnds.Cinched,
            LeftEnd = WireEnds.Cinched,
        },
        NextInWeeks = 6,
    };

    public static Visit Visit(Guid patient, VisitContent? content = null)
    {
        Visit visit = Archwright.Practice.Visits.Visit.Book(
            patient, Today, new TimeOnly(9, 30), 20, VisitKind.Adjustment);
        visit.Note(content ?? Complete, Assistant);
        return visit;
    }

    public static StockLot Lot(
        string wire = "niti-014", Jaw? jaw = Jaw.Upper, int pieces = 3, DateOnly? expires = null) =>
        StockLot.Receive(wire, jaw, "ovoid", "T-1", expires, pieces, reorderAt: 2);

    /// <summary>The complete visit with its upper arch changed.</summary>
    public static VisitContent With(Func<ArchVisit, ArchVisit> change) =>
        Complete with { Upper = change(Complete.Upper!) };

    /// <summary>Signs a visit with some content, as an orthodontist, for a patient without alerts.</summary>
    public static void Sign(VisitContent content, Actor? by = null)
    {
        Patient patient = Patient();
        Visit(patient.Id, content).Sign(by ?? Orthodontist, Now, patient, [Upper(patient.Id)]);
    }
}
