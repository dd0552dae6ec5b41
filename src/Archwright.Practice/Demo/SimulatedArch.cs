using Archwright.Dentition.Teeth;
using Archwright.Mechanics.Rods;
using Archwright.Mechanics.Slots;
using Archwright.Practice.Advice;
using Archwright.Practice.People;
using Archwright.Practice.Values;
using Archwright.Treatment.Patients;

namespace Archwright.Practice.Demo;

/// <summary>One arch of an invented patient through all visits: the wires are those of the scenario, the places of the
/// teeth follow from them by the program's own forecast at the patient's hidden rate.</summary>
/// <remarks>Where the program cannot engage a wire or follow it, the places are not known from then on, and nothing is
/// made up: those visits have no positions, and today's are the scenario's own. A tooth that the scenario tells to have
/// gone off its course (its bracket came off) stands today where the scenario says.</remarks>
internal sealed class SimulatedArch
{
    // What a practised hand reads off: a tenth of a millimetre and a degree. Common practice, no source.
    private const double ShiftError = 0.05;
    private const double TurnError = 0.6;

    // Hidden rates of the twelve against the law's mean: the spread between people, each kept for good.
    private static readonly double[] Rates = [1, 0.9, 1.1, 1.2, 0.7, 1, 1.1, 0.8, 0.45, 1, 0.7, 0.9];

    private readonly Jaw jaw;
    private readonly DemoPatient source;
    private readonly int index;
    private readonly Dictionary<int, ToothMap<ToothOffset>> places = [];

    /// <summary>One arch of a patient.</summary>
    /// <param name="jaw">Which arch.</param>
    /// <param name="source">The patient.</param>
    /// <param name="index">Number of the patient, for the hidden rate.</param>
    /// <param name="computed">Where the teeth stood at each visit; null to compute it now.</param>
    public SimulatedArch(Jaw jaw, DemoPatient source, int index, DemoPlaces? computed)
    {
        this.jaw = jaw;
        this.source = source;
        this.index = index;
        Bonded = Listing<ToothNumber>.Of(jaw.Teeth().Where(tooth =>
            tooth.Position <= 7 && !source.MissingTeeth.Contains(tooth.ToIso())));
        Start = Positions(source.Start);
        BegunOn = source.Visits.FirstOrDefault(visit => Wire(visit, jaw) is not null || visit.Day == 0)?.Day;
        if (computed is null)
            Simulate();
        else
            places = computed.Of(source.Id, jaw);
    }

    /// <summary>Where the teeth stood, by day.</summary>
    public IReadOnlyDictionary<int, ToothMap<ToothOffset>> Places => places;

    /// <summary>Teeth with a bracket.</summary>
    public Listing<ToothNumber> Bonded { get; }

    /// <summary>Places on bonding day.</summary>
    public ToothMap<ToothOffset> Start { get; }

    /// <summary>Bonding day, counted from today; null when the arch carries no appliance.</summary>
    public int? BegunOn { get; }

    /// <summary>Today's places as somebody measures them.</summary>
    public ToothMap<ToothOffset> SeenToday => SeenOn(0) ?? Positions(source.TodayPositions);

    /// <summary>Places of a day as somebody measured them; null when the program does not know them.</summary>
    public ToothMap<ToothOffset>? SeenOn(int day) => places.TryGetValue(day, out ToothMap<ToothOffset>? truth)
        ? Measured(truth, day)
        : null;

    /// <summary>The wire that a patient comes with, and since when; null on bonding day.</summary>
    public (string Wire, int Since)? WireBefore(int day)
    {
        (string Wire, int Since)? found = null;
        foreach (DemoVisit visit in source.Visits.Where(visit => visit.Day < day))
        {
            if (Wire(visit, jaw) is { } wire && found?.Wire != wire)
                found = (wire, visit.Day);
        }

        return found;
    }

    /// <summary>Ties of a visit from the scenario's words.</summary>
    public ToothMap<TieKind> Ties(string words)
    {
        TieKind usual = source.Ties == "closed lid" ? TieKind.Closed : TieKind.Elastic;
        ToothMap<TieKind> ties = ToothMap<TieKind>.Same(Bonded, usual);
        if (words.Length > 3 && ToothNumber.TryParse(words[..2], out ToothNumber tooth) && Bonded.Contains(tooth))
        {
            ties = ties.With(
                tooth, words[3..].StartsWith("partial", StringComparison.Ordinal) ? TieKind.Partial : TieKind.None);
        }

        return ties;
    }

