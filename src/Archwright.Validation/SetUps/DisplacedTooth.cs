using System.Collections.Concurrent;
using System.Collections.Immutable;
using Archwright.Dentition.Positions;
using Archwright.Dentition.Prescriptions;
using Archwright.Dentition.Tables;
using Archwright.Dentition.Teeth;
using Archwright.Mechanics.Engagement;
using Archwright.Validation.Record;

namespace Archwright.Validation.SetUps;

/// <summary>One tooth off its place in a full upper arch of average teeth, as the rigs with a whole arch measure it.
/// </summary>
/// <remarks>Keys: <c>wire</c>, <c>tooth</c> (ISO), <c>occlusal</c> and <c>labial</c> offset [mm], <c>slot</c> in
/// thousandths of an inch, <c>temperature</c> [°C]; <c>of</c> = force (its size) or intrusive. Distances between
/// brackets are ours, since the abstracts do not give theirs. No friction.</remarks>
internal static class DisplacedTooth
{
    private static readonly ConcurrentDictionary<string, double> Done = new(StringComparer.Ordinal);

    /// <summary>Force on the tooth on engagement [N].</summary>
    public static double Force(SetUp given) => Done.GetOrAdd(given.ToString(), _ => Engaged(given));

    /// <summary>Force of <c>wire</c> over that of <c>other</c>.</summary>
    public static double ForceRatio(SetUp given)
    {
        string set = given.ToString();
        string other = set.Replace(
            $"wire={given.Text("wire")}", $"wire={given.Text("other")}", StringComparison.Ordinal);
        return Force(given) / Force(new SetUp("ratio", other));
    }

    private static double Engaged(SetUp given)
    {
        ToothNumber tooth = ToothNumber.FromIso((int)given.Number("tooth"));
        ArchSetup setup = ArchBuilder.Build(new ArchRequest
        {
            Jaw = Jaw.Upper,
            Slot = given.Number("slot") == 18 ? SlotSize.In018 : SlotSize.In022,
            WireId = given.Wire().Id,
            Positions = ImmutableDictionary<ToothNumber, ClinicalOffset>.Empty.Add(tooth, new ClinicalOffset
            {
                Occlusal = given.Number("occlusal", 0),
                Labial = given.Number("labial", 0),
            }),
            Temperature = given.Number("temperature", 36),
        });
        EngagementResult result = Bench.Checked(new Engager(
            setup.Arrangement with { Wire = RealWires.Of(given.Wire()) }).Engage());
        int at = setup.Teeth.IndexOf(tooth);
        ClinicalLoad load = ClinicalAxes.For(tooth).Resolve(setup.Slots[at].Actual, result.Slots[at].OnTooth);
        return given.Text("of") switch
        {
            "force" => result.Slots[at].OnTooth.Force.Length,
            "intrusive" => -load.OcclusalForce,
            string other => throw new TableException($"A displaced tooth has no '{other}'."),
        };
    }
}
