using System.Collections.Immutable;
using Archwright.Cli.Arches;
using Archwright.Cli.Solving;
using Archwright.Dentition.Catalogue;
using Archwright.Dentition.Comparison;
using Archwright.Dentition.Positions;
using Archwright.Dentition.Prescriptions;
using Archwright.Dentition.Teeth;
using Archwright.Exchange.CaseFiles;
using Archwright.Mechanics.Engagement;
using Archwright.Mechanics.Numerics;
using Archwright.Mechanics.Slots;

namespace Archwright.Cli.Tests.Tables;

/// <summary>An arch with a high canine, and answers made by hand: they test words and columns, not mechanics.</summary>
internal static class SampleCase
{
    private const int Canine = 4;

    /// <summary>Upper arch, canine 2 mm high.</summary>
    public static CaseFile File(string wire = "niti-014") => ArchFile.Of(
        ArchBuilder.Build(new ArchRequest
        {
            Jaw = Jaw.Upper,
            Slot = SlotSize.In022,
            WireId = wire,
            Positions = ImmutableDictionary<ToothNumber, ClinicalOffset>.Empty.Add(
                ToothNumber.FromIso(13), ClinicalOffset.FromDegrees(occlusal: -2, rotationDegrees: 15)),
        }),
        "High canine");

    /// <summary>The wire pulls the canine down by 1.2 N and its neighbours up by 0.6 N each.</summary>
    public static SolvedCase Engaged(string wire = "niti-014", Obstacle? obstacle = null)
    {
        CaseFile file = File(wire);
        EngagementResult result = Result(file, obstacle);
        return Solved(file, result) with
        {
            Law = new LawUsed(LawKind.Elastic), Working = obstacle is null ? Result(file, null, share: 0.7) : null,
        };
    }

    /// <summary>No equilibrium was found.</summary>
    public static SolvedCase Lost() => Solved(File(), Result(File(), new Obstacle(
        Canine, double.NaN, double.NaN, "no resting shape was found for the wire.")) with
    {
        Converged = false, Slots = [], CentreLine = [],
    });

    /// <summary>One wire of each verdict.</summary>
    public static IReadOnlyList<ComparedWire> Compared(CaseFile file)
    {
        EngagementResult result = Result(file, null);
        return
        [
            Wire("niti-012", WireVerdict.WithinLimits, result) with
            {
                LargestForce = 0.45, MaxStrain = 0.004, Set = 0, Working = Working(0.31),
                Lasting =
                [
                    new(1, 0.45, 0.45, Canine), new(0.8, 0.31, 0.31, Canine), new(0.5, 0.18, 0.2, 3),
                ],
            },
            Wire("ss-016x022", WireVerdict.AboveCeiling, result) with
            {
                LargestForce = 4.2, LargestMoment = 18, MaxStrain = 0.005, TorquePlay = 0.39, Set = 0,
                Working = Working(3.3) with { TeethAboveCeiling = [new(Canine, LoadKind.ExtrusionForce, 3.1, 0.6)] },
                TeethAboveCeiling =
                [
                    new(Canine, LoadKind.ExtrusionForce, 4.0, 0.6), new(3, LoadKind.IntrusionForce, 2.0, 0.2),
                    new(5, LoadKind.IntrusionForce, 2.0, 0.2), new(2, LoadKind.TipMoment, 12, 10),
                    new(6, LoadKind.TipMoment, 11, 10),
                ],
            },
            Wire("ss-020", WireVerdict.BendsForGood, result) with
            {
                LargestForce = 9.9, MaxStrain = 0.02, Set = 0.42, IsWholeLaw = true, Working = Working(4),
            },
            new()
            {
                Wire = Catalogue("ss-0215x028"), Engaged = false, Verdict = WireVerdict.NotEngaged,
                WhyNot = "the wire is 0.711 mm wide, the slot only 0.635 mm deep.",
                StrainLimit = 0.0075,
                TorquePlay = 0,
                Sentence = "Cannot go in: the wire is 0.711 mm wide, the slot only 0.635 mm deep.",
            },
        ];
    }

    private static ForceFigures Working(double force) => new(force, Canine, 2, 5, [], 0.5);

    private static ComparedWire Wire(string id, WireVerdict verdict, EngagementResult result) => new()
    {
        Wire = Catalogue(id), Engaged = true, Verdict = verdict, Result = result, Sentence = "",
        LargestForceSlot = Canine, LargestMomentSlot = 5, LargestMoment = 3.1,
        StrainLimit = Catalogue(id).ElasticStrainLimit, TorquePlay = double.PositiveInfinity, MaxStrainNear = Canine,
    };

    private static CatalogueWire Catalogue(string id) =>
        WireCatalogue.Default.TryFind(id, out CatalogueWire? wire) ? wire : throw new ArgumentException(id, nameof(id));

    private static SolvedCase Solved(CaseFile file, EngagementResult result)
    {
        ImmutableArray<SlotFrame> actual = [.. file.Arrangement.Slots.Select(slot => slot.Actual)];
        ImmutableArray<ClinicalLoad> loads =
            [.. result.Slots.Select((load, i) => file.Axes[i].Resolve(actual[i], load.OnTooth))];
        return new SolvedCase(file, new SolvedState(result, actual, loads), [], 1.5, null);
    }

    private static EngagementResult Result(CaseFile file, Obstacle? obstacle, double share = 1) => new()
    {
        Converged = true,
        Residual = 1e-9,
        Obstacle = obstacle,
        Slots = [.. file.Arrangement.Slots.Select((slot, i) => Load(slot, i, share))],
        LargestStrain = 0.0041,
        LargestStrainNear = Canine,
        StoredEnergy = 1,
        CentreLine = [.. file.Arrangement.Slots.Select(slot => slot.Actual.Centre)],
        Iterations = 9,
        Temperature = 36,
    };

    private static SlotLoad Load(Slot slot, int i, double share)
    {
        Vector3 down = slot.Actual.Third;
        Vector3 force = i switch
        {
            Canine => 1.2 * down,
            Canine - 1 or Canine + 1 => -0.6 * down + 0.1 * slot.Actual.Outward,
            _ => default,
        };
        Vector3 moment = i == Canine ? 2.5 * down : default;
        ContactState contact = i switch
        {
            Canine => ContactState.BothEdges, Canine - 1 or Canine + 1 => ContactState.OneEdge, _ => ContactState.None,
        };
        return new SlotLoad(slot.Label, new Wrench(share * force, share * moment, slot.Actual.Centre), contact,
            0.05 * (i - 7),
            i == Canine ? 0.3 : 0);
    }
}
