using Archwright.Dentition.Teeth;
using Archwright.Mechanics.Numerics;
using Archwright.Mechanics.Slots;

namespace Archwright.Dentition.Positions;

/// <summary>A front tooth with its planned and its present slot.</summary>
internal readonly record struct FrontSlot(ToothNumber Tooth, SlotFrame Rest, SlotFrame Actual)
{
    /// <summary>Where a point of the tooth, given in its planned place, is now.</summary>
    public Vector3 Carried(Vector3 point) => ContactPoints.Carried(point, Rest, Actual);
}

/// <summary>Finds the six front teeth of an arch.</summary>
internal static class FrontSlots
{
    /// <summary>Right canine to left canine; null when one of the six is missing, or both jaws are mixed.</summary>
    public static FrontSlot[]? Find(IReadOnlyList<ToothNumber?> teeth, IReadOnlyList<Slot> slots)
    {
        if (teeth.Count != slots.Count)
            throw new ArgumentException($"{teeth.Count} teeth were given for {slots.Count} slots.", nameof(teeth));

        var found = new List<FrontSlot>();
        for (int i = 0; i < slots.Count; i++)
        {
            if (teeth[i] is { IsAnterior: true } tooth)
                found.Add(new FrontSlot(tooth, slots[i].Rest, slots[i].Actual));
        }

        if (found.Count != 6)
            return null;

        Jaw jaw = found[0].Tooth.IsUpper ? Jaw.Upper : Jaw.Lower;
        return found.Select(one => one.Tooth).SequenceEqual(jaw.FrontTeeth()) ? [.. found] : null;
    }
}
