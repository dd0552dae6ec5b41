using System.Collections.Immutable;
using System.Text;
using Archwright.Dentition.Outlines;
using Archwright.Dentition.Positions;
using Archwright.Dentition.Teeth;
using Archwright.Mechanics.Numerics;
using Archwright.Mechanics.Slots;
using Archwright.Practice.Advice;
using Archwright.Practice.Values;
using Archwright.Web.Words;

namespace Archwright.Web.Drawing;

/// <summary>Draws an arch and what a wire does there, as paths.</summary>
public static class ArchDrawing
{
    private const double Margin = 7;

    // A force of 1 N is drawn 6 mm long; nothing is drawn longer than 16 mm (its figure stands beside it).
    private const double MmOfNewton = 6;
    private const double LongestArrow = 16;
    private const double LeastForce = 0.03;

    // A moment under 1 N·mm is not drawn: the arc would say more than the figure.
    private const double LeastMoment = 1;

    // Room of a figure such as "1304 cN ▲" at its size on the picture [mm].
    private const double HalfFigure = 6.5;
    private const double FigureHeight = 1.6;

    /// <summary>The picture of a wire at work.</summary>
    /// <param name="work">The arch and its wire.</param>
    /// <param name="view">Which way it is looked at.</param>
    /// <param name="bare">What was noted of places without a bracket: an absent tooth is drawn where it would be. Null
    /// leaves its place empty.</param>
    public static ArchScene Draw(WireAtWork work, ArchView view, ToothMap<BareTooth>? bare = null)
    {
        Plane plane = view == ArchView.Occlusal
            ? new OcclusalPlane(work.Arch.Jaw)
            : new FrontalPlane(work.Arch.Slots);
        ImmutableArray<SceneTooth> teeth =
        [
            .. work.Arch.Teeth.Select((tooth, i) => Tooth(work, plane, tooth, i))
                .Concat(Gaps(work.Arch.Jaw, plane, bare))
                .OrderBy(tooth => tooth.Tooth.IsRight ? -tooth.Tooth.Position : tooth.Tooth.Position),
        ];
        (double left, double top, double right, double bottom) = Bounds(work.Arch, plane, bare);
        string wire = work.WhyNot is null
            ? Path(work.Result.CentreLine.Select(plane.AtWire), closed: false)
            : "";
        return new ArchScene(
            view, left, top, right - left, bottom - top,
            [
                .. teeth.Select(tooth => tooth with
                {
                    // The frame follows the teeth alone, so that it stands still under a finger: a long arrow's figure
                    // is drawn in.
                    ForceLabel = new ScenePoint(
                        Math.Clamp(tooth.ForceLabel.X, left + HalfFigure, right - HalfFigure),
                        Math.Clamp(tooth.ForceLabel.Y, top + FigureHeight, bottom - FigureHeight)),
                }),
            ],
            wire);
    }

    private static SceneTooth Tooth(WireAtWork work, Plane plane, ToothNumber tooth, int slot)
    {
        Slot one = work.Arch.Slots[slot];
        bool isPlanned = work.Arch.Offsets[slot] == ClinicalOffset.Zero;
        ScenePoint centre = plane.At(slot, one.Actual.Centre);
        ToothLoad? load = work.Loads.IsEmpty || !one.IsBonded ? null : work.Loads[slot];
        Wrench onTooth = load is null ? default : work.Result.Slots[slot].OnTooth;
        ScenePoint tip = Tip(plane, slot, one.Actual.Centre, onTooth.Force);
        bool isDrawn = load is not null && Distance(centre, tip) > 6 * LeastForce;
        return new SceneTooth
        {
            Tooth = tooth,
            Outline = Path(Outline(plane, tooth, one.Actual, point => plane.At(slot, point)), closed: true),
            Planned = isPlanned ? ""
                : Path(Outline(plane, tooth, one.Rest, point => plane.At(slot, point)), closed: true),
            Slot = one.IsBonded ? Path(SlotCorners(plane, slot, one), closed: true) : "",
            Bare = one.IsBonded ? null : BareTooth.NotBonded,
            Centre = centre,
            Label = plane.LabelAt(one.Rest, tooth, Crowns.Of(tooth)),
            Force = isDrawn ? Path([centre, tip], closed: false) : "",
            ForceHead = isDrawn ? Head(centre, tip) : "",
            ForceLabel = one.IsBonded
                ? Beyond(centre, tip, 2.2)
                : plane.WordAt(one.Rest, tooth, Crowns.Of(tooth)),
            Turn = load is null ? "" : Turn(plane, slot, one.Actual, centre, onTooth.Moment),
            ForceN = load?.Load.Force,
            IsAbove = load?.Above is not null,
            IsTied = one.Tie.Kind != TieKind.None,
        };
    }

    private static IEnumerable<SceneTooth> Gaps(Jaw jaw, Plane plane, ToothMap<BareTooth>? bare) =>
        Absent(jaw, bare).Select(one =>
        {
            ScenePoint centre = plane.AtPlace(one.Place, one.Place.Centre);
            return new SceneTooth
            {
                Tooth = one.Tooth,
                Bare = BareTooth.Absent,
                Outline = Path(
                    Outline(plane, one.Tooth, one.Place, point => plane.AtPlace(one.Place, point)), closed: true),
                Planned = "",
                Slot = "",
                Centre = centre,
                Label = plane.LabelAt(one.Place, one.Tooth, Crowns.Of(one.Tooth)),
                Force = "",
                ForceHead = "",
                ForceLabel = plane.WordAt(one.Place, one.Tooth, Crowns.Of(one.Tooth)),
                Turn = "",
                ForceN = null,
                IsAbove = false,
                IsTied = true,
            };
        });

