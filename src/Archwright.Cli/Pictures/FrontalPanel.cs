using Archwright.Dentition.Outlines;
using Archwright.Mechanics.Numerics;

namespace Archwright.Cli.Pictures;

/// <summary>The face.</summary>
internal sealed class FrontalPanel(ArchPicture picture, ForceScale forces) : ViewPanel(picture, forces)
{
    public override string Heading => "From the front";

    protected override string Id => "frontal-view";

    protected override double Headroom => 24;

    protected override (Vector3 Right, Vector3 Up) Directions => Projection.Frontal(Picture);

    protected override Vector3 SlotAcross(PictureTooth tooth) => tooth.SlotHeight / 2 * tooth.Actual.Third;

    protected override Vector3[] Outline(PictureTooth tooth, Crown crown, bool atRest)
    {
        var frame = atRest ? tooth.Rest : tooth.Actual;
        double jaw = Picture.Side == PictureSide.Lower ? -1 : 1;
        return CrownShape.FromFront(crown, frame, jaw * frame.Third);
    }

    // In a row above the view, spread so that none covers its neighbour, each tied to its slot by a hair line.
    protected override IReadOnlyList<Box> Label(Canvas canvas, Projection view, Box box)
    {
        // Another typeface may be wider than ours by a fifth.
        double gap = 8 + 1.2 * Picture.Teeth.Max(tooth => Typeface.WidthOf(tooth.Label, 14, bold: true));
        double[] at = [.. Picture.Teeth.Select(tooth => view.At(tooth.Actual.Centre).X)];
        Spread(at, gap, box.Left + gap / 2, box.Right - gap / 2);
        double row = box.Top + 14;
        for (int i = 0; i < at.Length; i++)
        {
            Spot slot = view.At(Picture.Teeth[i].Actual.Centre);
            canvas.Line([new(at[i], row + 6), new(slot.X, slot.Y - 4)], new Pen(Colours.Hair, 1));
            canvas.Text(new Spot(at[i], row), Picture.Teeth[i].Label,
                new TextStyle(14, Colours.Text, Bold: true, Anchor.Middle));
        }

        return [new Box(box.Left, box.Top, box.Width, 22)];
    }

    /// <summary>Moves numbers that ascend apart to a least distance, as little as need be, inside limits.</summary>
    internal static void Spread(double[] at, double gap, double low, double high)
    {
        if (at.Length == 0)
            return;

        // Groups that would overlap share their mean; merging goes on until no two groups overlap.
        var groups = new List<(double Sum, int Count)>();
        foreach (double x in at)
        {
            groups.Add((x, 1));
            while (groups.Count > 1 && Overlap(groups[^2], groups[^1], gap))
            {
                (double Sum, int Count) merged = (groups[^2].Sum + groups[^1].Sum, groups[^2].Count + groups[^1].Count);
                groups.RemoveRange(groups.Count - 2, 2);
                groups.Add(merged);
            }
        }

        int i = 0;
        foreach ((double sum, int count) in groups)
        {
            double first = sum / count - gap * (count - 1) / 2;
            for (int k = 0; k < count; k++)
                at[i++] = first + k * gap;
        }

        for (int k = 0; k < at.Length; k++)
            at[k] = Math.Max(at[k], low + k * gap);
        for (int k = at.Length - 1; k >= 0; k--)
            at[k] = Math.Min(at[k], high - (at.Length - 1 - k) * gap);
    }

    private static bool Overlap((double Sum, int Count) a, (double Sum, int Count) b, double gap) =>
        b.Sum / b.Count - a.Sum / a.Count < gap * (a.Count + b.Count) / 2;
}
