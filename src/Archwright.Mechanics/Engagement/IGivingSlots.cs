namespace Archwright.Mechanics.Engagement;

/// <summary>Slots that give way under the wire, as those on teeth do.</summary>
public interface IGivingSlots
{
    /// <summary>How slots and wire move together for small loads on the slots, with the walls that the wire touches
    /// held.</summary>
    /// <param name="loads">Force, then moment about the slot's centre, six a slot, in the frame of the case [N,
    /// N·mm].</param>
    /// <param name="motions">Takes shift, then turn about the slot's centre, six a slot [mm, rad].</param>
    void Answer(ReadOnlySpan<double> loads, Span<double> motions);
}
