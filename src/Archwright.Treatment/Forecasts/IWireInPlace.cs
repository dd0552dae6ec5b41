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

    /// <summary>About how the loads change for small motions of the slots from where they were tried or kept last:
    /// symmetric, and the wire resists. Only the number of tries rests on it, not the result.</summary>
    /// <param name="stiffness">Takes it, row-major 6n × 6n as of <see cref="Engager.TangentStiffness"/>.</param>
    void ReadStiffness(Span<double> stiffness);

    /// <summary>The same as if each slot held the wire fast: it never pushes on, and is stiffer.</summary>
    void ReadHeldStiffness(Span<double> stiffness) => ReadStiffness(stiffness);

    /// <summary>Foresees other walls than those touched now, as <see cref="Engager.TryForesee"/> does.</summary>
    bool TryForesee(
        ReadOnlySpan<double> motions, IGivingSlots teeth, Span<double> stiffness, Span<Wrench> loads) => false;

    /// <summary>What was tried last is what happened.</summary>
    void Keep();

    /// <summary>Back to what was kept last.</summary>
    void TakeBack();
}
