using Archwright.Dentition.Catalogue;
using Archwright.Dentition.Teeth;
using Archwright.Mechanics.Rods;
using Archwright.Mechanics.Slots;
using Archwright.Practice.Courses;
using Archwright.Practice.People;
using Archwright.Practice.Values;
using Archwright.Practice.Visits;

namespace Archwright.Practice.Demo;

/// <summary>One invented patient from bonding to the day on which the demo is opened.</summary>
internal sealed class DemoCourse
{
    // Birthdays of the twelve, before the day on which the demo is opened: spread over the year, so that each age is
    // that of the scenario whatever its texts say [days].
    private const int FirstBirthday = 40;
    private const int BetweenBirthdays = 25;

    private readonly DemoFile file;
    private readonly DemoPatient source;
    private readonly DateOnly today;
    private readonly Dictionary<Jaw, SimulatedArch> simulated = [];

    /// <summary>Makes patient number <paramref name="index"/> of the file.</summary>
    /// <param name="file">The practice.</param>
    /// <param name="index">Which patient.</param>
    /// <param name="today">The day on which it is opened.</param>
    /// <param name="computed">Where the teeth stood at each visit.</param>
    public DemoCourse(DemoFile file, int index, DateOnly today, DemoPlaces computed)
    {
        this.file = file;
        this.today = today;
        source = file.Patients[index];
        Patient = MakePatient(index);
        foreach (Jaw jaw in Enum.GetValues<Jaw>())
        {
            simulated[jaw] = new SimulatedArch(jaw, source, index, computed);
            if (simulated[jaw].BegunOn is { } begun)
            {
                Treatments.Add(ArchTreatment.Begin(
                    Patient.Id, jaw, Appliance(jaw), today.AddDays(begun), simulated[jaw].Start));
            }
        }

        DemoVisit? before = null;
        foreach (DemoVisit visit in source.Visits.Where(visit => visit.Day < 0))
        {
            Visits.Add(Past(visit, before));
            before = visit;
        }

        Visits.Add(OfToday(file.Today.Single(booking => booking.Patient == source.Id)));
    }

    public Patient Patient { get; }

    public List<ArchTreatment> Treatments { get; } = [];

    public List<Visit> Visits { get; } = [];

    private Patient MakePatient(int index)
    {
        int cut = source.Name.LastIndexOf(' ');
        var patient = Patient.Create(
            new PatientDetails
            {
                GivenNames = source.Name[..cut],
                FamilyName = source.Name[(cut + 1)..],
                BornOn = today.AddYears(-source.Age).AddDays(-FirstBirthday - BetweenBirthdays * index),
                Language = source.Language,
                Guardian = source.Guardian ?? "",
                Plan = source.Plan,
                IsInvented = true,
            },
            practiceIsDemo: true,
            today);
        foreach (string alert in source.Alerts)
            patient.Raise(Kind(alert), alert, today.AddDays(source.Visits[0].Day));
        return patient;
    }

    private Appliance Appliance(Jaw jaw) => new()
    {
        SlotCode = source.SlotInches < 0.02 ? "018" : "022",
        Prescription = source.Prescription,
        Brackets = source.Brackets,
        UsualTie = source.Ties == "closed lid" ? TieKind.Closed : TieKind.Elastic,
        Bonded = simulated[jaw].Bonded,
        WorkingWire = source.SlotInches < 0.02 ? "ss-017x025" : "ss-019x025",
    };

    // What the scenario tells of the days after a visit is asked for at the next one.
    private static Discomfort? Felt(DemoVisit? after) =>
        after?.Discomfort is { } told ? new Discomfort(told.H4, told.H24, told.D3, told.D7) : null;

