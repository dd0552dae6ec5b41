using System.Collections.Immutable;
using System.Runtime.InteropServices;
using Archwright.Dentition.Outlines;
using Archwright.Dentition.Teeth;
using Archwright.Mechanics.Numerics;
using Archwright.Mechanics.Slots;
using Archwright.Practice.Advice;

namespace Archwright.Web.Drawing;

/// <summary>A part of one of the long lists of points and triangles.</summary>
/// <param name="Point">First coordinate.</param>
/// <param name="Points">Coordinates.</param>
/// <param name="Triangle">First index.</param>
/// <param name="Triangles">Indices.</param>
public sealed record SpacePart(int Point, int Points, int Triangle, int Triangles);

/// <summary>A slot [mm].</summary>
/// <param name="Width">Along the wire.</param>
/// <param name="Height">Across, toward the bite.</param>
/// <param name="Depth">Toward the tooth.</param>
public sealed record SpaceSlot(double Width, double Height, double Depth);

/// <summary>A tooth of the view in space.</summary>
/// <param name="Iso">ISO number.</param>
/// <param name="Crown">Its crown.</param>
/// <param name="Root">Its root.</param>
/// <param name="Slot">Its slot; null where there is no bracket.</param>
public sealed record SpaceTooth(string Iso, SpacePart Crown, SpacePart Root, SpaceSlot? Slot);

/// <summary>An arch for the view in space: surfaces of the teeth once, then where they stand and what acts on them with
/// each solution. Bytes hold numbers of four bytes, lowest byte first, as browsers read them.</summary>
internal sealed class ArchSpaceModel
{
    /// <summary>Numbers a tooth: centre, along, outward, third, force, moment, above its ceiling, known.</summary>
    public const int NumbersOfTooth = 20;

    private ArchSpaceModel(ImmutableArray<SpaceTooth> teeth, byte[] points, byte[] triangles) =>
        (Teeth, Points, Triangles) = (teeth, points, triangles);

    /// <summary>The teeth, from the patient's right to the left.</summary>
    public ImmutableArray<SpaceTooth> Teeth { get; }

    /// <summary>Coordinates of all surfaces, as single-precision numbers.</summary>
    public byte[] Points { get; }

    /// <summary>Indices of all surfaces, as unsigned integers.</summary>
    public byte[] Triangles { get; }

    /// <summary>The teeth of an arch, each in the frame of its slot.</summary>
    public static ArchSpaceModel Of(WireAtWork work) => Of(work.Arch.Teeth.Zip(
        work.Arch.Slots,
        (tooth, slot) => (tooth, slot.IsBonded ? new SpaceSlot(slot.Width, slot.Height, slot.Depth) : null)));

    /// <summary>Teeth with their slots, each in the frame of its slot.</summary>
    public static ArchSpaceModel Of(IEnumerable<(ToothNumber Tooth, SpaceSlot? Slot)> arch)
    {
        List<float> points = [];
        List<int> triangles = [];
        var teeth = ImmutableArray.CreateBuilder<SpaceTooth>();
        foreach ((ToothNumber tooth, SpaceSlot? slot) in arch)
        {
            ToothShape shape = ToothShape.Of(tooth) ?? Nothing;
            teeth.Add(new SpaceTooth(
                tooth.ToIso(), Append(points, triangles, shape.Crown), Append(points, triangles, shape.Root), slot));
        }

        return new ArchSpaceModel(teeth.ToImmutable(), Bytes<float>([.. points]), Bytes<int>([.. triangles]));
    }

    /// <summary>Frames and loads now.</summary>
    public static byte[] Pose(WireAtWork work)
    {
        List<float> numbers = [];
        for (int i = 0; i < work.Arch.Slots.Length; i++)
        {
            SlotFrame frame = work.Arch.Slots[i].Actual;
            ToothLoad? load = work.Loads.IsEmpty || !work.Arch.Slots[i].IsBonded ? null : work.Loads[i];
            Wrench onTooth = load is null ? default : work.Result.Slots[i].OnTooth;
            foreach (Vector3 vector in new[]
                     {
                         frame.Centre, frame.Along, frame.Outward, frame.Third, onTooth.Force, onTooth.Moment,
                     })
            {
                Add(numbers, vector);
            }

            numbers.Add(load?.Above is null ? 0 : 1);
            numbers.Add(load is null ? 0 : 1);
        }

        return Bytes<float>([.. numbers]);
    }

    /// <summary>The line of the wire; empty when it is not in.</summary>
    public static byte[] Line(WireAtWork work)
    {
        List<float> numbers = [];
        if (work.WhyNot is null)
        {
            foreach (Vector3 point in work.Result.CentreLine)
                Add(numbers, point);
        }

        return Bytes<float>([.. numbers]);
    }

    private static ToothShape Nothing { get; } = new(new Surface([], []), new Surface([], []));

    private static SpacePart Append(List<float> points, List<int> triangles, Surface surface)
    {
        var part = new SpacePart(points.Count, surface.Points.Length, triangles.Count, surface.Triangles.Length);
        points.AddRange(surface.Points);
        triangles.AddRange(surface.Triangles);
        return part;
    }

    private static void Add(List<float> numbers, Vector3 vector) =>
        numbers.AddRange([(float)vector.X, (float)vector.Y, (float)vector.Z]);

    private static byte[] Bytes<T>(ReadOnlySpan<T> numbers)
        where T : struct => MemoryMarshal.AsBytes(numbers).ToArray();
}
