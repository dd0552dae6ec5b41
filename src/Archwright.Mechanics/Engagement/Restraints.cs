using Archwright.Mechanics.Rods;
using Archwright.Mechanics.Sections;
using Archwright.Mechanics.Slots;

namespace Archwright.Mechanics.Engagement;

/// <summary>Turns slots, ties, holds and ends into stations and rows of a <see cref="ContactSet"/>.</summary>
internal static class Restraints
{
    /// <summary>Largest distance between two places where a wall is looked at [mm].</summary>
    public const double StationSpacing = 0.8;

    /// <summary>Most stations and rows that <see cref="Fill"/> makes for a slot of this width.</summary>
    public static int MostStations(double width) => 2 * (int)Math.Ceiling(width / 2 / StationSpacing) + 3;

    /// <summary>Fills the set. The order is the order of the slots, so sums do not depend on chance.</summary>
    /// <param name="contacts">Emptied and filled.</param>
    /// <param name="arrangement">Slots, wire and ends.</param>
    /// <param name="places">Place of each slot along the rest shape [mm].</param>
    public static void Fill(ContactSet contacts, Arrangement arrangement, ReadOnlySpan<double> places)
    {
        contacts.Clear();
        Section section = arrangement.Wire.Section;
        for (int i = 0; i < arrangement.Slots.Length; i++)
        {
            Slot slot = arrangement.Slots[i];
            switch (slot.Hold)
            {
                case Hold.Clamped:
                    AddClamp(contacts, i);
                    break;
                case Hold.Glide:
                    AddPlace(contacts, i, axis: 1);
                    AddPlace(contacts, i, axis: 2);
                    break;
                case Hold.Point:
                    AddPoint(contacts, i, places[i], 0);
                    break;
                case Hold.EdgePoints:
                    AddPoint(contacts, i, places[i], -slot.Width / 2);
                    AddPoint(contacts, i, places[i], slot.Width / 2);
                    contacts.Add(new Station { Slot = i, S = places[i] });
                    break;
                default:
                    AddWalls(contacts, slot, section, i, places[i]);
                    break;
            }
        }

        AddEnds(contacts, arrangement);
        if (SlidesFreely(arrangement))
            contacts.Add(new ContactRow { Kind = RowKind.Pin, Upper = true, Lower = true });
    }

    /// <summary>Whether no hold fixes a point of the wire along its length.</summary>
    public static bool SlidesFreely(Arrangement arrangement)
    {
        foreach (Slot slot in arrangement.Slots)
        {
            if (slot.Hold is Hold.Clamped or Hold.Glide)
                return false;
        }

        return true;
    }

    private static void AddWalls(ContactSet contacts, Slot slot, Section section, int index, double place)
    {
        if (slot.Tie.Kind == TieKind.None)
            return;

        if (slot.Tie.Kind == TieKind.Partial)
        {
            AddFriction(contacts, slot, index, contacts.StationCount);
            int middle = contacts.Add(new Station { Slot = index, S = place });
            contacts.Add(new ContactRow
            {
                Kind = RowKind.Thread, Station = middle, Slot = index, Axis = 1, Upper = true, Room = slot.Tie.Reach,
            });
            return;
        }

        int half = slot.Hold == Hold.EdgesOnly ? 1 : (int)Math.Ceiling(slot.Width / 2 / StationSpacing);
        for (int k = -half; k <= half; k++)
        {
            double u = slot.Width / 2 * k / half;
            int station = contacts.Add(new Station { Slot = index, U = u, S = place + u,
                NeedsTurn = !section.IsRound });
            if (k == 0)
            {
                AddTie(contacts, slot, section, index, station);
                AddFriction(contacts, slot, index, station);
            }

            if (k != 0 || slot.Hold != Hold.EdgesOnly)
                AddWallsAt(contacts, slot, section, index, station);
        }
    }

