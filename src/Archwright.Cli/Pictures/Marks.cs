using System.Globalization;
using Archwright.Mechanics.Numerics;

namespace Archwright.Cli.Pictures;

/// <summary>Small signs that both views use: arrows, slots, scale bars.</summary>
internal static class Marks
{
    private const double HeadLength = 11;
    private const double HeadWidth = 9;

    /// <summary>Width of a force arrow's shaft [px].</summary>
    public const double ShaftWidth = 3;

    /// <summary>An arrow from one spot to another; nothing below two pixels.</summary>
    public static void Arrow(Canvas canvas, Spot from, Spot to, Ink ink)
    {
        Spot way = to - from;
        double length = way.Length;
        if (length < 2)
            return;

        Spot along = way * (1 / length);
        var across = new Spot(-along.Y, along.X);
        double head = Math.Min(HeadLength, length * 0.7);
        double half = HeadWidth / 2 * (head / HeadLength);
        Spot neck = to - along * head;
        if (length > head)
        {
            canvas.Line([from, neck], new Pen(Colours.Paper, ShaftWidth + 2.5));
            canvas.Line([from, neck], new Pen(ink, ShaftWidth));
        }

        canvas.Shape([to, neck + across * half, neck - across * half], ink, new Pen(ink, 1));
    }

    /// <summary>The channel of a slot as a parallelogram.</summary>
    /// <param name="canvas">Paper.</param>
    /// <param name="view">Projection.</param>
    /// <param name="tooth">Whose slot.</param>
    /// <param name="across">Half of its other side, as a vector of the case [mm].</param>
    public static void Slot(Canvas canvas, Projection view, PictureTooth tooth, Vector3 across) =>
        canvas.Shape(SlotCorners(view, tooth, across), tooth.IsTied ? Colours.SlotInside : Colours.Paper, null);

    /// <summary>Its rim, drawn over the wire.</summary>
    /// <param name="canvas">Paper.</param>
    /// <param name="view">Projection.</param>
    /// <param name="tooth">Whose slot.</param>
    /// <param name="across">Half of its other side, as a vector of the case [mm].</param>
    public static void SlotRim(Canvas canvas, Projection view, PictureTooth tooth, Vector3 across) =>
        canvas.Shape(SlotCorners(view, tooth, across), null, new Pen(Colours.Slot, 1.4));

    private static Spot[] SlotCorners(Projection view, PictureTooth tooth, Vector3 across)
    {
        Vector3 along = tooth.SlotWidth / 2 * tooth.Actual.Along;
        Vector3 centre = tooth.Actual.Centre;
        return
        [
            view.At(centre - along - across), view.At(centre + along - across),
            view.At(centre + along + across), view.At(centre - along + across),
        ];
    }

    /// <summary>A bar of known length with its figure above it.</summary>
    /// <param name="canvas">Paper.</param>
    /// <param name="left">Its left end.</param>
    /// <param name="length">[px]</param>
    /// <param name="label">What it stands for.</param>
    /// <param name="ink">Colour.</param>
    /// <param name="asArrow">Drawn as an arrow, as forces are.</param>
    public static void ScaleBar(Canvas canvas, Spot left, double length, string label, Ink ink, bool asArrow)
    {
        Spot right = left + new Spot(length, 0);
        if (asArrow)
        {
            Arrow(canvas, left, right, ink);
        }
        else
        {
            canvas.Line([left, right], new Pen(ink, 2));
            canvas.Line([left - new Spot(0, 4), left + new Spot(0, 4)], new Pen(ink, 2));
            canvas.Line([right - new Spot(0, 4), right + new Spot(0, 4)], new Pen(ink, 2));
        }

        canvas.Text(
            left + new Spot(length / 2, -9), label, new TextStyle(14, Colours.Text, Anchor: Anchor.Middle, Halo: true));
    }

    /// <summary>A round figure without needless digits.</summary>
    public static string Plain(double figure) =>
        figure.ToString("0.###", CultureInfo.InvariantCulture).Replace('-', '−');
}
