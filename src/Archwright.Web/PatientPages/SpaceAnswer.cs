using Archwright.Dentition.Teeth;
using Archwright.Practice.Leaflets;
using Archwright.Web.Drawing;

namespace Archwright.Web.PatientPages;

/// <summary>What the patient's page is sent to show the arch in space: shapes of teeth after average ones, and where
/// they stand week by week. It knows nobody.</summary>
/// <param name="Jaw">1 for an upper arch, −1 for a lower one.</param>
/// <param name="Teeth">The teeth, and their parts of the long lists.</param>
/// <param name="Points">Coordinates of all surfaces: numbers of four bytes.</param>
/// <param name="Triangles">Indices of all surfaces: numbers of four bytes.</param>
/// <param name="Radius">Of the wire [mm].</param>
/// <param name="Weeks">Where everything stands.</param>
internal sealed record SpaceAnswer(
    int Jaw, IReadOnlyList<SpaceTooth> Teeth, byte[] Points, byte[] Triangles, double Radius,
    IReadOnlyList<SpaceAnswer.Week> Weeks)
{
    /// <summary>A week.</summary>
    /// <param name="Frames">Twelve numbers a tooth.</param>
    /// <param name="Line">Three numbers a point of the wire.</param>
    internal sealed record Week(IReadOnlyList<double> Frames, IReadOnlyList<double> Line);

    /// <summary>The answer for an arch as it was released.</summary>
    public static SpaceAnswer Of(bool isUpper, SpacePictures space)
    {
        ArchSpaceModel model = ArchSpaceModel.Of(space.Teeth.Select((iso, i) => (
            ToothNumber.TryParse(iso, out ToothNumber tooth) ? tooth : throw new ArgumentException(iso, nameof(space)),
            space.Slots[3 * i] > 0
                ? new SpaceSlot(space.Slots[3 * i], space.Slots[3 * i + 1], space.Slots[3 * i + 2])
                : null)));
        return new SpaceAnswer(
            isUpper ? 1 : -1, model.Teeth, model.Points, model.Triangles, space.WireRadius,
            [.. space.Weeks.Select(week => new Week(week.Frames, week.Line))]);
    }
}
