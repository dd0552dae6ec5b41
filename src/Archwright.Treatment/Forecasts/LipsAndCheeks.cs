using System.Collections.Immutable;
using Archwright.Mechanics.Numerics;
using Archwright.Mechanics.Slots;
using Archwright.Treatment.Movement;
using Archwright.Treatment.Support;

namespace Archwright.Treatment.Forecasts;

/// <summary>Lips and cheeks on the teeth of a forecast.</summary>
/// <remarks>How far a crown stands out is read at its slot, along the outward direction that the slot had in balance;
/// the push acts there along that direction. So it has an energy, and its tangent is one symmetric row.</remarks>
internal sealed class LipsAndCheeks
{
    private readonly double _factor;
    private readonly ImmutableArray<ToothSupport> _supports;
    private readonly ImmutableArray<LipPressure> _pressures;
    private readonly ImmutableArray<SlotFrame> _balanced;

    public LipsAndCheeks(ForecastRequest request, ImmutableArray<ToothSupport> supports)
    {
        _factor = request.SoftTissue.Factor;
        _supports = supports;
        _pressures = [.. request.Teeth.Select(LipPressure.Of)];
        _balanced = request.SoftTissue.BalancedOn(request.Arrangement).Balanced;
    }

    /// <summary>Push on the crown toward lip or cheek [N]; negative inward.</summary>
    public double Outward(int tooth, in SlotFrame place) =>
        _factor > 0 ? -_factor * _pressures[tooth].More(Standing(tooth, place)) : 0;

    /// <summary>The same at the centre of resistance, in the axes of the slot.</summary>
    public Six Load(int tooth, in SlotFrame place) => Row(tooth, place) * Outward(tooth, place);

    /// <summary>Rise of the inward push as the crown goes out [N/mm].</summary>
    public double Stiffness(int tooth, in SlotFrame place) =>
        _factor > 0 ? _factor * _pressures[tooth].Stiffness(Standing(tooth, place)) : 0;

    /// <summary>A unit push outward at the centre of resistance.</summary>
    public Six Row(int tooth, in SlotFrame place)
    {
        Vector3 outward = _balanced[tooth].Outward;
        Vector3 arm = place.Centre - _supports[tooth].ResistanceOf(place);
        return new Six(MovingArch.InAxes(place, outward), MovingArch.InAxes(place, Vector3.Cross(arm, outward)));
    }

    private double Standing(int tooth, in SlotFrame place) =>
        Vector3.Dot(place.Centre - _balanced[tooth].Centre, _balanced[tooth].Outward);
}
