using System.Collections.Immutable;
using Archwright.Mechanics.Numerics;
using Archwright.Mechanics.Rods;
using Archwright.Mechanics.Slots;

namespace Archwright.Mechanics.Engagement;

/// <summary>The rest shape of an arrangement, and where along it each slot rests.</summary>
internal sealed class Layout
{
    private Layout(RestCurve rest, double[] places)
    {
        Rest = rest;
        Places = places;
    }

    /// <summary>Rest shape.</summary>
    public RestCurve Rest { get; }

    /// <summary>Place of each slot's centre along the rest shape [mm].</summary>
    public double[] Places { get; }

    /// <summary>Lays out the rest shape.</summary>
    /// <exception cref="ArgumentException">The slots coincide or run backwards along the wire.</exception>
    public static Layout Of(Arrangement arrangement)
    {
        ImmutableArray<Slot> slots = arrangement.Slots;
        CubicPath path = arrangement.Rest switch
        {
            RestShape.Straight => Straight(slots),
            RestShape.Points points => CubicPath.ThroughPoints(points.Path),
            _ => ThroughSlots(slots, arrangement.Wire.Section.Width),
        };

        var places = new double[slots.Length];
        for (int i = 0; i < slots.Length; i++)
        {
            SlotFrame rest = slots[i].Rest;
            double guess = path.Nearest(rest.Centre);
            double crossing = path.Crossing(rest.Centre, rest.Along, guess);
            places[i] = double.IsNaN(crossing) ? guess : crossing;
            if (i > 0 && places[i] <= places[i - 1] + 1e-3)
            {
                throw new ArgumentException(
                    $"Slot {slots[i].Label} does not come after slot {slots[i - 1].Label} along the wire.",
                    nameof(arrangement));
            }
        }

        (double[] at, Vector3[] outward) = Directions(arrangement, path, places);
        return new Layout(new RestCurve(path, at, outward), places);
    }

    /// <summary>Whether the slot keeps the wire between walls along its width.</summary>
    public static bool HasWalls(Slot slot) =>
        slot.Hold is Hold.Walls or Hold.EdgesOnly && slot.Tie.Kind is not (TieKind.None or TieKind.Partial);

    /// <summary>Whether the wire is held at both edges.</summary>
    public static bool HasEdges(Slot slot) => HasWalls(slot) || slot.Hold is Hold.EdgePoints;

    /// <summary>Whether the slot holds the wire at all.</summary>
    public static bool Restrains(Slot slot) =>
        slot.Hold is Hold.Clamped or Hold.Point or Hold.EdgePoints or Hold.Glide || slot.Tie.Kind != TieKind.None;

    /// <summary>Whether the slot takes the wire in (a partial tie holds it outside).</summary>
    public static bool TakesIn(Slot slot) => Restrains(slot) && !Threaded(slot);

    private static bool Threaded(Slot slot) =>
        slot.Hold is Hold.Walls or Hold.EdgesOnly && slot.Tie.Kind == TieKind.Partial;

    /// <summary>Place of the wire's centre line in the slot when nothing pulls at it, outward of the slot's middle
    /// [mm]: on the base for ties that seat it, in the middle otherwise.</summary>
    public static double Seat(Slot slot, double wireWidth) =>
        slot.Hold is Hold.Walls or Hold.EdgesOnly && slot.Tie.Kind is TieKind.Steel or TieKind.Elastic or TieKind.Spring
            ? -(slot.Depth - wireWidth) / 2
            : 0;

    private static CubicPath Straight(ImmutableArray<Slot> slots)
    {
        Vector3 first = slots[0].Rest.Centre;
        Vector3 last = slots[^1].Rest.Centre;
        if (slots.Length == 1 || (last - first).Length < 1e-6)
            last = first + slots[0].Rest.Along * 10;

        return CubicPath.ThroughPoints([first, last]);
    }

    // Straight along each slot's width, so that the wire is passive there whatever the clearance; one smooth cubic
    // between slots.
    private static CubicPath ThroughSlots(ImmutableArray<Slot> slots, double wireWidth)
    {
        var points = new List<Vector3>();
        var tangents = new List<Vector3>();
        foreach (Slot slot in slots)
        {
            Vector3 centre = slot.Rest.Centre + slot.Rest.Outward * Seat(slot, wireWidth);
            points.Add(centre - slot.Rest.Along * (slot.Width / 2));
            points.Add(centre + slot.Rest.Along * (slot.Width / 2));
            tangents.Add(slot.Rest.Along);
            tangents.Add(slot.Rest.Along);
        }

        return CubicPath.WithTangents(points.ToArray(), tangents.ToArray());
    }

    private static (double[] At, Vector3[] Outward) Directions(Arrangement arrangement, CubicPath path, double[] places)
    {
        if (arrangement.Rest is RestShape.Points { Outward.IsDefaultOrEmpty: false } given)
        {
            var knots = new double[given.Path.Length];
            for (int i = 0; i < knots.Length; i++)
                knots[i] = path.LengthAt(i);

            return (knots, [.. given.Outward]);
        }

        var at = new List<double>();
        var outward = new List<Vector3>();
        for (int i = 0; i < places.Length; i++)
        {
            Slot slot = arrangement.Slots[i];
            double before = i > 0 ? (places[i] - places[i - 1]) / 2 : double.PositiveInfinity;
            double after = i + 1 < places.Length ? (places[i + 1] - places[i]) / 2 : double.PositiveInfinity;
            double half = Math.Min(slot.Width / 2, 0.99 * Math.Min(before, after));
            at.Add(places[i] - half);
            at.Add(places[i] + half);
            outward.Add(slot.Rest.Outward);
            outward.Add(slot.Rest.Outward);
        }

        return ([.. at], [.. outward]);
    }
}
