using System.Collections.Immutable;
using Archwright.Dentition.Outlines;
using Archwright.Dentition.Teeth;
using Archwright.Mechanics.Numerics;
using Archwright.Mechanics.Slots;

namespace Archwright.Web.Drawing;

/// <summary>How points of the patient come onto a picture.</summary>
internal abstract class Plane
{
    /// <summary>A point that belongs to the tooth of a slot.</summary>
    public abstract ScenePoint At(int slot, Vector3 point);

    /// <summary>A point of the wire.</summary>
    public abstract ScenePoint AtWire(Vector3 point);

    /// <summary>Unit vector from the picture toward who looks at it.</summary>
    public abstract Vector3 TowardViewer(int slot, SlotFrame frame);

    /// <summary>A point of a place without a slot.</summary>
    public abstract ScenePoint AtPlace(SlotFrame rest, Vector3 point);

    /// <summary>Where the number of a tooth stands.</summary>
    public abstract ScenePoint LabelAt(SlotFrame rest, ToothNumber tooth, Crown? crown);

    /// <summary>Where a word on a tooth stands, beside its crown on the other side than its number.</summary>
    public abstract ScenePoint WordAt(SlotFrame rest, ToothNumber tooth, Crown? crown);
}

/// <summary>On the biting surfaces: the upper arch from below, front teeth at the top; the lower arch from above, front
/// teeth at the bottom. The patient's right is on the left in both, as on a photograph of the open mouth.</summary>
internal sealed class OcclusalPlane(Jaw jaw) : Plane
{
    private readonly int forward = jaw == Jaw.Upper ? -1 : 1;

    public override ScenePoint At(int slot, Vector3 point) => AtWire(point);

    public override ScenePoint AtWire(Vector3 point) => new(-point.X, forward * point.Y);

    public override Vector3 TowardViewer(int slot, SlotFrame frame) => new(0, 0, forward);

    public override ScenePoint AtPlace(SlotFrame rest, Vector3 point) => AtWire(point);

    public override ScenePoint LabelAt(SlotFrame rest, ToothNumber tooth, Crown? crown) =>
        AtWire(rest.Centre - ((crown?.SlotToFace ?? 1) + (crown?.Depth ?? 8) + 2.6) * rest.Outward);

    public override ScenePoint WordAt(SlotFrame rest, ToothNumber tooth, Crown? crown) =>
        AtWire(rest.Centre + 2.6 * rest.Outward);
}

/// <summary>From the lips, unrolled along the arch: each tooth is seen straight from its own front.</summary>
internal sealed class FrontalPlane : Plane
{
    private readonly ImmutableArray<Slot> slots;
    private readonly double[] places;

    public FrontalPlane(ImmutableArray<Slot> slots)
    {
        this.slots = slots;
        places = new double[slots.Length];
        for (int i = 1; i < slots.Length; i++)
            places[i] = places[i - 1] + (slots[i].Rest.Centre - slots[i - 1].Rest.Centre).Length;
        double middle = places[^1] / 2;
        for (int i = 0; i < places.Length; i++)
            places[i] -= middle;
    }

    public override ScenePoint At(int slot, Vector3 point)
    {
        SlotFrame rest = slots[slot].Rest;
        return new ScenePoint(places[slot] + Vector3.Dot(point - rest.Centre, rest.Along), -point.Z);
    }

    // Between two slots the place along the arch goes over from the one to the other.
    public override ScenePoint AtWire(Vector3 point)
    {
        int nearest = 0;
        for (int i = 1; i < slots.Length; i++)
        {
            if (Square(point - slots[i].Rest.Centre) < Square(point - slots[nearest].Rest.Centre))
                nearest = i;
        }

        double along = Vector3.Dot(point - slots[nearest].Rest.Centre, slots[nearest].Rest.Along);
        int other = along > 0 ? Math.Min(nearest + 1, slots.Length - 1) : Math.Max(nearest - 1, 0);
        if (other == nearest)
            return At(nearest, point);

        double fromNearest = (point - slots[nearest].Rest.Centre).Length;
        double fromOther = (point - slots[other].Rest.Centre).Length;
        double share = fromNearest / (fromNearest + fromOther);
        return new ScenePoint(places[nearest] + share * (places[other] - places[nearest]), -point.Z);
    }

    public override Vector3 TowardViewer(int slot, SlotFrame frame) => slots[slot].Rest.Outward;

    public override ScenePoint AtPlace(SlotFrame rest, Vector3 point) => new(
        AtWire(rest.Centre).X + Vector3.Dot(point - rest.Centre, rest.Along), -point.Z);

    public override ScenePoint LabelAt(SlotFrame rest, ToothNumber tooth, Crown? crown)
    {
        // Beyond the neck: above the upper teeth, below the lower ones.
        double toNeck = crown is null ? 6 : crown.Height - crown.SlotToEdge + 2.8;
        return new ScenePoint(AtWire(rest.Centre).X, tooth.IsUpper ? -toNeck : toNeck);
    }

    public override ScenePoint WordAt(SlotFrame rest, ToothNumber tooth, Crown? crown)
    {
        double toEdge = (crown?.SlotToEdge ?? 4) + 1.8;
        return new ScenePoint(AtWire(rest.Centre).X, tooth.IsUpper ? toEdge : -toEdge);
    }

    private static double Square(Vector3 v) => Vector3.Dot(v, v);
}
