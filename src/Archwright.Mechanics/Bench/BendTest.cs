using System.Collections.Immutable;
using Archwright.Mechanics.Engagement;
using Archwright.Mechanics.Numerics;
using Archwright.Mechanics.Rods;
using Archwright.Mechanics.Slots;

namespace Archwright.Mechanics.Bench;

/// <summary>Three-point bend after ISO 15841: a wire on two knife edges, an indenter in the middle, loaded and
/// unloaded.</summary>
/// <remarks>
/// Edges and indenter act on the centre line, without friction; the wire slides over the edges and pushes at right
/// angles to itself. The radius of the edges (0.1 mm in the standard, from memory) is left out. A rectangular wire is
/// bent over its thickness. The indenter only pushes: where the force has gone the wire has left it, and is met again
/// where it was left.
/// </remarks>
public sealed class BendTest : IDisposable
{
    /// <summary>Smallest and largest span that can be asked for [mm].</summary>
    public const double LeastSpan = 2, MostSpan = 100;

    /// <summary>Largest deflection, as a share of the span: beyond it the wire slips between the edges.</summary>
    public const double MostShare = 0.45;

    private const double LongestStep = 0.1;
    private const double ForceNil = 1e-5;
    private const int MostBisections = 30;
    private const int Middle = 1;

    private static readonly EngagementOptions Options = new() { ElementsPerGap = 6 };

    private readonly Engager _engager;
    private readonly SlotFrame _rest;
    private readonly ImmutableArray<BendPoint>.Builder _curve = ImmutableArray.CreateBuilder<BendPoint>();
    private double _wire;               // deflection of the wire
    private double _force;

    private BendTest(Wire wire, double span, double temperature)
    {
        var axis = new Vector3(1, 0, 0);
        SlotFrame Frame(double x) => SlotFrame.Create(new Vector3(x, 0, 0), axis, new Vector3(0, 0, 1));
        _rest = Frame(0);
        _engager = new Engager(
            new Arrangement
            {
                Wire = wire,
                Rest = new RestShape.Straight(),
                Temperature = temperature,
                Slots = [Point("left", Frame(-span / 2)), Point("middle", _rest), Point("right", Frame(span / 2))],
            },
            Options);
        Temperature = temperature;
    }

    private double Temperature { get; set; }

    /// <summary>Gives the wire's memory back.</summary>
    public void Dispose() => _engager.Dispose();

    /// <summary>Runs a test.</summary>
    /// <param name="wire">Section and alloy.</param>
    /// <param name="span">Between the knife edges [mm].</param>
    /// <param name="temperature">At the start [°C].</param>
    /// <param name="path">What the indenter and the temperature do, in order.</param>
    /// <exception cref="ArgumentOutOfRangeException">Span or a deflection is out of range.</exception>
    /// <exception cref="InvalidOperationException">No equilibrium was found; the message says where.</exception>
    public static BendResult Run(Wire wire, double span, double temperature, ImmutableArray<BendStep> path)
    {
        Require.Between(span, LeastSpan, MostSpan, "mm");
        Require.Between(temperature, -50, 150, "°C");
        using var test = new BendTest(wire, span, temperature);
        test.Check(test._engager.Engage(), 0);
        test.Note(0);
        var readings = ImmutableArray.CreateBuilder<BendPoint>();
        double indenter = 0;
        double top = 0;
        double forceAtTop = 0;
        foreach (BendStep step in path)
        {
            if (step.Temperature is { } to)
            {
                test.WarmTo(to, indenter);
                readings.Add(test.Note(indenter));
                continue;
            }

            double target = step.Deflection!.Value;
            Require.Between(target, 0, MostShare * span, "mm");
            foreach (double stop in step.Stops(indenter))
            {
                indenter = test.GoTo(indenter, stop);
                if (step.Reads(stop))
                    readings.Add(test._curve[^1]);
            }

            if (target > top)
                (top, forceAtTop) = (target, test._force);
        }

        ImmutableArray<BendPoint> curve = test._curve.ToImmutable();
        return new BendResult(readings.ToImmutable(), curve, top, forceAtTop, test.Unload(indenter));
    }

    private static Slot Point(string label, SlotFrame frame) => new()
    {
        Label = label,
        Rest = frame,
        Actual = frame,
        Width = 1,
        Height = 1,
        Depth = 1,
        Hold = Hold.Point,
    };

    private double GoTo(double from, double to)
    {
        int parts = Math.Max(1, (int)Math.Ceiling(Math.Abs(to - from) / LongestStep - 1e-9));
        for (int i = 1; i <= parts; i++)
        {
            double at = i == parts ? to : from + (to - from) * i / parts;
            Follow(at);
            Note(at);
        }

        return to;
    }

    private BendPoint Note(double indenter)
    {
        var point = new BendPoint(indenter, Temperature, Math.Max(_force, 0));
        _curve.Add(point);
        return point;
    }

    // A wire that has left the indenter stays where it is until the indenter comes back to it.
    private void Follow(double indenter)
    {
        if (_force <= ForceNil && indenter <= _wire && _wire > 0)
            return;

        double before = _wire;
        Move(indenter);
        if (_force < -ForceNil)
            Leave(indenter, before);
    }

    // Between a deflection where the wire pulls and one where it pushes, the wire stands where it does neither.
    private void Leave(double low, double high)
    {
        for (int i = 0; i < MostBisections && Math.Abs(_force) > ForceNil && high - low > 1e-7; i++)
        {
            _engager.Undo();
            double middle = (low + high) / 2;
            Move(middle);
            if (_force < 0)
                low = middle;
            else
                high = middle;
        }

        _force = 0;
    }

    private void WarmTo(double temperature, double indenter)
    {
        Temperature = temperature;
        Take(_engager.Apply(new Step(temperature, [])), _wire);
        if (_wire > indenter)
            Follow(indenter);
    }

    private double Unload(double indenter)
    {
        if (_force > ForceNil)
            GoTo(indenter, 0);

        return _wire;
    }

    private void Move(double deflection)
    {
        Take(_engager.Apply(new Step(null, [(Middle, _rest.Moved(_rest.Third * deflection, default))])), deflection);
        _wire = deflection;
    }

    private void Take(EngagementResult result, double deflection)
    {
        Check(result, deflection);
        _force = -Vector3.Dot(result.Slots[Middle].OnTooth.Force, _rest.Third);
    }

    private void Check(EngagementResult result, double deflection)
    {
        if (!result.Converged)
        {
            throw new InvalidOperationException(
                $"No equilibrium at a deflection of {deflection:0.00} mm and {Temperature:0} °C. "
                + result.Obstacle?.Reason);
        }
    }
}
