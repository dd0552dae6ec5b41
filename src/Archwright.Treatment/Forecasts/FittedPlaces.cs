using System.Collections.Immutable;
using Archwright.Dentition.Positions;
using Archwright.Dentition.Teeth;
using Archwright.Mechanics.Slots;
using Archwright.Treatment.Movement;

namespace Archwright.Treatment.Forecasts;

/// <summary>Where the slots may have stood when a wire was fitted that has been in place for some weeks.</summary>
internal static class FittedPlaces
{
    private const double UsualStress = 26;
    private const double MostTimes = 2;

    /// <summary>The places that the request gives, or an estimate; null for a wire fitted today.</summary>
    /// <remarks>A wire that transforms pushes less on the way back than on the way in, so it matters that the teeth
    /// came from farther off. Without their old places each tooth is taken to have come straight from where it was,
    /// at the law's speed under a usual stress, and from no farther than twice its present way.</remarks>
    public static ImmutableArray<SlotFrame>? Of(ForecastRequest request)
    {
        if (!request.FittedPlaces.IsDefaultOrEmpty)
            return request.FittedPlaces;
        if (request.WeeksInPlace == 0)
            return null;

        double way = 7 * request.WeeksInPlace * request.Rate.Median * MovementLaw.Speed(UsualStress);
        return
        [
            .. request.Arrangement.Slots.Select((slot, i) => Then(request.Teeth[i], slot, way)),
        ];
    }

    private static SlotFrame Then(ToothNumber tooth, Slot slot, double way)
    {
        ClinicalAxes axes = ClinicalAxes.For(tooth);
        ClinicalOffset now = axes.Between(slot.Rest, slot.Actual);
        double off = Math.Sqrt(now.Labial * now.Labial + now.Occlusal * now.Occlusal + now.Mesial * now.Mesial);
        if (off < 1e-9)
            return slot.Actual;

        double times = Math.Min(MostTimes, 1 + way / off);
        return axes.Displaced(slot.Rest, new ClinicalOffset(
            times * now.Labial, times * now.Occlusal, times * now.Mesial,
            times * now.Rotation, times * now.Tip, times * now.Torque));
    }
}
