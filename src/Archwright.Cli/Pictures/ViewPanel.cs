using Archwright.Dentition.Outlines;
using Archwright.Mechanics.Numerics;

namespace Archwright.Cli.Pictures;

/// <summary>A view of the arch to scale: crowns, slots, wire, forces. One for each direction of sight.</summary>
internal abstract class ViewPanel(ArchPicture picture, ForceScale forces)
{
    private const double LengthBar = 10; // mm

    protected ArchPicture Picture { get; } = picture;

    protected abstract (Vector3 Right, Vector3 Up) Directions { get; }

    protected abstract string Id { get; }

    /// <summary>Name of the view, as its heading.</summary>
    public abstract string Heading { get; }

    /// <summary>Half of a slot's side across its axis, as it looks in this view [mm].</summary>
    protected abstract Vector3 SlotAcross(PictureTooth tooth);

    /// <summary>A crown's outline in this view, in the frame of the case [mm].</summary>
    protected abstract Vector3[] Outline(PictureTooth tooth, Crown crown, bool atRest);

    /// <summary>Height kept free at the top for numbers [px].</summary>
    protected virtual double Headroom => 0;

    /// <summary>Numbers of the teeth.</summary>
    /// <returns>The paper that they take.</returns>
    protected abstract IReadOnlyList<Box> Label(Canvas canvas, Projection view, Box box);

    /// <summary>Everything that must be inside the panel, with the projection at one pixel a millimetre about the
    /// origin; forces are added in pixels.</summary>
    public Box ExtentAt(double scale)
    {
        Projection view = new(default, scale, Directions.Right, Directions.Up);
        var spots = new List<Spot>();
        foreach (PictureTooth tooth in Picture.Teeth)
        {
            Spot slot = view.At(tooth.Actual.Centre);
            spots.Add(slot);
            spots.Add(view.At(tooth.Rest.Centre));
            spots.Add(slot + ArrowOf(view, tooth));
            if (tooth.Crown is { } crown)
                spots.AddRange(Outline(tooth, crown, atRest: false).Select(view.At));
        }

        spots.AddRange(Picture.CentreLine.Select(view.At));
        double left = spots.Min(s => s.X);
        double top = spots.Min(s => s.Y);
        return new Box(left, top, spots.Max(s => s.X) - left, spots.Max(s => s.Y) - top);
    }

    /// <summary>Draws the view into a box, its content in the middle.</summary>
    public void Draw(Canvas canvas, Box box, double scale)
    {
        using IDisposable part = canvas.Part(Id, Heading);
        Box extent = ExtentAt(scale);
        Spot origin = box.Inset(0, Headroom, 0, 0).Middle - extent.Middle;
        var view = new Projection(origin, scale, Directions.Right, Directions.Up);

        foreach (PictureTooth tooth in FarthestFirst(view))
            DrawTooth(canvas, view, tooth);

        DrawWire(canvas, view);
        foreach (PictureTooth tooth in Picture.Teeth.Where(one => one.IsBonded))
            Marks.SlotRim(canvas, view, tooth, SlotAcross(tooth));
        foreach (PictureTooth tooth in Picture.Teeth)
            Marks.Arrow(canvas, view.At(tooth.Actual.Centre), view.At(tooth.Actual.Centre) + ArrowOf(view, tooth),
                tooth.IsAboveCeiling ? Colours.Heavy : Colours.Force);

        LabelForces(canvas, view, Label(canvas, view, box));
        Sides(canvas, box);
    }

    /// <summary>Draws the two scale bars, side by side, from the left.</summary>
    public void DrawScales(Canvas canvas, Spot left, double scale)
    {
        Marks.ScaleBar(canvas, left, LengthBar * scale, $"{LengthBar} mm", Colours.Text, asArrow: false);
        if (forces.Bar > 0)
        {
            string label = $"{Marks.Plain(Math.Round(Picture.Unit.Of(forces.Bar), 6))} {Picture.Unit.Symbol}";
            Marks.ScaleBar(canvas, left + new Spot(LengthBar * scale + 48, 0), forces.Bar * forces.PixelsPerNewton,
                label, Colours.Force, asArrow: true);
        }
    }

