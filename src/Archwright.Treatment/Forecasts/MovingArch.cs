using System.Collections.Immutable;
using Archwright.Dentition.Teeth;
using Archwright.Mechanics.Numerics;
using Archwright.Mechanics.Slots;
using Archwright.Treatment.Crowns;
using Archwright.Treatment.Movement;
using Archwright.Treatment.Support;

namespace Archwright.Treatment.Forecasts;

/// <summary>The teeth of a forecast: what does not change while they move.</summary>
internal sealed class MovingArch
{
    private readonly CrownContact?[] _contacts;

    public MovingArch(ForecastRequest request)
    {
        Teeth = request.Teeth;
        Supports = [.. request.Teeth.Select(ToothSupport.Of)];
        Rates = [.. request.Teeth.Select(request.RateOf)];
        Applied = new Six[request.Teeth.Length];
        for (int i = 0; i < Applied.Length; i++)
        {
            if (request.AppliedLoads.TryGetValue(request.Teeth[i], out Dentition.Positions.ClinicalLoad? load))
                Applied[i] = AppliedLoad.AtResistance(request.Teeth[i], Supports[i], load);
        }

        LipsAndCheeks = new LipsAndCheeks(request, Supports);
        _contacts = new CrownContact?[Math.Max(0, request.Teeth.Length - 1)];
        ImmutableArray<Slot> slots = request.Arrangement.Slots;
        for (int i = 0; i < _contacts.Length && request.CrownsTouch; i++)
        {
            _contacts[i] = new CrownContact(
                Teeth[i], Teeth[i + 1], (slots[i].Rest, slots[i + 1].Rest), (slots[i].Actual, slots[i + 1].Actual));
        }
    }

    public int Count => Teeth.Length;

    public ImmutableArray<ToothNumber> Teeth { get; }

    public ImmutableArray<ToothSupport> Supports { get; }

    /// <summary>Factor on the law, tooth by tooth.</summary>
    public ImmutableArray<double> Rates { get; }

    /// <summary>Steady loads that go along with the teeth, at the centre of resistance.</summary>
    public Six[] Applied { get; }

    /// <summary>Lips and cheeks on the crowns.</summary>
    public LipsAndCheeks LipsAndCheeks { get; }

    /// <summary>All loads on a tooth besides the wire and the neighbours, at its centre of resistance.</summary>
    /// <param name="tooth">Which.</param>
    /// <param name="slot">Where its slot is.</param>
    public Six Besides(int tooth, in SlotFrame slot) => Applied[tooth] + LipsAndCheeks.Load(tooth, slot);

    /// <summary>The contact between a slot's tooth and the next; null where crowns are let pass.</summary>
    public ReadOnlySpan<CrownContact?> Contacts => _contacts;

    /// <summary>A load on the tooth at its centre of resistance in the axes of its slot.</summary>
    public Six AtResistance(int tooth, in SlotFrame slot, Wrench load)
    {
        Wrench there = load.MovedTo(Supports[tooth].ResistanceOf(slot));
        return new Six(InAxes(slot, there.Force), InAxes(slot, there.Moment));
    }

    /// <summary>The slot after the tooth has shifted and turned about its centre of resistance.</summary>
    /// <param name="tooth">Which.</param>
    /// <param name="slot">Before.</param>
    /// <param name="motion">In the axes of the slot.</param>
    public SlotFrame Moved(int tooth, in SlotFrame slot, Six motion) => Moved(Supports[tooth], slot, motion);

    /// <summary>The same for a tooth held so.</summary>
    public static SlotFrame Moved(ToothSupport support, in SlotFrame slot, Six motion)
    {
        Vector3 turn = InSpace(slot, motion.Angular);
        Vector3 arm = slot.Centre - support.ResistanceOf(slot);
        return slot.Moved(InSpace(slot, motion.Linear) + arm.Turned(turn) - arm, turn);
    }

    /// <summary>Components along the three axes of a slot.</summary>
    public static Vector3 InAxes(in SlotFrame slot, Vector3 v) =>
        new(Vector3.Dot(v, slot.Along), Vector3.Dot(v, slot.Outward), Vector3.Dot(v, slot.Third));

    /// <summary>Back from components along the axes of a slot.</summary>
    public static Vector3 InSpace(in SlotFrame slot, Vector3 v) =>
        v.X * slot.Along + v.Y * slot.Outward + v.Z * slot.Third;
}