    /// <summary>The wire that a visit leaves in an arch; null when none.</summary>
    public static string? Wire(DemoVisit visit, Jaw jaw) => jaw == Jaw.Upper ? visit.UpperWire : visit.LowerWire;

    private void Simulate()
    {
        if (BegunOn is not { } begun)
            return;

        places[begun] = Start;
        ToothMap<ToothOffset>? at = Start;
        DemoVisit[] visits = [.. source.Visits.Where(visit => visit.Day >= begun && visit.Day < 0)];
        for (int i = 0; i < visits.Length && at is not null; i++)
        {
            int until = i + 1 < visits.Length ? visits[i + 1].Day : 0;
            at = Wire(visits[i], jaw) is { } wire ? Followed(at, wire, visits[i], until - visits[i].Day) : at;
            if (at is not null)
                places[until] = at;
        }

        if (at is not null && BegunOn < 0)
            places[0] = WithStrays(at);
    }

    private ToothMap<ToothOffset>? Followed(ToothMap<ToothOffset> from, string wire, DemoVisit visit, int days)
    {
        if (!DemoCourse.Known(wire))
            return null;

        var inputs = new AdviceInputs
        {
            Jaw = jaw,
            SlotCode = source.SlotInches < 0.02 ? "018" : "022",
            Bonded = Bonded,
            Positions = from,
            Ties = Ties(visit.Ties),
            Ends = WireEnds.Free,
            Stock = Listing<string>.Empty,
            Alerts = Listing<AlertKind>.Empty,
        };
        return Outlook.After(inputs, wire, days, new PatientRate(Math.Log(Rates[index]), 0));
    }

    // A tooth that stands farther off today than at the start has lost its bracket or its hold on the way.
    private ToothMap<ToothOffset> WithStrays(ToothMap<ToothOffset> at)
    {
        foreach ((ToothNumber tooth, ToothOffset now) in Positions(source.TodayPositions))
        {
            ToothOffset first = Start.Of(tooth, ToothOffset.Zero);
            if (Math.Abs(now.RotationDegrees) > Math.Abs(first.RotationDegrees) + 4)
                at = at.With(tooth, now);
        }

        return at;
    }

    private ToothMap<ToothOffset> Measured(ToothMap<ToothOffset> truth, int day)
    {
        var random = new Random(1000 * index + 7 * (day + 1000) + (int)jaw);
        return ToothMap<ToothOffset>.Of(truth.Select(pair => KeyValuePair.Create(pair.Key, new ToothOffset(
            Read(pair.Value.LabialMm, ShiftError, 0.1),
            Read(pair.Value.OcclusalMm, ShiftError, 0.1),
            Read(pair.Value.MesialMm, ShiftError, 0.1),
            Read(pair.Value.RotationDegrees, TurnError, 1),
            Read(pair.Value.TipDegrees, TurnError, 1),
            Read(pair.Value.TorqueDegrees, TurnError, 1)))));

        double Read(double value, double error, double step)
        {
            double normal = Math.Sqrt(-2 * Math.Log(1 - random.NextDouble()))
                * Math.Cos(2 * Math.PI * random.NextDouble());
            return Math.Round(Math.Round((value + error * normal) / step) * step, 1) + 0.0; // no negative zero
        }
    }

    private ToothMap<ToothOffset> Positions(DemoArches arches) => ToothMap<ToothOffset>.Of(
        (jaw == Jaw.Upper ? arches.Upper : arches.Lower)
            .Select(pair => (Tooth: DemoCourse.Tooth(pair.Key), At: pair.Value))
            .Where(one => Bonded.Contains(one.Tooth))
            .Select(one => KeyValuePair.Create(one.Tooth, new ToothOffset(
                one.At.LabialMm,
                one.At.OcclusalMm,
                one.At.MesialMm,
                one.At.RotationDeg,
                one.At.TipDeg,
                one.At.TorqueDeg))));
}
