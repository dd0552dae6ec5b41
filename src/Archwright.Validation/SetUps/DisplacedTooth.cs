using System.Collections.Concurrent;
using System.Collections.Immutable;
using Archwright.Dentition.Positions;
using Archwright.Dentition.Prescriptions;
using Archwright.Dentition.Tables;
using Archwright.Dentition.Teeth;
using Archwright.Dentition.Ties;
using Archwright.Dentition.Units;
using Archwright.Mechanics.Engagement;
using Archwright.Mechanics.Slots;
using Archwright.Validation.Record;

namespace Archwright.Validation.SetUps;

/// <summary>One tooth off its place in a full upper arch of average teeth, as the rigs with a whole arch measure it.
/// </summary>
/// <remarks>Keys: <c>wire</c>, <c>tooth</c> (ISO), <c>occlusal</c> and <c>labial</c> offset [mm], <c>rotation</c>
/// [degrees], <c>slot</c> in thousandths of an inch, <c>temperature</c> [°C], <c>tie</c> = closed (when left out),
/// elastic, steel or spring, with the usual forces of our case files; <c>of</c> = force (its size), intrusive or
/// rotation. Distances between brackets are ours, since the abstracts do not give theirs. No friction.</remarks>
internal static class DisplacedTooth
{
    private static readonly ConcurrentDictionary<string, double> Done = new(StringComparer.Ordinal);

    /// <summary>Load on the tooth on engagement [N or N·mm].</summary>
    public static double Force(SetUp given) => Done.GetOrAdd(given.ToString(), _ => Engaged(given));

    /// <summary>The same over that of the other set-up, where <c>other_</c> stands before what differs.</summary>
    public static double ForceRatio(SetUp given) => Force(given) / Force(given.Other());

    private static Tie TieOf(SetUp given)
    {
        TieKind kind = (given.Has("tie") ? given.Text("tie") : "closed") switch
        {
            "closed" => TieKind.Closed,
            "elastic" => TieKind.Elastic,
            "steel" => TieKind.Steel,
            "spring" => TieKind.Spring,
            string other => throw new TableException($"No rig has the tie '{other}'."),
        };
        TieDefault usual = TieDefaults.Of(kind);
        return kind == TieKind.Closed ? Tie.Closed() : Tie.Seating(kind, usual.SeatingForce, usual.Stiffness);
    }

    private static double Engaged(SetUp given)
    {
        ToothNumber tooth = ToothNumber.FromIso((int)given.Number("tooth"));
        ArchSetup setup = ArchBuilder.Build(new ArchRequest
        {
            Jaw = Jaw.Upper,
            Slot = given.Number("slot") == 18 ? SlotSize.In018 : SlotSize.In022,
            WireId = given.Wire().Id,
            Tie = TieOf(given),
            Positions = ImmutableDictionary<ToothNumber, ClinicalOffset>.Empty.Add(tooth, new ClinicalOffset
            {
                Occlusal = given.Number("occlusal", 0),
                Labial = given.Number("labial", 0),
                Rotation = Angle.FromDegrees(given.Number("rotation", 0)),
            }),
            Temperature = given.Number("temperature", 36),
        });
        EngagementResult result = Bench.Checked(new Engager(
            setup.Arrangement with { Wire = given.Wire().WholeWire }).Engage());
        int at = setup.Teeth.IndexOf(tooth);
        ClinicalLoad load = ClinicalAxes.For(tooth).Resolve(setup.Slots[at].Actual, result.Slots[at].OnTooth);
        return given.Text("of") switch
        {
            "force" => result.Slots[at].OnTooth.Force.Length,
            "intrusive" => -load.OcclusalForce,
            "rotation" => Math.Abs(load.RotationMoment),
            string other => throw new TableException($"A displaced tooth has no '{other}'."),
        };
    }
}
