using Archwright.Mechanics.Numerics;
using Archwright.Mechanics.Slots;
using Archwright.Practice.Advice;
using Archwright.Practice.Leaflets;
using Archwright.Practice.Values;

namespace Archwright.Web.Leaflets;

/// <summary>Takes down where teeth and wire stand in space, for the patient's page. Figures of a picture: rounded, so
/// that an old phone on a slow line gets a small file.</summary>
internal static class SpaceMaker
{
    // Points of the wire that a picture needs at most.
    private const int MostPoints = 90;
    private const int DecimalsOfMm = 2;
    private const int DecimalsOfDirection = 4;

    /// <summary>The weeks of an arch.</summary>
    /// <param name="weeks">Week and engaged wire, from today.</param>
    public static SpacePictures Of(IReadOnlyList<(int Week, WireAtWork Work)> weeks)
    {
        WireAtWork first = weeks[0].Work;
        return new SpacePictures(
            Listing<string>.Of(first.Arch.Teeth.Select(tooth => tooth.ToIso())),
            Listing<double>.Of(first.Arch.Slots.SelectMany(slot =>
                slot.IsBonded ? new[] { slot.Width, slot.Height, slot.Depth } : [0, 0, 0])),
            first.Arch.Wire.Section.Thickness / 2,
            Listing<SpaceWeek>.Of(weeks.Select(one => new SpaceWeek(
                one.Week,
                Listing<double>.Of(one.Work.Arch.Slots.SelectMany(slot => Frame(slot.Actual))),
                Listing<double>.Of(Line(one.Work))))));
    }

    private static IEnumerable<double> Frame(SlotFrame frame) =>
    [
        .. Numbers(frame.Centre, DecimalsOfMm), .. Numbers(frame.Along, DecimalsOfDirection),
        .. Numbers(frame.Outward, DecimalsOfDirection), .. Numbers(frame.Third, DecimalsOfDirection),
    ];

    private static IEnumerable<double> Line(WireAtWork work)
    {
        if (work.WhyNot is not null)
            return [];

        Vector3[] points = [.. work.Result.CentreLine];
        int every = Math.Max(1, (points.Length + MostPoints - 1) / MostPoints);
        return points.Where((_, i) => i % every == 0 || i == points.Length - 1)
            .SelectMany(point => Numbers(point, DecimalsOfMm));
    }

    private static double[] Numbers(Vector3 vector, int decimals) =>
        [Math.Round(vector.X, decimals), Math.Round(vector.Y, decimals), Math.Round(vector.Z, decimals)];
}
