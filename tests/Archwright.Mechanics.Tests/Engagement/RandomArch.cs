using System.Collections.Immutable;
using Archwright.Mechanics.Alloys;
using Archwright.Mechanics.Engagement;
using Archwright.Mechanics.Numerics;
using Archwright.Mechanics.Rods;
using Archwright.Mechanics.Sections;
using Archwright.Mechanics.Slots;

namespace Archwright.Mechanics.Tests.Engagement;

/// <summary>How far the teeth of a random arch are out of line.</summary>
internal enum Disorder
{
    /// <summary>Every slot within 0.4 mm and 6°.</summary>
    Mild,

    /// <summary>Within 1.2 mm and 12°.</summary>
    Moderate,

    /// <summary>A third of the slots within 3 mm and 30°, the others moderately.</summary>
    Severe,

    /// <summary>One or two slots within 6 mm and 30°, the others moderately.</summary>
    Extreme,
}

/// <summary>A random arch with a random wire: anything that a case file may ask for and that the checks of an
/// arrangement let pass. The same number gives the same arch on every machine.</summary>
internal sealed class RandomArch
{
    private const double Degree = Math.PI / 180;

    private readonly Random _random;
    private readonly bool _upper;
    private readonly bool _bench;
    private readonly ArchCurve _curve;
    private readonly double[] _places;
    private readonly double[] _widths;
    private readonly Wire _wire;

    public RandomArch(int number)
    {
        Number = number;
        _random = new Random(number);
        _upper = Chance(0.6);
        Disorder = Pick(Disorder.Mild, Disorder.Moderate, Disorder.Severe, Disorder.Extreme);
        _bench = Chance(0.12);
        int count = _bench ? 2 + _random.Next(5) : 2 + _random.Next(15);
        (_places, _widths) = DrawPlaces(count);
        _curve = _bench
            ? ArchCurve.Line(_places[^1])
            : ArchCurve.Around(_places[^1], depth: Between(1.0, 2.2), parabola: Chance(0.5));
        double height = Pick(0.4572, 0.5588) * Between(1, 1.06);
        double depth = Between(0.64, 0.78);
        _wire = new Wire(DrawSection(ref height, depth), DrawAlloy());
        Arrangement = new Arrangement
        {
            Wire = _wire,
            Slots = [.. Enumerable.Range(0, count).Select(i => DrawSlot(i, height, depth))],
            Rest = DrawRest(),
            Ends = Chance(0.6) ? WireEnds.Free : Pick(WireEnds.Stopped, WireEnds.Cinched),
        };
    }

    /// <summary>What it was drawn from.</summary>
    public int Number { get; }

    public Disorder Disorder { get; }

    public Arrangement Arrangement { get; }

    /// <summary>One line for a person who has to find out why it failed.</summary>
    public override string ToString()
    {
        Section section = _wire.Section;
        string size = section.IsRound
            ? $"round {section.Thickness:0.000}"
            : $"{section.Thickness:0.000} x {section.Width:0.000} r {section.EdgeRadius:0.000}";
        string kinds = string.Join(' ', Arrangement.Slots.Select(
            s => s.Hold is Hold.Walls ? $"{s.Tie.Kind}" : $"{s.Hold}/{s.Tie.Kind}"));
        return $"#{Number} {Disorder} {(_bench ? "bench" : "arch")} {Arrangement.Slots.Length} slots, {size}, "
            + $"E {_wire.Alloy.Young:0}, rest {Arrangement.Rest.GetType().Name}, ends {Arrangement.Ends}: {kinds}";
    }

    private double Between(double low, double high) => low + (high - low) * _random.NextDouble();

    private double Around(double size) => size * (2 * _random.NextDouble() - 1);

    private bool Chance(double share) => _random.NextDouble() < share;

    private T Pick<T>(params ReadOnlySpan<T> of) => of[_random.Next(of.Length)];

    // Centres 4 to 10 mm apart along the arch, with at least 1.2 mm between neighbouring edges.
    private (double[] Places, double[] Widths) DrawPlaces(int count)
    {
        double[] places = new double[count];
        double[] widths = new double[count];
        for (int i = 0; i < count; i++)
        {
            widths[i] = Between(2, 4.5);
            if (i > 0)
                places[i] = places[i - 1] + Math.Max(Between(4, 10), (widths[i] + widths[i - 1]) / 2 + 1.2);
        }

        return (places, widths);
    }

    private Section DrawSection(ref double height, double depth)
    {
        Section section;
        if (Chance(0.5))
        {
            section = Section.Round(Between(0.25, Math.Min(0.56, height)));
        }
        else
        {
            double thickness = Between(0.35, height);
            double width = Between(Math.Max(thickness, 0.4), depth);
            section = Section.Rectangular(thickness, width, Chance(0.3) ? 0 : Between(0.01, 0.08));
        }

        // Now and then a wire that fills the slot: no play.
        if (Chance(0.1))
            height = section.Thickness;
        return section;
    }