    /// <summary>How the force on a tooth is drawn [px].</summary>
    protected Spot ArrowOf(Projection view, PictureTooth tooth) =>
        view.Way(tooth.Force) * (forces.PixelsPerNewton / view.Scale);

    private IEnumerable<PictureTooth> FarthestFirst(Projection view) =>
        Picture.Teeth.OrderBy(tooth => Vector3.Dot(tooth.Rest.Centre, view.Toward));

    private void DrawTooth(Canvas canvas, Projection view, PictureTooth tooth)
    {
        if (tooth.Crown is { } crown)
        {
            if (tooth.IsDisplaced)
            {
                canvas.Shape([.. Outline(tooth, crown, atRest: true).Select(view.At)], null,
                    new Pen(Colours.Ghost, 1.3, Dash: 4));
            }

            canvas.Shape([.. Outline(tooth, crown, atRest: false).Select(view.At)], Colours.Crown,
                new Pen(Colours.CrownEdge, 1.3));
        }

        if (tooth.IsBonded)
            Marks.Slot(canvas, view, tooth, SlotAcross(tooth));
    }

    private void DrawWire(Canvas canvas, Projection view)
    {
        if (Picture.CentreLine.Length < 2)
            return;

        Spot[] line = [.. Picture.CentreLine.Select(view.At)];
        double side = this is OcclusalPanel ? Picture.WireWidth : Picture.WireThickness;
        canvas.Line(line, new Pen(Colours.Wire, Math.Max(1.6, side * view.Scale)));
    }

    // Figures at the tips of the longest arrows, the longest first. Each tries a few places round its tip; where all
    // are taken it is left out (the bars below show them all).
    private void LabelForces(Canvas canvas, Projection view, IReadOnlyList<Box> numbers)
    {
        const double Size = 14;
        var taken = new List<Box>(numbers);
        double longest = Picture.Teeth.Max(tooth => ArrowOf(view, tooth).Length);
        foreach (PictureTooth tooth in Picture.Teeth.OrderByDescending(tooth => ArrowOf(view, tooth).Length))
        {
            Spot arrow = ArrowOf(view, tooth);
            if (arrow.Length < Math.Max(14, longest * 0.25))
                break;

            // What the arrow shows: the part of the force that lies in this view.
            string text = Picture.Unit.Figure(arrow.Length / forces.PixelsPerNewton)
                + (tooth.IsAboveCeiling ? " !" : "");
            double width = Typeface.WidthOf(text, Size, bold: true) + 6;
            Spot tip = view.At(tooth.Actual.Centre) + arrow;
            if (FreePlace(tip, arrow * (1 / arrow.Length), width, Size + 4, taken) is not { } place)
                continue;

            taken.Add(place);
            canvas.Text(new Spot(place.Middle.X, place.Bottom - 5), text, new TextStyle(
                Size, tooth.IsAboveCeiling ? Colours.Heavy : Colours.Force, Bold: true, Anchor.Middle, Halo: true));
        }
    }

    private static Box? FreePlace(Spot tip, Spot along, double width, double height, List<Box> taken)
    {
        foreach (double distance in new double[] { 4, 16, 28 })
        {
            foreach (double degrees in new double[] { 0, 35, -35, 70, -70, 105, -105 })
            {
                (double sin, double cos) = Math.SinCos(degrees * Math.PI / 180);
                var way = new Spot(along.X * cos - along.Y * sin, along.X * sin + along.Y * cos);
                Spot middle = tip + new Spot(way.X * (distance + width / 2), way.Y * (distance + height / 2));
                var place = new Box(middle.X - width / 2, middle.Y - height / 2, width, height);
                if (!taken.Exists(place.Overlaps))
                    return place;
            }
        }

        return null;
    }

    private void Sides(Canvas canvas, Box box)
    {
        if (Picture.Side == PictureSide.Bench)
            return;

        var style = new TextStyle(13, Colours.Quiet);
        canvas.Text(new Spot(box.Left + 4, box.Bottom - 6), "patient’s right", style);
        canvas.Text(new Spot(box.Right - 4, box.Bottom - 6), "patient’s left", style with { Anchor = Anchor.End });
    }
}
