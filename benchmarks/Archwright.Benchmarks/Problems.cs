using System.Collections.Immutable;
using Archwright.Dentition.Positions;
using Archwright.Dentition.Prescriptions;
using Archwright.Dentition.Teeth;
using Archwright.Mechanics.Alloys;
using Archwright.Mechanics.Engagement;
using Archwright.Mechanics.Numerics;
using Archwright.Mechanics.Rods;
using Archwright.Mechanics.Sections;
using Archwright.Mechanics.Slots;
using Archwright.Mechanics.Tests;

namespace Archwright.Benchmarks;

/// <summary>What is timed. The arch is the half ellipse of <c>mechanics-benchmarks.json</c>; the irregularity is made
/// up, of the size that a first wire (round) and a later one (rectangular) meet.</summary>
internal static class Problems
{
    private const double SlotHeight = 0.5588;
    private const double SlotDepth = 0.7112;
    private const double SlotWidth = 3;
    private const double Degree = Math.PI / 180;

    // Tooth by tooth from 17 to 27: labial, occlusal [mm], rotation, tip, torque [degrees] of a crowded arch.
    private static readonly double[,] Crowded =
    {
        { 0, 0, 0, 0, 0 }, { 0.1, 0, 1, 1, -2 }, { -0.3, 0.1, 4, -2, 3 }, { 0.2, -0.2, -5, 2, -4 },
        { 0.6, -1.5, 8, 4, 5 }, { -1.0, 0.3, -12, -3, 6 }, { 0.4, 0.2, 6, 1, -3 },
        { -0.2, 0.1, -4, 2, 4 }, { 0.7, -0.4, 10, -2, -5 }, { -0.4, -0.6, -6, 3, 4 }, { 0.2, 0.2, 5, -2, 3 },
        { -0.1, 0.1, -3, 1, -2 }, { 0.1, -0.1, 2, -1, 2 }, { 0, 0, 0, 0, 0 },
    };

    /// <summary>The reference problem of the arch: one tooth 2 mm high, the wire through fourteen points.</summary>
    public static Problem RoundThroughPoints { get; } =
        new("points, 13 high", BenchmarkFile.Arch(BenchmarkFile.Case("arch", "arch-point-13-high")));

    /// <summary>A round first wire, 0.014 in in 0.022 slots of a crowded arch, with walls and clearance.</summary>
    public static Problem Round { get; } =
        new("round, crowded", FullArch(Section.Round(0.3556), share: 1));

    /// <summary>A rectangular wire with play, 0.016 x 0.022 in, and a quarter of that crowding.</summary>
    public static Problem Rectangular { get; } = new(
        "rectangular, mild", FullArch(Section.Rectangular(0.4064, 0.5588, 0.04), share: 0.25));

    /// <summary>A superelastic wire, 0.016 in, in half of that crowding: by fibres, with history, along the
    /// path.</summary>
    public static Problem Superelastic { get; } = new(
        "superelastic, half crowded",
        FullArch(Section.Round(0.4064), share: 0.5) with
        {
            Wire = new Wire(
                Section.Round(0.4064),
                BenchmarkFile.Flag(BenchmarkFile.Case("superelastic_law", "law-A-36")["alloy"])),
        });

    /// <summary>An upper arch from anatomy and arch form, crowded in front, with a usual first wire.</summary>
    public static ArchSetup CrowdedFront { get; } = ArchBuilder.Build(new ArchRequest
    {
        Jaw = Jaw.Upper,
        Slot = SlotSize.In022,
        WireId = "niti-014",
        Contacts = [1.0, 0.8, 0.6, 1.2, 0.9],
    });

    /// <summary>An upper arch that is a little irregular in front, as for a ladder of wires.</summary>
    public static ArchSetup MildFront { get; } = ArchBuilder.Build(new ArchRequest
    {
        Jaw = Jaw.Upper,
        Slot = SlotSize.In022,
        WireId = "niti-014",
        Contacts = [0.5, 0.7, 0.4, 0.6, 0.3],
    });

    /// <summary>The crowded arch as a problem to time.</summary>
    public static Problem FirstWire { get; } = new("niti-014, anatomy", CrowdedFront.Arrangement);

    /// <summary>Every problem of a full arch; the first is the one that the others are compared with.</summary>
    public static IReadOnlyList<Problem> FullArches { get; } =
        [RoundThroughPoints, Round, Rectangular, FirstWire, Superelastic];

    /// <summary>An arch of the file with one wire point led along each slot's axis, for the comparison with CalculiX.
    /// </summary>
    public static Arrangement Gliding(string id)
    {
        Arrangement arch = BenchmarkFile.Arch(BenchmarkFile.Case("arch", id));
        return arch with { Slots = [.. arch.Slots.Select(slot => slot with { Hold = Hold.Glide })] };
    }

    /// <summary>Slots 7 mm apart on the same ellipse, every second one a little out of line.</summary>
    public static Problem OfSlots(int count)
    {
        var slots = ImmutableArray.CreateBuilder<Slot>();
        for (int i = 0; i < count; i++)
        {
            SlotFrame rest = OnEllipse(7 * (i - (count - 1) / 2.0));
            slots.Add(Walled($"{i + 1}", rest, rest.Moved(rest.Outward * (i % 2 == 0 ? 0.25 : -0.25), default)));
        }

        return new Problem($"{count} slots", Arch(Section.Round(0.3556), slots.ToImmutable()));
    }

    private static Arrangement FullArch(Section section, double share)
    {
        Arrangement points = BenchmarkFile.Arch(BenchmarkFile.Case("arch", "arch-point-13-high"));
        return Arch(section, [.. points.Slots.Select(
            (slot, i) => Walled(slot.Label, slot.Rest, Displaced(slot.Rest, i, share)))]);
    }

    private static Arrangement Arch(Section section, ImmutableArray<Slot> slots) => new()
    {
        Wire = new Wire(section, new LinearElastic(200_000, 0.3)),
        Slots = slots,
    };

    private static Slot Walled(string label, SlotFrame rest, SlotFrame actual) => new()
    {
        Label = label,
        Rest = rest,
        Actual = actual,
        Width = SlotWidth,
        Height = SlotHeight,
        Depth = SlotDepth,
    };

    // Upper teeth: occlusal is the third axis. Whether a turn goes to mesial or distal does not matter for the time.
    private static SlotFrame Displaced(SlotFrame rest, int tooth, double share)
    {
        double Of(int column) => share * Crowded[tooth, column];
        return rest.Moved(
            rest.Outward * Of(0) + rest.Third * Of(1),
            (rest.Third * Of(2) + rest.Outward * Of(3) + rest.Along * Of(4)) * Degree);
    }

    // x = 28 cos t, y = 46 sin t; the arc length from the middle by small steps, exact enough for a slot's place.
    private static SlotFrame OnEllipse(double arc)
    {
        const double a = 28;
        const double b = 46;
        double t = Math.PI / 2;
        for (int i = 0; i < 2000; i++)
            t += arc / 2000 / Math.Sqrt(Square(a * Math.Sin(t)) + Square(b * Math.Cos(t)));

        var centre = new Vector3(a * Math.Cos(t), b * Math.Sin(t), 0);
        var along = new Vector3(-a * Math.Sin(t), b * Math.Cos(t), 0);
        return SlotFrame.Create(centre, along, new Vector3(along.Y, -along.X, 0));
    }

    private static double Square(double x) => x * x;
}
