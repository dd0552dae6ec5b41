using Archwright.Dentition.Positions;
using Archwright.Dentition.Teeth;
using Archwright.Mechanics.Numerics;
using Archwright.Mechanics.Slots;
using Archwright.Treatment.Forecasts;
using Archwright.Treatment.Support;

namespace Archwright.Treatment.Movement;

/// <summary>One tooth under one known load, as in the experiments that the law rests on: no wire, no
/// neighbour.</summary>
public static class LoneTooth
{
    private static readonly SlotFrame Upright = SlotFrame.Create(
        default, new Vector3(-1, 0, 0), new Vector3(0, 1, 0));

    /// <summary>How its slot moves under a steady load that goes along with the tooth.</summary>
    /// <param name="tooth">Which.</param>
    /// <param name="load">At the slot, in clinical words.</param>
    /// <param name="days">For how long; a load beyond the law's range moves it after the lag alone.</param>
    /// <param name="rate">Factor on the law; 1 for the mean person.</param>
    /// <exception cref="ArgumentOutOfRangeException">The tables do not hold the tooth, or a figure is not a sensible
    /// number.</exception>
    public static ClinicalOffset Moved(ToothNumber tooth, ClinicalLoad load, double days, double rate = 1)
    {
        ToothSupport support = ToothSupport.Of(tooth);
        Check(days, 0, 3650, nameof(days));
        Check(rate, 0, 100, nameof(rate));
        Six atResistance = AppliedLoad.AtResistance(tooth, support, load);
        Six twist = ToothAnswer.Twist(support, atResistance, rate);
        double lag = rate > 0 ? MovementLaw.LagOf(ToothAnswer.Stress(support, atResistance)) / rate : 0;
        double moving = Math.Max(0, days - lag);
        // A steady twist in the tooth's own axes, in small turns.
        int steps = (int)Math.Ceiling(days) * 8;
        SlotFrame place = Upright;
        for (int i = 0; i < steps; i++)
            place = MovingArch.Moved(support, place, twist * (moving / steps));

        return ClinicalAxes.For(tooth).Between(Upright, place);
    }

    /// <summary>How its slot gives way at once.</summary>
    /// <param name="tooth">Which.</param>
    /// <param name="load">At the slot, in clinical words.</param>
    /// <exception cref="ArgumentOutOfRangeException">The tables do not hold the tooth.</exception>
    public static ClinicalOffset Given(ToothNumber tooth, ClinicalLoad load)
    {
        ToothSupport support = ToothSupport.Of(tooth);
        Six given = ToothAnswer.Give(support, AppliedLoad.AtResistance(tooth, support, load));
        return ClinicalAxes.For(tooth).Between(Upright, MovingArch.Moved(support, Upright, given));
    }

    /// <summary>What the load means for the tooth.</summary>
    /// <param name="tooth">Which.</param>
    /// <param name="load">At the slot, in clinical words.</param>
    /// <param name="rate">Factor on the law; 1 for the mean person.</param>
    /// <exception cref="ArgumentOutOfRangeException">The tables do not hold the tooth.</exception>
    public static ToothMovement Answer(ToothNumber tooth, ClinicalLoad load, double rate = 1)
    {
        ToothSupport support = ToothSupport.Of(tooth);
        return ToothMovement.Read(tooth, support, load, AppliedLoad.AtResistance(tooth, support, load), rate);
    }

    private static void Check(double value, double low, double high, string name)
    {
        if (!(value >= low && value <= high))
            throw new ArgumentOutOfRangeException(name, value, $"It lies between {low} and {high}.");
    }
}
