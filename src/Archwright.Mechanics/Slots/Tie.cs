using Archwright.Mechanics.Numerics;

namespace Archwright.Mechanics.Slots;

/// <summary>What keeps the wire in the slot.</summary>
public enum TieKind
{
    /// <summary>A passive lid at the slot's depth.</summary>
    Closed,

    /// <summary>A steel ligature: the wire is seated on the slot's base, almost rigidly.</summary>
    Steel,

    /// <summary>An elastic tie: seats the wire with a force and yields when it is pulled.</summary>
    Elastic,

    /// <summary>An active clip: presses on the wire like a spring.</summary>
    Spring,

    /// <summary>Tied at a distance: the wire stays outside the slot and is held by a thread of given length.</summary>
    Partial,

    /// <summary>The wire passes by and is not held at all.</summary>
    None,
}

/// <summary>A tie with its figures.</summary>
/// <remarks>Lift is how far the wire's centre line stands above its seated place on the slot's base. A seating tie
/// pulls with <c>SeatingForce + Stiffness · lift</c>.</remarks>
public sealed record Tie
{
    /// <summary>Kind of tie.</summary>
    public TieKind Kind { get; private init; }

    /// <summary>Pull on a seated wire [N]; zero for a lid.</summary>
    public double SeatingForce { get; private init; }

    /// <summary>Rise of the pull with lift [N/mm]; zero for a lid.</summary>
    public double Stiffness { get; private init; }

    /// <summary>Length of the thread of a <see cref="TieKind.Partial"/> tie [mm]; otherwise zero.</summary>
    public double Reach { get; private init; }

    /// <summary>Outward force that the tie can hold [N]; positive infinity when it is not known.</summary>
    public double Holds { get; private init; } = double.PositiveInfinity;

    /// <summary>Share of its pull that an elastic tie loses in its first three weeks, from 0 (none) to below
    /// 1.</summary>
    public double Loss { get; private init; }

    private Tie()
    {
    }

    /// <summary>The wire is not held.</summary>
    public static Tie None { get; } = new() { Kind = TieKind.None };

    /// <summary>A passive lid.</summary>
    /// <param name="holds">[N]</param>
    public static Tie Closed(double holds = double.PositiveInfinity) =>
        new() { Kind = TieKind.Closed, Holds = CheckedHold(holds) };

    /// <summary>A tie that seats the wire with a force.</summary>
    /// <param name="kind"><see cref="TieKind.Steel"/>, <see cref="TieKind.Elastic"/> or
    /// <see cref="TieKind.Spring"/>.</param>
    /// <param name="seatingForce">[N], zero or more.</param>
    /// <param name="stiffness">[N/mm], zero or more.</param>
    /// <param name="holds">[N]</param>
    /// <exception cref="ArgumentOutOfRangeException">The kind does not seat, or a figure is out of range.</exception>
    public static Tie Seating(
        TieKind kind, double seatingForce, double stiffness, double holds = double.PositiveInfinity)
    {
        if (kind is not (TieKind.Steel or TieKind.Elastic or TieKind.Spring))
            throw new ArgumentOutOfRangeException(nameof(kind), kind, "This kind of tie does not seat the wire.");

        Require.Between(seatingForce, 0, 100, "N");
        Require.Between(stiffness, 0, 1e5, "N/mm");
        return new Tie
        {
            Kind = kind, SeatingForce = seatingForce, Stiffness = stiffness, Holds = CheckedHold(holds),
        };
    }

    /// <summary>An elastic tie that fades.</summary>
    /// <param name="loss">Share lost in the first three weeks, from 0 to 0.95.</param>
    /// <exception cref="ArgumentOutOfRangeException">The share is out of range.</exception>
    /// <exception cref="InvalidOperationException">The tie is not elastic.</exception>
    public Tie Losing(double loss)
    {
        Require.Between(loss, 0, 0.95, "");
        return Kind == TieKind.Elastic
            ? new Tie
            {
                Kind = Kind, SeatingForce = SeatingForce, Stiffness = Stiffness, Holds = Holds, Loss = loss,
            }
            : throw new InvalidOperationException("Only an elastic tie fades.");
    }

    /// <summary>The tie after some time in the mouth.</summary>
    /// <param name="days">Since it was put on, 0 or more.</param>
    /// <remarks>What is lost grows with the logarithm of time, more than half of it within the first day, as elastic
    /// chains lose 37 to 75 % in three weeks, most of it on the first day: Buchmann et al., Angle Orthod 82 (2012)
    /// 529–535 (found); the logarithm is ours. Never more than 95 % is lost.</remarks>
    public Tie After(double days)
    {
        if (Loss == 0)
            return this;

        double lost = Math.Min(
            0.95, Loss * Math.Log(1 + Math.Max(0, days) / FadingTime) / Math.Log(1 + ThreeWeeks / FadingTime));
        return new Tie
        {
            Kind = Kind, SeatingForce = (1 - lost) * SeatingForce, Stiffness = (1 - lost) * Stiffness, Holds = Holds,
            Loss = Loss,
        };
    }

    // Days; the first so that 54 % of the loss of three weeks falls into the first day.
    private const double FadingTime = 0.03;
    private const double ThreeWeeks = 21;

    /// <summary>A thread of given length round a wire that stays outside the slot.</summary>
    /// <param name="reach">Largest distance of the wire's centre line from the slot's centre [mm].</param>
    /// <param name="holds">[N]</param>
    public static Tie Partial(double reach, double holds = double.PositiveInfinity)
    {
        Require.Between(reach, 0, 20, "mm");
        return new Tie { Kind = TieKind.Partial, Reach = reach, Holds = CheckedHold(holds) };
    }

    private static double CheckedHold(double holds) =>
        holds > 0 ? holds : throw new ArgumentOutOfRangeException(nameof(holds), holds, "It must be positive, in N.");
}