    // Height: both walls; the section's thickness lies across, its width makes the corners. Depth: the base, and the
    // lid if there is one.
    private static void AddWallsAt(ContactSet contacts, Slot slot, Section section, int index, int station)
    {
        double r = section.EdgeRadius;
        double thickness = section.Thickness / 2 - r;
        double width = section.Width / 2 - r;
        var row = new ContactRow
        {
            Kind = RowKind.Walls, Station = station, Slot = index, Upper = true, Lower = true,
        };
        AddPair(contacts, row with { Axis = 2, Across = thickness, Room = slot.Height / 2 - r }, width);
        bool lid = slot.Tie.Kind == TieKind.Closed;
        AddPair(contacts, row with { Axis = 1, Across = width, Room = slot.Depth / 2 - r, Upper = lid }, thickness);
    }

    private static void AddPair(ContactSet contacts, in ContactRow row, double corner)
    {
        contacts.Add(row with { Corner = corner });
        if (corner != 0)
            contacts.Add(row with { Corner = -corner });
    }

    private static void AddTie(ContactSet contacts, Slot slot, Section section, int index, int station)
    {
        if (slot.Tie.Kind is not (TieKind.Steel or TieKind.Elastic or TieKind.Spring))
            return;

        contacts.Add(new ContactRow
        {
            Kind = RowKind.Seating,
            Station = station,
            Slot = index,
            Axis = 1,
            Pull = slot.Tie.SeatingForce,
            Rise = slot.Tie.Stiffness,
            Seat = Layout.Seat(slot, section.Width),
        });
    }

    private static void AddFriction(ContactSet contacts, Slot slot, int index, int station)
    {
        if (slot.Friction > 0)
        {
            contacts.Add(new ContactRow
            {
                Kind = RowKind.Friction, Station = station, Slot = index, Coefficient = slot.Friction,
            });
        }
    }

    private static void AddPoint(ContactSet contacts, int index, double place, double u)
    {
        int station = contacts.Add(new Station { Slot = index, U = u, S = place + u });
        var row = new ContactRow
        {
            Kind = RowKind.Walls, Station = station, Slot = index, Upper = true, Lower = true,
        };
        contacts.Add(row with { Axis = 1 });
        contacts.Add(row with { Axis = 2 });
    }

    private static void AddPlace(ContactSet contacts, int index, int axis) => contacts.Add(
        new ContactRow { Kind = RowKind.Place, Slot = index, Axis = axis, Upper = true, Lower = true });

    private static void AddClamp(ContactSet contacts, int index)
    {
        for (int axis = 0; axis < 3; axis++)
            AddPlace(contacts, index, axis);

        var row = new ContactRow { Slot = index, Upper = true, Lower = true };
        contacts.Add(row with { Kind = RowKind.Direction, Axis = 1 });
        contacts.Add(row with { Kind = RowKind.Direction, Axis = 2 });
        contacts.Add(row with { Kind = RowKind.Turn });
    }

    // Ends, at the first and the last slot that holds the wire. Cinched: the wire cannot be drawn mesially out of the
    // tube, so the point that rests at the distal edge stays at or beyond it. Stopped: it cannot advance distally, so
    // the point at the mesial edge stays at or before it.
    private static void AddEnds(ContactSet contacts, Arrangement arrangement)
    {
        if (arrangement.Ends == WireEnds.Free)
            return;

        int first = -1;
        int last = -1;
        for (int i = 0; i < arrangement.Slots.Length; i++)
        {
            if (!Layout.HasEdges(arrangement.Slots[i]))
                continue;

            first = first < 0 ? i : first;
            last = i;
        }

        if (first < 0)
            return;

        // The wire may move along the slot's axis (from right to left) only one way: at the right end distal is
        // backwards.
        bool cinched = arrangement.Ends == WireEnds.Cinched;
        AddEnd(contacts, arrangement.Slots[first], first, distalSign: -1, cinched);
        AddEnd(contacts, arrangement.Slots[last], last, distalSign: 1, cinched);
    }

    private static void AddEnd(ContactSet contacts, Slot slot, int index, int distalSign, bool cinched)
    {
        double edge = (cinched ? distalSign : -distalSign) * slot.Width / 2;
        bool keepsAbove = cinched ? distalSign > 0 : distalSign < 0;
        contacts.Add(new ContactRow
        {
            Kind = RowKind.Place,
            Slot = index,
            Axis = 0,
            Target = edge,
            Upper = !keepsAbove,
            Lower = keepsAbove,
            EndStop = true,
        });
    }
}
