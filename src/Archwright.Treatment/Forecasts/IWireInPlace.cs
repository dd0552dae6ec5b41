using Archwright.Mechanics.Engagement;
using Archwright.Mechanics.Slots;

namespace Archwright.Treatment.Forecasts;

/// <summary>The wire as a forecast sees it: something that answers places of slots by loads. One with memory keeps
/// its history from <see cref="Keep"/> to <see cref="Keep"/>: what is tried in between can be taken back.</summary>
internal interface IWireInPlace
{
    /// <summary>Brings the wire into the slots where they stand first.</summary>
    EngagementResult Engage(CancellationToken cancellation);

    /// <summary>Tells the day that the next places are of: ties fade with time.</summary>
    /// <param name="day">Since the start [days].</param>
    void GoTo(double day)
    {
    }

    /// <summary>Follows the slots to new places from where it was last kept or tried.</summary>
    EngagementResult MoveTo(ReadOnlySpan<SlotFrame> places, CancellationToken cancellation);

    /// <summary>About how the loads change for small motions of the slots; row-major 6n × 6n as in
    /// <see cref="Engager.TangentStiffness"/>, symmetric and negative. It is a start: the forecast learns the rest.
    /// </summary>
    double[] TangentStiffness();

    /// <summary>What was tried last is what happened.</summary>
    void Keep();

    /// <summary>Back to what was kept last.</summary>
    void TakeBack();
}