    private LinearElastic DrawAlloy() => Chance(0.8)
        ? new LinearElastic(Between(20e3, 200e3), Between(0.25, 0.4))
        : LinearElastic.WithShear(Between(20e3, 120e3), Between(8e3, 60e3));

    private Slot DrawSlot(int index, double height, double depth)
    {
        SlotFrame rest = RestFrame(index);
        return new Slot
        {
            Label = $"{index + 1}",
            Rest = rest,
            Actual = Displaced(rest, index),
            Width = _widths[index],
            Height = height,
            Depth = depth,
            Tie = DrawTie(index),
            Hold = DrawHold(),
        };
    }

    // Prescribed torque and tip, and a little unevenness in height, belong to the rest position.
    private SlotFrame RestFrame(int index)
    {
        (Vector3 point, Vector3 tangent) = _curve.At(_places[index]);
        Vector3 up = new(0, 0, 1);
        Vector3 centre = point + up * (_bench ? 0 : Around(0.3));
        SlotFrame level = SlotFrame.Create(centre, tangent, Vector3.Cross(tangent, up));
        return _bench
            ? level
            : level.Moved(default, level.Along * Around(20 * Degree) + level.Outward * Around(5 * Degree));
    }

    private SlotFrame Displaced(SlotFrame rest, int index)
    {
        (double shift, double turn) = Disorder switch
        {
            Disorder.Mild => (0.4, 6),
            Disorder.Moderate => (1.2, 12),
            Disorder.Severe => Chance(0.33) ? (3.0, 30) : (1.2, 12),
            _ => Chance(1.5 / _places.Length) ? (6.0, 30) : (1.2, 12),
        };

        // Teeth do not pass each other: along the arch at most a share of the free gap.
        double gap = Math.Min(FreeGap(index - 1), FreeGap(index));
        double along = Math.Min(shift / 3, 0.25 * gap);
        Vector3 move = rest.Along * Around(along) + rest.Outward * Around(shift) + rest.Third * Around(shift);
        Vector3 about = rest.Along * Around(turn) + rest.Outward * Around(turn) + rest.Third * Around(turn);
        return rest.Moved(move, about * (Degree / Math.Sqrt(2)));
    }

    private double FreeGap(int before) => before < 0 || before + 1 >= _places.Length
        ? 4
        : _places[before + 1] - _places[before] - (_widths[before] + _widths[before + 1]) / 2;

    private Tie DrawTie(int index)
    {
        double holds = Chance(0.8) ? double.PositiveInfinity : Between(5, 40);
        double draw = _random.NextDouble();

        // The first slot always holds the wire: an arrangement without any hold is refused.
        return draw switch
        {
            < 0.45 => Tie.Closed(holds),
            < 0.60 => Tie.Seating(TieKind.Steel, Between(0.5, 4), Between(100, 1000), holds),
            < 0.75 => Tie.Seating(TieKind.Elastic, Between(0.3, 3), Between(0.5, 5), holds),
            < 0.83 => Tie.Seating(TieKind.Spring, Between(0.3, 3), Between(1, 10), holds),
            < 0.93 => Tie.Partial(Between(0.3, 2.5), holds),
            _ => index == 0 ? Tie.Closed() : Tie.None,
        };
    }

    private Hold DrawHold() => Chance(_bench ? 0.5 : 0.9)
        ? Hold.Walls
        : Pick(Hold.EdgesOnly, Hold.EdgesOnly, Hold.Point, Hold.EdgePoints, Hold.Clamped, Hold.Glide);

    private RestShape DrawRest()
    {
        if (_bench)
            return new RestShape.Straight();
        if (Chance(0.7))
            return new RestShape.ThroughRestSlots();

        // A preformed wire: the arch a little wider or narrower, longer than the row of slots.
        double wider = Around(0.06);
        var points = ImmutableArray.CreateBuilder<Vector3>();
        var outward = ImmutableArray.CreateBuilder<Vector3>();
        int pieces = 8 + _random.Next(60);
        double length = _places[^1] + 12;
        for (int i = 0; i <= pieces; i++)
        {
            (Vector3 p, Vector3 t) = _curve.At(-6 + length * i / pieces);
            points.Add(new Vector3(p.X * (1 + wider), p.Y, p.Z));
            outward.Add(Vector3.Cross(new Vector3(0, 0, 1), t) * -1);
        }

        return new RestShape.Points(
            points.ToImmutable(), Chance(0.5) ? ImmutableArray<Vector3>.Empty : outward.ToImmutable());
    }
}