    private Visit Past(DemoVisit visit, DemoVisit? before)
    {
        DateOnly day = today.AddDays(visit.Day);
        var content = new VisitContent
        {
            Discomfort = Felt(before),
            Breakages = Listing<Breakage>.Of(visit.Breakages.Select(one => new Breakage(
                Tooth(one.Tooth), one.What, one.What.Contains("rebonded", StringComparison.Ordinal)))),
            Note = visit.Note ?? "",
            NextInWeeks = visit.NextInWeeks,
        };
        foreach (Jaw jaw in Enum.GetValues<Jaw>())
            content = content.With(jaw, Arch(visit, jaw, day));
        string by = visit.By == "orthodontist" ? file.Staff[0].Name : $"{file.Staff[2].Name} for {file.Staff[0].Name}";
        return Visit.FromEarlierRecords(Patient.Id, day, new TimeOnly(10, 0), Kind(visit), content, by);
    }

    private ArchVisit? Arch(DemoVisit visit, Jaw jaw, DateOnly day)
    {
        SimulatedArch arch = simulated[jaw];
        if (arch.BegunOn is not { } begun || visit.Day < begun)
            return null;

        string wire = SimulatedArch.Wire(visit, jaw) ?? "";
        (string Wire, int Since)? before = arch.WireBefore(visit.Day);
        bool kept = before?.Wire == wire;
        return new ArchVisit
        {
            Found = before is { } found ? new WireFound(found.Wire, today.AddDays(found.Since)) : null,
            Seen = arch.SeenOn(visit.Day) is { } seen ? new ArchSeen(day, PositionsFrom.Measured, seen) : null,
            Decided = wire.Length == 0 ? null : new Decision(kept ? WireAct.Keep : WireAct.Fit, wire, null, ""),
            Ties = arch.Ties(visit.Ties),
            RightEnd = WireEnds.Free,
            LeftEnd = WireEnds.Free,
        };
    }

    private Visit OfToday(DemoBooking booking)
    {
        VisitKind kind = booking.Kind switch
        {
            "bonding" => VisitKind.Bonding,
            "emergency" => VisitKind.Emergency,
            "review" => VisitKind.Review,
            _ => VisitKind.Adjustment,
        };
        Visit visit = Visit.Book(
            Patient.Id, today, DemoPractice.Time(booking.Time), booking.Minutes, kind, source.Question);
        VisitContent content = VisitContent.Blank with
        {
            Discomfort = Felt(source.Visits.LastOrDefault(one => one.Day < 0)),
        };
        foreach (ArchTreatment treatment in Treatments)
        {
            SimulatedArch arch = simulated[treatment.Jaw];
            (string Wire, int Since)? found = arch.WireBefore(0);
            content = content.With(treatment.Jaw, new ArchVisit
            {
                Found = found is { } wire ? new WireFound(wire.Wire, today.AddDays(wire.Since)) : null,
                Seen = new ArchSeen(today, PositionsFrom.Measured, arch.SeenToday),
                Ties = arch.Ties(source.Visits[^1].Ties),
                RightEnd = WireEnds.Free,
                LeftEnd = WireEnds.Free,
            });
        }

        visit.Note(content, new Actor(Guid.Empty, file.Staff[3].Name, StaffRole.Assistant));
        return visit;
    }

    private static VisitKind Kind(DemoVisit visit) => visit.Kind switch
    {
        "bonding" => VisitKind.Bonding,
        "emergency" => VisitKind.Emergency,
        "review" => VisitKind.Review,
        _ => VisitKind.Adjustment,
    };

    private static AlertKind Kind(string alert)
    {
        (string Word, AlertKind Kind)[] words =
        [
            ("Nickel", AlertKind.Nickel), ("Root shortening", AlertKind.RootShortening),
            ("Reduced bone", AlertKind.ReducedSupport), ("Hygiene", AlertKind.Hygiene),
        ];
        return words.FirstOrDefault(one => alert.StartsWith(one.Word, StringComparison.Ordinal)) is { Word: not null } f
            ? f.Kind
            : AlertKind.Other;
    }

    internal static ToothNumber Tooth(string iso) => ToothNumber.TryParse(iso, out ToothNumber tooth)
        ? tooth
        : throw new InvalidOperationException($"The demo practice names tooth '{iso}'.");

    internal static bool Known(string wire) => WireCatalogue.Default.TryFind(wire, out _);
}