    private static IEnumerable<(ToothNumber Tooth, SlotFrame Place)> Absent(Jaw jaw, ToothMap<BareTooth>? bare)
    {
        ToothNumber[] absent = [.. (bare ?? ToothMap<BareTooth>.Empty)
            .Where(pair => pair.Value == BareTooth.Absent).Select(pair => pair.Key)];
        if (absent.Length == 0)
            return [];

        IReadOnlyDictionary<ToothNumber, SlotFrame> places = ArchModel.Places(jaw);
        return absent.Select(tooth => (tooth, places[tooth]));
    }

    private static IEnumerable<ScenePoint> Outline(
        Plane plane, ToothNumber tooth, SlotFrame frame, Func<Vector3, ScenePoint> at)
    {
        if (Crowns.Of(tooth) is not { } crown)
            return [];

        IEnumerable<Vector3> points = plane is OcclusalPlane
            ? CrownShape.FromBelow(crown, frame)
            : CrownShape.FromFront(crown, frame, ClinicalAxes.For(tooth).Occlusal(frame));
        return points.Select(at);
    }

    private static IEnumerable<ScenePoint> SlotCorners(Plane plane, int slot, Slot one)
    {
        Vector3 along = one.Width / 2 * one.Actual.Along;
        Vector3 across = plane is OcclusalPlane
            ? one.Depth / 2 * one.Actual.Outward
            : one.Height / 2 * one.Actual.Third;
        return new[] { along + across, along - across, -along - across, across - along }
            .Select(corner => plane.At(slot, one.Actual.Centre + corner));
    }

    private static ScenePoint Tip(Plane plane, int slot, Vector3 from, Vector3 force)
    {
        ScenePoint start = plane.At(slot, from);
        ScenePoint end = plane.At(slot, from + MmOfNewton * force);
        double length = Distance(start, end);
        double share = length > LongestArrow ? LongestArrow / length : 1;
        return new ScenePoint(start.X + share * (end.X - start.X), start.Y + share * (end.Y - start.Y));
    }

    private static string Head(ScenePoint from, ScenePoint tip)
    {
        double length = Distance(from, tip);
        (double x, double y) = ((tip.X - from.X) / length, (tip.Y - from.Y) / length);
        return Path(
            [
                tip,
                new ScenePoint(tip.X - 1.7 * x - 0.8 * y, tip.Y - 1.7 * y + 0.8 * x),
                new ScenePoint(tip.X - 1.7 * x + 0.8 * y, tip.Y - 1.7 * y - 0.8 * x),
            ],
            closed: true);
    }

    // Three quarters of a turn round the slot, the way the moment turns the tooth as it is seen.
    private static string Turn(Plane plane, int slot, SlotFrame frame, ScenePoint centre, Vector3 moment)
    {
        double towardViewer = Vector3.Dot(moment, plane.TowardViewer(slot, frame));
        if (Math.Abs(towardViewer) < LeastMoment)
            return "";

        const double radius = 2.6;
        int sense = towardViewer > 0 ? -1 : 1; // counter-clockwise as seen; the picture's y points down
        ScenePoint[] arc =
        [
            .. Enumerable.Range(0, 19).Select(step =>
            {
                (double sin, double cos) = Math.SinCos(sense * step * Math.PI / 12);
                return new ScenePoint(centre.X + radius * cos, centre.Y + radius * sin);
            }),
        ];
        ScenePoint before = arc[^3];
        ScenePoint end = arc[^1];
        return Path(arc, closed: false) + Head(before, end);
    }

    private static (double Left, double Top, double Right, double Bottom) Bounds(
        ArchSetup arch, Plane plane, ToothMap<BareTooth>? bare)
    {
        (ToothNumber Tooth, SlotFrame Place)[] places =
        [
            .. arch.Teeth.Zip(arch.Slots, (tooth, slot) => (tooth, slot.Rest)), .. Absent(arch.Jaw, bare),
        ];
        ScenePoint[] points =
        [
            .. places.SelectMany(one => Outline(plane, one.Tooth, one.Place, point => plane.AtPlace(one.Place, point))),
            .. places.Select(one => plane.LabelAt(one.Place, one.Tooth, Crowns.Of(one.Tooth))),
        ];
        return (
            points.Min(point => point.X) - Margin, points.Min(point => point.Y) - Margin,
            points.Max(point => point.X) + Margin, points.Max(point => point.Y) + Margin);
    }

    private static ScenePoint Beyond(ScenePoint from, ScenePoint to, double by)
    {
        double length = Math.Max(1e-9, Distance(from, to));
        return new ScenePoint(to.X + by * (to.X - from.X) / length, to.Y + by * (to.Y - from.Y) / length);
    }

    private static double Distance(ScenePoint one, ScenePoint other) =>
        Math.Sqrt((one.X - other.X) * (one.X - other.X) + (one.Y - other.Y) * (one.Y - other.Y));

    private static string Path(IEnumerable<ScenePoint> points, bool closed)
    {
        var text = new StringBuilder();
        foreach (ScenePoint point in points)
        {
            text.Append(text.Length == 0 ? 'M' : 'L')
                .Append(Figures.Coordinate(point.X)).Append(' ').Append(Figures.Coordinate(point.Y));
        }

        return closed && text.Length > 0 ? text.Append('Z').ToString() : text.ToString();
    }
}
