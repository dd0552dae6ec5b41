using Archwright.Dentition.Outlines;
using Archwright.Mechanics.Numerics;

namespace Archwright.Cli.Pictures;

/// <summary>The biting surfaces.</summary>
internal sealed class OcclusalPanel(ArchPicture picture, ForceScale forces) : ViewPanel(picture, forces)
{
    // Places of a number, as shares of the crown's depth behind its labial face.
    private static readonly double[] NumberDepths = [0.55, 0.78, 0.3];

    public override string Heading => Picture.Side switch
    {
        PictureSide.Upper => "Upper arch from below",
        PictureSide.Lower => "Lower arch from above",
        _ => "From above: labial is up",
    };

    protected override string Id => "occlusal-view";

    protected override (Vector3 Right, Vector3 Up) Directions => Projection.Occlusal(Picture);

    protected override Vector3 SlotAcross(PictureTooth tooth) => tooth.SlotDepth / 2 * tooth.Actual.Outward;

    protected override Vector3[] Outline(PictureTooth tooth, Crown crown, bool atRest) =>
        CrownShape.FromBelow(crown, atRest ? tooth.Rest : tooth.Actual);

    protected override IReadOnlyList<Box> Label(Canvas canvas, Projection view, Box box)
    {
        var taken = new List<Box>();
        foreach (PictureTooth tooth in Picture.Teeth)
        {
            Spot spot = NumberPlace(view, tooth);
            canvas.Text(spot + new Spot(0, 5), tooth.Label,
                new TextStyle(14, Colours.Text, Bold: true, Anchor.Middle, Halo: tooth.Crown is null));
            double width = Typeface.WidthOf(tooth.Label, 14, bold: true) + 4;
            taken.Add(new Box(spot.X - width / 2, spot.Y - 9, width, 18));
        }

        return taken;
    }

    // In the middle of the crown, or where an arrow crosses it, nearer to its lingual or labial face.
    private Spot NumberPlace(Projection view, PictureTooth tooth)
    {
        if (tooth.Crown is not { } crown)
            return view.At(tooth.Actual.Centre - 2.2 * tooth.Actual.Outward);

        Spot[] places =
        [
            .. NumberDepths.Select(share =>
                view.At(tooth.Actual.Centre - (crown.SlotToFace + crown.Depth * share) * tooth.Actual.Outward)),
        ];
        foreach (Spot place in places)
        {
            if (!Picture.Teeth.Any(other => Crosses(view, other, new Box(place.X - 10, place.Y - 8, 20, 16))))
                return place;
        }

        return places[0];
    }

    private bool Crosses(Projection view, PictureTooth tooth, Box box)
    {
        Spot start = view.At(tooth.Actual.Centre);
        Spot arrow = ArrowOf(view, tooth);
        int steps = (int)(arrow.Length / 2);
        for (int i = 0; i <= steps; i++)
        {
            Spot at = start + arrow * (i / Math.Max(1.0, steps));
            if (box.Overlaps(new Box(at.X - 3, at.Y - 3, 6, 6)))
                return arrow.Length > 2;
        }

        return false;
    }
}
