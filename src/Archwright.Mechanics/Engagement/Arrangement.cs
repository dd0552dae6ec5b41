using System.Collections.Immutable;
using Archwright.Mechanics.Rods;
using Archwright.Mechanics.Slots;

namespace Archwright.Mechanics.Engagement;

/// <summary>A wire and the slots it is to be engaged in.</summary>
public sealed record Arrangement
{
    /// <summary>Most slots of one arrangement: a full arch.</summary>
    public const int MostSlots = 16;

    /// <summary>Section and alloy.</summary>
    public required Wire Wire { get; init; }

    /// <summary>Shape before engagement.</summary>
    public RestShape Rest { get; init; } = new RestShape.ThroughRestSlots();

    /// <summary>Whether the ends slide.</summary>
    public WireEnds Ends { get; init; }

    /// <summary>In order along the arch from the patient's right to the left; 1 to <see cref="MostSlots"/>.</summary>
    public required ImmutableArray<Slot> Slots { get; init; }

    /// <summary>Temperature of the wire [°C].</summary>
    public double Temperature { get; init; } = 36;

    /// <summary>The same with one coefficient of friction in every slot; see <see cref="Slot.Friction"/>.</summary>
    /// <param name="coefficient">0 for none.</param>
    public Arrangement WithFriction(double coefficient) =>
        this with { Slots = [.. Slots.Select(slot => slot with { Friction = coefficient })] };

    /// <summary>The same with the slots where they are told to stand.</summary>
    /// <param name="places">One a slot, in order.</param>
    public Arrangement At(IReadOnlyList<SlotFrame> places) =>
        this with { Slots = [.. Slots.Select((slot, i) => slot with { Actual = places[i] })] };
}

/// <summary>A step after engagement, history kept.</summary>
/// <param name="Temperature">New temperature [°C]; null to keep it.</param>
/// <param name="Moves">Slots that move: index and new actual frame; the others stay.</param>
public sealed record Step(double? Temperature, ImmutableArray<(int Slot, SlotFrame Actual)> Moves);
